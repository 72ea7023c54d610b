import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { asThousands, decimalOfNumber, scanDecimal } from "../../../src/core/base/decimal";

describe("scanDecimal", () => {
  test.each([
    // text, coefficient, places, where it ends, the mark that may be either
    ["84", 84, 0, 2, null],
    ["007", 7, 0, 3, null],
    ["84.5", 845, 1, 4, null],
    ["84,5", 845, 1, 4, null],
    ["84.", 84, 0, 3, null],
    [".5", 5, 1, 2, null],
    [",5", 5, 1, 2, null],
    ["2 134 mm", 2134, 0, 5, null],
    ["2 134/8", 2, 0, 1, null],
    ["2 1345", 2, 0, 1, null],
    ["12 134 567,25 x", 1_213_456_725, 2, 13, null],
    ["1,234.5", 12_345, 1, 7, null],
    ["1.234,5", 12_345, 1, 7, null],
    ["1,234,567", 1_234_567, 0, 9, null],
    ["1.234.567", 1_234_567, 0, 9, null],
    ["2,134", 2134, 3, 5, ","],
    ["2.134", 2134, 3, 5, "."],
    ["0,134", 134, 3, 5, null],
    ["1234,567", 1_234_567, 3, 8, null],
    ["1,23,456", 123, 2, 4, null],
    ["1.234.5", 1234, 3, 5, "."],
    ["84,", 84, 0, 2, null],
    ["0.1234564", 123_456, 6, 9, null],
    ["0.1234565", 123_457, 6, 9, null],
  ])("reads %j", (text, coefficient, places, end, unsureMark) => {
    expect(scanDecimal(text, 0, 6)).toMatchObject({
      ok: true,
      value: { coefficient, places, end, unsureMark },
    });
  });

  test("starts where it is told and says when digits were rounded off", () => {
    const scanned = scanDecimal("a 0.00006 b", 2, 4);
    expect(scanned).toMatchObject({ value: { coefficient: 1, places: 4, end: 9, rounded: true } });
    expect(scanDecimal("0.50000000", 0, 4)).toMatchObject({ value: { rounded: false } });
  });

  test.each(["", "x", ".", ",", "-1", "½", "٣"])("finds no number in %j", (text) => {
    expect(scanDecimal(text, 0, 9)).toEqual({ ok: false, error: "none" });
  });

  test.each(["1000000", "1,000,000", "99999999999999999999", "9".repeat(400)])(
    "refuses %j where nine places are to be kept",
    (text) => {
      expect(scanDecimal(text, 0, 9)).toEqual({ ok: false, error: "too-large" });
    },
  );

  test("takes zeros in front for nothing", () => {
    expect(scanDecimal("0000000000000000084", 0, 9)).toMatchObject({ value: { coefficient: 84 } });
  });

  test("has the other reading of an unsure mark", () => {
    const scanned = scanDecimal("2,134", 0, 4);
    expect(scanned.ok && asThousands(scanned.value)).toMatchObject({
      coefficient: 2134,
      places: 0,
    });
  });
});

describe("decimalOfNumber", () => {
  test.each([
    [84, 84, 0],
    [-0, 0, 0],
    [84.5, 84_500_000, 6],
    [84.00000000000001, 84_000_000, 6],
    [1.0000005, 1_000_001, 6],
    [-1.0000005, -1_000_001, 6],
    [-0.0000001, 0, 6],
  ])("reads %d", (value, coefficient, places) => {
    expect(decimalOfNumber(value, 6)).toMatchObject({ coefficient, places });
  });

  test.each([NaN, Infinity, -Infinity, 1e9, -1e300])("refuses %d", (value) => {
    expect(decimalOfNumber(value, 6)).toBeNull();
  });

  test("reads a number as its own shortest text is read", () => {
    const tenThousandths = fc.integer({ min: 0, max: 1e12 });
    fc.assert(
      fc.property(tenThousandths, (n) => {
        const value = n / 10_000;
        const fromText = scanDecimal(String(value), 0, 4);
        const fromNumber = decimalOfNumber(value, 4);
        if (!fromText.ok || fromNumber === null) throw new Error(`not read: ${value}`);
        const scale = (decimal: { coefficient: number; places: number }): number =>
          decimal.coefficient * 10 ** (4 - decimal.places);
        // 1.234 is the one text that can be read two ways; as a decimal it is the number.
        expect(scale(fromText.value)).toBe(n);
        expect(scale(fromNumber)).toBe(n);
      }),
    );
  });
});
