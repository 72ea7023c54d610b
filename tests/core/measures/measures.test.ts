import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { measureKinds, ownUnitOf, unitsOf } from "../../../src/core/measures/measures";
import { inOwnUnit, readMeasure, readUnit } from "../../../src/core/measures/readMeasure";
import {
  groupedFigure,
  measureText,
  shownAmount,
  shownUnit,
} from "../../../src/core/measures/writeMeasure";

const reading = (value: string | number, kind: (typeof measureKinds)[number] = "weight") => {
  const read = readMeasure(value, kind, ownUnitOf(kind));
  return read.ok ? read.value.amount : read.error;
};

describe("a weight or load as people type it", () => {
  // 1 lb = 0.45359237 kg exactly: international yard and pound agreement of 1959. The factors of the
  // others: NIST SP 811, appendix B.8, to its seven digits.
  test.each([
    ["45.359237kg", "weight", 100],
    ["453.59237 g", "weight", 1],
    ["4.448222 N", "weight", 1],
    ["4.448222 kN", "weight", 1000],
    ["45.359237 tonnes", "weight", 100_000],
    ["2.5 lb", "weight", 2.5],
    ["2.5 lbs.", "weight", 2.5],
    ["500#", "weight", 500],
    ["8 oz", "weight", 0.5],
    ["2,5 lb each", "weight", 2.5],
    ["1,234.5 pounds", "weight", 1234.5],
    ["1 200 lb", "weight", 1200],
    ["1.488164 kg per metre", "weight by length", 1],
    ["1.488164 kg/m", "weight by length", 1],
    ["14.59390 N/m", "weight by length", 1],
    ["2 lb/ft", "weight by length", 2],
    ["4.882428 kg/m²", "weight by area", 1],
    ["11.29848 N·m", "bending", 100],
    ["11.29848 Nm", "bending", 100],
    ["1.355818 N m", "bending", 12],
    ["1.355818 kN m", "bending", 12_000],
    ["5 ft-lb", "bending", 60],
    ["5 lb·ft", "bending", 60],
    ["25.4 mm", "length", 1],
    ['1.5"', "length", 1.5],
    ["41.62314 cm^4", "inertia", 1],
    ["41.62314 cm⁴", "inertia", 1],
    ["7", "weight", 7],
  ] as const)("%s of %s is %d of the core's own", (text, kind, expected) => {
    const amount = reading(text, kind);
    expect(typeof amount === "number" && amount / expected).toBeCloseTo(1, 6);
  });

  test("with a unit of another kind, or of none, is not read", () => {
    expect(reading("3 tons")).toEqual({ code: "unit-not-known", unit: "tons" });
    expect(reading("250 kg", "bending")).toEqual({ code: "unit-not-known", unit: "kg" });
    expect(reading("30 N·m", "weight by length")).toEqual({ code: "unit-not-known", unit: "N·m" });
  });

  test.each(["", "heavy", "kg", "-1 kg", "1 or 2 kg", "1/2 lb", "1 1/2 lb", "~2 kg", "1e3 kg"])(
    "is not taken from %j",
    (text) => {
      expect(readMeasure(text, "weight", ownUnitOf("weight"))).toMatchObject({ ok: false });
    },
  );

  test("is doubted where its comma could be a decimal one", () => {
    const comma = (text: string) => {
      const read = readMeasure(text, "weight", ownUnitOf("weight"));
      return read.ok && [read.value.typed, read.value.hasUnsureComma];
    };
    expect(["1,250 kg", "1,25 kg", "0,250 kg", "1,250.5 kg"].map(comma)).toEqual([
      [1250, true],
      [1.25, false],
      [0.25, false],
      [1250.5, false],
    ]);
  });
});

describe("units", () => {
  test("are known by their own names, and no name stands for two of a kind", () => {
    for (const kind of measureKinds) {
      const words = unitsOf[kind].flatMap((unit) => unit.words);
      expect(words).toHaveLength(new Set(words).size);
      for (const unit of unitsOf[kind]) expect(readUnit(unit.name, kind)).toBe(unit);
    }
  });

  test("convert there and back", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...measureKinds),
        fc.double({ min: 0.001, max: 1e6, noNaN: true }),
        (kind, amount) => {
          const shown = shownAmount(amount, kind, "metric");
          expect(inOwnUnit(shown, shownUnit(kind, "metric")) / amount).toBeCloseTo(1, 12);
          expect(shownAmount(amount, kind, "pounds")).toBe(amount);
        },
      ),
    );
  });
});

describe("an amount as text", () => {
  test.each([
    [1787, "weight", "pounds", 0, "1,787 lb"],
    [1787, "weight", "metric", 1, "810.6 kg"],
    [0.0351, "weight", "pounds", 3, "0.035 lb"],
    [18_375, "bending", "pounds", 0, "18,375 in-lb"],
    [18_375, "bending", "metric", 0, "2,076 N·m"],
    [2.6, "weight by length", "metric", 2, "3.87 kg per m"],
    [0.736, "weight by area", "metric", 2, "3.59 kg per m²"],
    [1_234_567.5, "weight", "pounds", 1, "1,234,567.5 lb"],
  ] as const)("%d of %s in %s is %s", (amount, kind, style, places, words) => {
    expect(measureText(amount, kind, style, places)).toBe(words);
  });

  test("has commas between thousands and none elsewhere", () => {
    expect([999, 1000, 1000.125, 0.1234].map((value) => groupedFigure(value, 3))).toEqual([
      "999",
      "1,000",
      "1,000.125",
      "0.123",
    ]);
  });
});
