import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { inches } from "../../../../src/core/base/units";
import {
  cutLength,
  cutLengthOf,
  inchesOf,
} from "../../../../src/core/purchasing/cutting/cutLength";

describe("a length for the saw", () => {
  test.each([
    ["1/64 in", 1 / 64, 127],
    ["1 in", 1, 8128],
    ["0.1 mm", 0.1 / 25.4, 32],
    ["2134 mm", (2134 * 5) / 127, 682_880],
    ["20 ft", 240, 1_950_720],
    ["nothing", 0, 0],
  ])("holds %s exactly", (_, length, steps) => {
    expect(cutLengthOf(inches(length))).toBe(steps);
  });

  test("rounds a length between two steps up, so that no piece is short", () => {
    expect(cutLengthOf(inches(1 / 7))).toBe(Math.ceil(8128 / 7));
  });

  test("comes back as the same inches for every sixty-fourth", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 64 * 1000 }), (sixtyFourths) => {
        const length = inches(sixtyFourths / 64);
        expect(inchesOf(cutLengthOf(length))).toBe(length);
      }),
    );
  });

  test("comes back within a step for every tenth of a millimetre", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 300_000 }), (tenths) => {
        expect(cutLengthOf(inches((tenths * 5) / 1270))).toBe(tenths * 32);
      }),
    );
  });

  test.each([-1, 0.5, NaN, Infinity, 1e12])("is never %p steps", (steps) => {
    expect(() => cutLength(steps)).toThrow(RangeError);
  });
});
