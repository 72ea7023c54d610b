import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import type { CellValue } from "../../../src/core/base/cell";
import { rational } from "../../../src/core/base/rational";
import { inches } from "../../../src/core/base/units";
import { toInches, type LengthUnit } from "../../../src/core/lengths/length";
import { readLength, type ReadLength } from "../../../src/core/lengths/readLength";

function read(value: CellValue, unit: LengthUnit = "in"): ReadLength {
  const result = readLength(value, unit);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const doubtsOf = (value: CellValue, unit: LengthUnit = "in"): readonly string[] =>
  read(value, unit).doubts.map(({ code }) => code);

describe("a typed length", () => {
  test.each([
    // Feet, and feet and inches.
    ["7'", 84],
    ["7 ft", 84],
    ["7 ft.", 84],
    ["7 FEET", 84],
    ["7.5'", 90],
    ["7 1/2 ft", 90],
    [`7'-0"`, 84],
    [`7'0"`, 84],
    ["7'6", 90],
    ["7'-6", 90],
    [`7' 0 1/2"`, 84.5],
    [`6'-11 1/2"`, 83.5],
    [`6' - 11-1/2"`, 83.5],
    [`6'-11-1/2"`, 83.5],
    [`7'-1/2"`, 84.5],
    [`7'-0" 1/2`, 84.5],
    [`7' 6.25"`, 90.25],
    ["7 ft 0 in", 84],
    ["7ft6in", 90],
    ["7 ft., 6 in.", 90],
    ["7 feet, 6 inches", 90],
    [`7'6''`, 90],
    // The rule of the lone dash.
    ["7-0", 84],
    ["7-0 1/2", 84.5],
    ["7-0-1/2", 84.5],
    ["6-11½", 83.5],
    [`7-6"`, 90],
    ["12 - 11", 155],
    // Inches.
    ["84", 84],
    [`84"`, 84],
    ["84''", 84],
    ["84 in", 84],
    ["84in.", 84],
    ["84 inches", 84],
    [`83-1/2"`, 83.5],
    ["83-1/2", 83.5],
    ["83 1/2", 83.5],
    ["83 1 / 2", 83.5],
    [`83" 1/2`, 83.5],
    ["83½", 83.5],
    ["83 ½ in", 83.5],
    ["84.5", 84.5],
    ["84,5", 84.5],
    ["84.", 84],
    ["0084", 84],
    // Metric.
    ["1524 mm", 60],
    ["1524mm", 60],
    ["1 524 mm", 60],
    ["1.524 m", 60],
    ["152.4 cm", 60],
    ["152,4 cm", 60],
    ["1.524,0 mm", 60],
    ["1,524.0 mm", 60],
    ["1524 millimetres", 60],
    ["152.4 centimeters", 60],
    ["1.524 Meters", 60],
    // What word processors and drawings make of it.
    ["7’-6½”", 90.5],
    ["7′-6″", 90],
    ["7′6′′", 90],
    ["7´ 6˝".replace("˝", "″"), 90],
    ["7‘–6“", 90],
    ["6' 11⅞\"", 83.875],
    ["83 1⁄2", 83.5],
    ["83\u00A01/2", 83.5],
    ["7'\u2009-\u20096\"", 90],
    ["7'\u22126\"", 90],
    ["１５２４ mm", 60],
    ["1\u202F524\u00A0mm", 60],
    // Spaces around it.
    ["  84  ", 84],
    ["\t7'-6\"\n", 90],
  ])("%j is %d inches, with no doubt", (text, expected) => {
    const { length, doubts } = read(text);
    expect(toInches(length)).toBe(expected);
    expect(doubts).toEqual([]);
  });

  test.each([
    ["84", 84],
    ["2134", 2134],
    [2134, 2134],
    [2133.6, 2133.6],
    ["2 134", 2134],
    ["2134,5", 2134.5],
  ])("%j is %d millimetres where the workbook's unit is mm", (value, millimetres) => {
    const { length } = read(value, "mm");
    expect(length).toEqual(rational(millimetres * 10 * 5, 10 * 127));
  });

  test("keeps its unit in a workbook of the other", () => {
    expect(toInches(read("84 in", "mm").length)).toBe(84);
    expect(toInches(read("7-0", "mm").length)).toBe(84);
    expect(toInches(read("1524 mm", "in").length)).toBe(60);
  });

  test.each([
    [84, 84],
    [84.5, 84.5],
    [83.99999999999999, 84],
    [250 / 3, 83.333333333],
  ])("a cell with the number %d is %d", (value, expected) => {
    expect(toInches(read(value).length)).toBe(expected);
  });
});

describe("a doubtful length", () => {
  test.each<[CellValue, LengthUnit, number, string]>([
    // A number that no door has.
    [2134, "in", 2134, "2134 mm"],
    ["2134", "in", 2134, "2134 mm"],
    [7, "in", 7, "7 ft"],
    ["7''", "in", 7, "7 ft"],
    [84, "mm", (84 * 5) / 127, "84 in"],
    [2.134, "mm", (2134 * 5) / 127_000, "2.134 m"],
    ["7", "mm", (7 * 5) / 127, "7 ft"],
    ["84 ft", "in", 1008, "84 in"],
  ])("%j in a workbook of %s is read, and said to be no door", (value, unit, expected, hint) => {
    const { length, doubts } = read(value, unit);
    expect(toInches(length)).toBe(expected);
    expect(doubts).toHaveLength(1);
    expect(doubts[0]?.code).toBe("length-not-a-door");
    expect(doubts[0]?.message).toContain(hint);
  });

  test("is one outside the range that the caller gives", () => {
    const range = { least: inches(24), most: inches(192) };
    const codes = (value: number): readonly string[] => {
      const result = readLength(value, "in", range);
      return result.ok ? result.value.doubts.map(({ code }) => code) : ["fault"];
    };
    expect(codes(24)).toEqual([]);
    expect(codes(192)).toEqual([]);
    expect(codes(23.9375)).toEqual(["length-not-a-door"]);
    expect(codes(192.0625)).toEqual(["length-not-a-door"]);
  });

  test.each<[string, LengthUnit, number, string]>([
    ["7 6", "in", 90, "length-feet-guessed"],
    ["7 6 1/2", "in", 90.5, "length-feet-guessed"],
    [`7'-14"`, "in", 98, "length-many-inches"],
    ["2,134 mm", "in", (2134 * 5) / 127, "length-comma"],
    ["2,134", "mm", (2134 * 5) / 127, "length-comma"],
    ["1,524 m", "in", 60, "length-comma"],
    ["84,125", "in", 84.125, "length-comma"],
    ["83-1/2", "mm", 83.5, "length-fraction-in-inches"],
  ])("%j in a workbook of %s is %d inches, with a doubt", (text, unit, expected, code) => {
    expect(toInches(read(text, unit).length)).toBe(expected);
    expect(doubtsOf(text, unit)).toEqual([code]);
  });

  test("says how it was read", () => {
    expect(read("7 6").doubts[0]?.message).toBe(
      `“7 6” has no marks and was read as 7'-6". ` +
        `Type it as 7'-6" if that is right, and as inches alone if it is not.`,
    );
    expect(read(7).doubts[0]?.message).toBe(
      `“7” was read as 7 in, which no opening is likely to be (1'-0" to 32'-0"). ` +
        "If 7 ft or 7 m is meant, type the unit too.",
    );
  });

  test("can have more than one doubt", () => {
    expect(doubtsOf("2,134")).toEqual(["length-comma", "length-not-a-door"]);
  });
});

describe("what is not a length", () => {
  test.each([
    // text, code, position
    ["", "length-blank", 0],
    [" \u00A0\t", "length-blank", 0],
    ["tbd", "length-not-understood", 0],
    ["by others", "length-not-understood", 0],
    ["84 high", "length-not-understood", 3],
    [`7'-0" high`, "length-not-understood", 6],
    ["84-", "length-not-understood", 2],
    ["7'-", "length-not-understood", 2],
    ["7'-x", "length-is-two", 3],
    [`7.5' 3"`, "length-not-understood", 5],
    ["7' 6'", "length-not-understood", 3],
    ["7 ft 30 cm", "length-not-understood", 5],
    ["7-6 mm", "length-not-understood", 2],
    ["7 14", "length-not-understood", 2],
    ["1e3", "length-not-understood", 1],
    ["7:6", "length-not-understood", 1],
    ["1,23,456", "length-not-understood", 4],
    [`84.5 1/2"`, "length-not-understood", 5],
    ["=84", "length-not-understood", 0],
    ["84😀", "length-not-understood", 2],
    ["٨٤", "length-not-understood", 0],
    [`4'-0" x 7'-0"`, "length-is-two", 6],
    ["48 x 84", "length-is-two", 3],
    ["48×84", "length-is-two", 2],
    ["3-0 by 7-0", "length-is-two", 4],
    ["84 3/2", "length-not-a-fraction", 3],
    [`7' 0 8/8"`, "length-not-a-fraction", 5],
    ["84 1/0", "length-not-understood", 4],
    ["7-14", "length-inches-past-eleven", 2],
    ["83-16", "length-inches-past-eleven", 3],
    ["-84", "length-negative", 0],
    ["  −7'-0\"", "length-negative", 2],
    ["- 84", "length-negative", 0],
    ["0", "length-zero", 0],
    [`0'-0"`, "length-zero", 0],
    [" 0 mm", "length-zero", 1],
    ["1000000", "length-too-large", 0],
    ["83334'", "length-too-large", 0],
    [`90000'-1"`, "length-too-large", 0],
    ["99999999999999999999", "length-too-large", 0],
    ["9".repeat(101), "length-text-too-long", 100],
    ["6-Jul", "length-is-a-date", 2],
    ["7/6/2026", "length-is-a-date", 3],
    ["Jul 6, 2026", "length-is-a-date", 0],
    ["2026-07-06", "length-is-a-date", 7],
  ])("%j stops making sense: %s at %d", (text, code, position) => {
    const result = readLength(text, "in");
    expect(result).toMatchObject({ ok: false, error: { code, position } });
  });

  test.each<[CellValue, string]>([
    [null, "length-blank"],
    [true, "length-not-text-or-number"],
    [NaN, "length-not-text-or-number"],
    [Infinity, "length-too-large"],
    [1e6, "length-too-large"],
    [-1, "length-negative"],
    [-Infinity, "length-negative"],
    [0, "length-zero"],
    [-0, "length-zero"],
    [1e-12, "length-zero"],
    [{ kind: "error", error: "#N/A" }, "length-is-an-error"],
    [{ kind: "date", serial: 46_209 }, "length-is-a-date"],
    [{ kind: "date", serial: NaN }, "length-is-a-date"],
  ])("a cell with %j has the code %s", (value, code) => {
    expect(readLength(value, "in")).toMatchObject({ ok: false, error: { code, position: 0 } });
  });

  test("is said in words, with the place", () => {
    const result = readLength(`7'-0" high`, "in");
    expect(!result.ok && result.error.message).toBe(
      `“7'-0" high” stops making sense as a length at “high” (character 7). ` +
        `Type it like 7'-6 1/2", 90 1/2 or 2134 mm.`,
    );
  });

  test("is shortened in the words where it is long, without half a character", () => {
    const result = readLength("x".repeat(38) + "😀".repeat(20), "in");
    const message = result.ok ? "" : result.error.message;
    expect(message).toContain(`“${"x".repeat(38)}…”`);
    // Half a character would not survive the way to bytes and back.
    expect(new TextDecoder().decode(new TextEncoder().encode(message))).toBe(message);
  });
});

describe("a date that was a length", () => {
  test.each([
    // serial (2026-07-06, 07-13, 06-06, 12-31), what was typed, how to type it
    [46_209, "probably 7-6, or 6-7 where days come before months", `7'-6"`],
    [46_216, "probably 13-7.", `13'-7"`],
    [46_179, "probably 6-6.", `6'-6"`],
    [46_387, "of what was typed.", `7'-6"`],
  ])("of serial %d says what was typed", (serial, typed, example) => {
    const result = readLength({ kind: "date", serial }, "in");
    const message = result.ok ? "" : result.error.message;
    expect(message).toContain(typed);
    expect(message).toContain(`such as ${example}.`);
  });

  test.each(["6-Jul", "6 July", "Jul-6", "July 6, 2026", "7/6/2026", "7-6-26", "2026-07-06"])(
    "is known in the text %j of a saved file",
    (text) => {
      const result = readLength(text, "in");
      expect(result).toMatchObject({ error: { code: "length-is-a-date" } });
      expect(!result.ok && result.error.message).toContain(`7-6`);
    },
  );
});

describe("laws of reading", () => {
  const feet = fc.integer({ min: 1, max: 30 });
  const inch = fc.integer({ min: 0, max: 11 });
  const fraction = fc
    .tuple(fc.constantFrom(2, 4, 8, 16, 32, 64), fc.nat())
    .map(([bottom, top]) => ({ top: (top % (bottom - 1)) + 1, bottom }));

  test("every spelling of feet, inches and a fraction is the same exact length", () => {
    fc.assert(
      fc.property(feet, inch, fraction, (f, i, { top, bottom }) => {
        const expected = rational((f * 12 + i) * bottom + top, bottom);
        const spellings = [
          `${f}'-${i} ${top}/${bottom}"`,
          `${f}' ${i}-${top}/${bottom}`,
          `${f}-${i} ${top}/${bottom}`,
          `${f}-${i}-${top}/${bottom}"`,
          `${f} ft ${i} ${top}/${bottom} in`,
          `${f}′–${i}\u00A0${top}⁄${bottom}″`,
          `${f}'-${i}" ${top}/${bottom}`,
          `${f * 12 + i} ${top}/${bottom}`,
          `${f * 12 + i}-${top}/${bottom}"`,
          ` ${f * 12 + i + top / bottom} inches `,
        ];
        for (const text of spellings) expect(read(text).length).toEqual(expected);
      }),
    );
  });

  test("every metric spelling is the same exact length", () => {
    fc.assert(
      fc.property(fc.integer({ min: 305, max: 9000 }), (tenths) => {
        const expected = rational(tenths * 5, 127);
        const spellings = [
          `${tenths} mm`,
          `${tenths / 10} cm`,
          `${String(tenths / 10).replace(".", ",")}cm`,
          `${(tenths / 1000).toFixed(4)} m`,
        ];
        for (const text of spellings) expect(read(text).length).toEqual(expected);
        expect(read(tenths, "mm").length).toEqual(expected);
      }),
    );
  });

  test("inches are the double nearest to the exact length", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 25_000_000 }), (thousandths) => {
        const { length } = read(`${(thousandths / 1000).toFixed(3)} mm`);
        const { numerator, denominator } = length;
        const value = toInches(length);
        // A double times 2^70 is whole here, so distances compare exactly.
        const scaled = (x: number): bigint => BigInt(x * 2 ** 70) * BigInt(denominator);
        const exact = BigInt(numerator) * 2n ** 70n;
        const off = (x: number): bigint => {
          const distance = scaled(x) - exact;
          return distance < 0n ? -distance : distance;
        };
        const step = value * 2 ** -52;
        expect(off(value) <= off(value + step)).toBe(true);
        expect(off(value) <= off(value - step)).toBe(true);
      }),
    );
  });

  test("any cell whatever is answered, with a position inside the text and words", () => {
    const cell = fc.oneof(
      fc.string({ unit: "binary" }),
      fc.string({ unit: fc.constantFrom(...Array.from("0123456789'\"-/ .,½x′″ftinmm")) }),
      fc.double(),
      fc.boolean(),
      fc.constant(null),
      fc.record({ kind: fc.constant("date" as const), serial: fc.double() }),
    );
    fc.assert(
      fc.property(cell, fc.constantFrom<LengthUnit>("in", "mm"), (value, unit) => {
        const result = readLength(value, unit);
        if (result.ok) {
          const size = toInches(result.value.length);
          expect(size > 0 && size < 1e6).toBe(true);
          return;
        }
        const { position, message } = result.error;
        const end = typeof value === "string" ? value.length : 0;
        expect(position >= 0 && position <= end).toBe(true);
        expect(message).not.toMatch(/\{(found|stop|read|typed|example|hint|least|most)\}/);
      }),
      { numRuns: 500 },
    );
  });
});
