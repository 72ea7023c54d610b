import { expect, test } from "@jest/globals";
import fc from "fast-check";
import { typedNumber } from "../../../src/core/base/typedNumber";

test.each([
  ["12", 12],
  [" 12.5 ", 12.5],
  ["12,5", 12.5],
  ["1,234.5", 1234.5],
  ["1.234,5", 1234.5],
  ["1,200", 1200],
  ["1.200", 1.2],
  ["1,234,567", 1234567],
  ["-3", -3],
  ["\u22123", -3],
  ["+0.25", 0.25],
  [".5", 0.5],
  ["-0", 0],
])("reads %s", (text, number) => {
  expect(typedNumber(text)).toBe(number);
});

test.each(["", " ", "-", "two", "1 or 2", "12x", "1,2,3", "1e3", "0x10", "--1", "Infinity", "1/2"])(
  "takes %p for no number",
  (text) => {
    expect(typedNumber(text)).toBeNaN();
  },
);

test.each([true, false, null])("takes %p for no number", (value) => {
  expect(typedNumber(value)).toBeNaN();
});

test("a number is itself, and as text it is the same", () => {
  fc.assert(
    fc.property(fc.integer({ min: -1e9, max: 1e9 }), (hundredths) => {
      const number = hundredths / 100;
      expect(typedNumber(number)).toBe(number);
      expect(typedNumber(number.toFixed(2))).toBe(number === 0 ? 0 : number);
    }),
  );
});
