import { describe, expect, test } from "@jest/globals";
import type { CellValue } from "../../../../src/core/base/cell";
import { rateRows, type RateKey } from "../../../../src/core/pricing/rates/rateRows";
import { rateReader } from "../../../../src/core/pricing/rates/rates";
import { dollars, ratesOf } from "../pricedJobs";

const reader = (...rates: Parameters<typeof ratesOf>) =>
  rateReader(ratesOf(...rates), " NORTH ", dollars);

describe("the rate of a job", () => {
  test("is what was typed for it, by the job's name in any case", () => {
    expect(reader({ dayHours: 8 }, { dayHours: 6 }).number("dayHours")).toBe(6);
  });

  test("is the firm's usual where the job's own cell is blank", () => {
    expect(reader({ dayHours: 8 }, { dayHours: " " }).number("dayHours")).toBe(8);
  });

  test("is the starter's where the firm has no row for it, and that is remembered", () => {
    const read = reader({});
    expect(read.number("dayHours")).toBe(7.5);
    expect(read.invented).toEqual(["Working day"]);
  });

  test("is nothing where the firm left its usual blank: the starter does not come back", () => {
    const read = reader({ overhead: null });
    expect([read.percent("overhead"), read.invented]).toEqual([null, []]);
  });
});

describe("a value is read by its kind", () => {
  test.each([
    ["rate", "leadRate", "41.505", 415_050],
    ["rate", "leadRate", 0, 0],
    ["money", "freightLeast", "1,150.00", 115_000],
    ["money", "freightLeast", null, null],
    ["percent", "burden", "38 %", 380_000],
    ["percent", "burden", 0.38, 380_000],
    ["percent", "burden", "", null],
    ["number", "site", "1.2", 1.2],
    ["number", "site", 0, 0],
  ] as const)("as %s: %s of %j is %j", (kind, key, value, expected) => {
    const read = reader({ [key]: value });
    expect(read[kind](key)).toBe(expected);
    expect(read.findings).toEqual([]);
  });

  test("as a choice, in any case, and blank is the starter's", () => {
    const ways = ["up", "nearest"] as const;
    expect(reader({ roundWay: "Nearest" }).choice("roundWay", ways)).toBe("nearest");
    expect(reader({ roundWay: null }).choice("roundWay", ways)).toBe("up");
  });

  test("as groups, parted as people part them", () => {
    const groups = ["material", "freight", "labour"] as const;
    const read = reader({ overheadOf: "Labour + material; freight" });
    expect(read.groups("overheadOf", groups)).toEqual(groups);
  });
});

describe("what cannot be read is a stop with its cell, and no value", () => {
  test.each([
    ["number", "site", "a lot", "rate-not-a-number"],
    ["number", "site", -1, "rate-not-a-number"],
    ["percent", "burden", "a third", "rate-not-a-percentage"],
    ["percent", "burden", true, "rate-not-a-percentage"],
    ["percent", "target", "100 %", "rate-out-of-range"],
    ["percent", "burden", "-38 %", "rate-out-of-range"],
    ["number", "dayHours", 25, "rate-out-of-range"],
    ["number", "leadPeople", 1001, "rate-out-of-range"],
    ["money", "freightLeast", "1.2.3", "price-not-understood"],
    ["rate", "leadRate", -5, "price-negative"],
  ] as const)("as %s: %s of %j", (kind, key, value, code) => {
    const read = reader({ [key]: value });
    expect(read[kind](key)).toBeNull();
    expect(read.findings).toEqual([
      expect.objectContaining({
        code,
        level: "stop",
        place: { sheet: "Rates", row: 2, column: 3 },
        found: String(value).toUpperCase() === "TRUE" ? "TRUE" : String(value),
      }),
    ]);
  });

  test("as a choice, with the choices in its message", () => {
    const read = reader({ roundWay: "down" });
    read.choice("roundWay", ["up", "nearest"]);
    expect(read.findings.map(({ message }) => message)).toEqual([
      expect.stringContaining("Rounding is down, which is none of up, nearest."),
    ]);
  });

  test("as groups, though the known ones count", () => {
    const read = reader({ overheadOf: "labour, lunch" });
    expect(read.groups("overheadOf", ["material", "labour"])).toEqual(["labour"]);
    expect(read.findings.map(({ code }) => code)).toEqual(["rate-not-a-choice"]);
  });
});

describe("a percentage that is likely another one", () => {
  test.each([
    ["contingency", 1.5, 1_500_000],
    ["overhead", "90", 900_000],
    ["taxCharged", 0.5, 500_000],
  ] as const)("is doubted at its cell, and read: %s of %j", (key, value, read) => {
    const rates = reader({ [key]: value });
    expect([rates.percent(key), rates.percent(key)]).toEqual([read, read]);
    expect(rates.findings).toEqual([
      expect.objectContaining({
        code: "rate-unlikely",
        level: "warn",
        place: { sheet: "Rates", row: 2, column: 3 },
        found: String(value),
      }),
    ]);
  });

  test.each([
    ["contingency", "150 %"],
    ["contingency", 0.4],
    ["burden", 1],
  ] as const)("is none with its sign, or within what is usual: %s of %j", (key, value) => {
    const rates = reader({ [key]: value });
    expect(rates.percent(key)).not.toBeNull();
    expect(rates.findings).toEqual([]);
  });
});

describe("a weight, load or length", () => {
  const headed = (unit: string | null, key: RateKey, value: CellValue) => {
    const place = { sheet: "Rates", row: 2, column: 1 };
    const table = { ...ratesOf({ [key]: value }), units: { [key]: { value: unit, place } } };
    return rateReader(table, "North", dollars);
  };

  // 1 lb = 0.45359237 kg exactly: international yard and pound agreement of 1959. The others: NIST
  // SP 811, appendix B.8.
  test.each([
    ["trolleyCarries", null, 250, 250],
    ["trolleyCarries", "lb", 250, 250],
    ["trolleyCarries", "kg", 45.359237, 100],
    ["trolleyCarries", "kg", "45,359237", 99.999999],
    ["palletCarries", "KG", 453.59237, 1000],
    ["trackBends", "N·m", 11.29848, 100],
    ["trackBends", "N m", "11.29848 Nm", 100],
    ["trackWeight", "kg per metre", 1.488164, 1],
    ["trackWeight", "kg/m", 1.488164, 1],
    ["trolleyFromEdge", "mm", 254, 10],
    ["trackInertia", "cm^4", 41.62314, 1],
    ["trolleyCarries", null, "45.359237 kg", 100],
    ["hangerCarries", "", "4.448222 kN", 1000],
    ["trackBends", null, "1.355818 kN·m", 12_000],
    ["frameWeight", null, "1.488164 kg per metre", 1],
  ] as const)("%s in a row of %s: %s is %d", (key, unit, value, expected) => {
    const read = headed(unit, key, value);
    expect(read.number(key)).toBeCloseTo(expected, expected >= 1000 ? 2 : 4);
    expect(read.findings).toEqual([]);
  });

  test.each([
    ["trolleyCarries", "lb", "250 kg", "551.156 lb"],
    ["trolleyCarries", "kg", "2,000.5 lb", "2,000.5 lb"],
    ["trackBends", "in-lb", "30 N·m", "265.522 in-lb"],
  ] as const)("%s in a row of %s with its own unit, %s, is told", (key, unit, value, words) => {
    const read = headed(unit, key, value);
    expect(read.number(key)).not.toBeNull();
    expect(read.findings).toEqual([
      expect.objectContaining({
        code: "rate-in-other-unit",
        level: "note",
        found: value,
        message: expect.stringContaining(`in a row of ${unit}`) as unknown,
      }),
    ]);
    expect(read.findings[0]?.message).toContain(`which makes it ${words}`);
  });

  test.each([
    ["trolleyCarries", "lb", "2 tons", "tons", 3],
    ["trolleyCarries", "stone", 20, "stone", 1],
    ["trackBends", "in-lb", "250 kg", "kg", 3],
    ["trackBends", "lb", 250, "lb", 1],
    ["palletCarries", "per pallet", 900, "per pallet", 1],
  ] as const)("%s in a row of %s is not %s: a stop, and no value", (...of) => {
    const [key, unit, value, wrong, column] = of;
    const read = headed(unit, key, value);
    expect([read.number(key), read.number(key)]).toEqual([null, null]);
    expect(read.findings).toEqual([
      expect.objectContaining({
        code: "rate-unit-not-known",
        level: "stop",
        place: { sheet: "Rates", row: 2, column },
      }),
    ]);
    expect(read.findings[0]?.message).toContain(`${wrong} is no unit for it`);
  });

  test("is held against what may be typed in the core's own unit", () => {
    const read = headed("kg", "trolleyCarries", 50_000);
    expect(read.number("trolleyCarries")).toBeNull();
    expect(read.findings[0]?.message).toContain("from 0 to 100,000 lb");
  });

  test("whose comma could be a decimal one is told", () => {
    const read = headed("kg", "hangerCarries", "1,250");
    expect(read.number("hangerCarries")).toBeCloseTo(2755.778, 3);
    expect(read.findings[0]?.message).toContain("read as 1,250 kg (2,755.778 lb)");
  });

  test.each([
    ["per hundredweight", 460_000],
    ["$ per cwt", 460_000],
    ["per 100 lb", 460_000],
    [null, 460_000],
    ["per 100 kg", null],
    ["per kg", null],
  ])("freight %s", (unit, rate) => {
    const read = headed(unit, "freight0", 46);
    expect(read.rate("freight0")).toBe(rate);
    expect(read.findings.map(({ code }) => code)).toEqual(
      rate === null ? ["rate-unit-not-known"] : [],
    );
  });
});

test("a cell that is read twice is wrong once", () => {
  const read = reader({ target: "high" });
  expect([read.percent("target"), read.percent("target")]).toEqual([null, null]);
  expect(read.findings).toHaveLength(1);
});

test("every starter value can be read by its own kind", () => {
  const read = reader({});
  for (const rate of rateRows) {
    if (rate.kind === "choice" || rate.kind === "groups") continue;
    if (rate.key === "methodValue") continue;
    const value = read[rate.kind === "count" ? "number" : rate.kind](rate.key);
    expect([rate.key, value === null]).toEqual([rate.key, rate.starter === ("" as string)]);
  }
  expect(read.findings).toEqual([]);
});

test("labels and keys are each used once", () => {
  expect(new Set(rateRows.map(({ key }) => key)).size).toBe(rateRows.length);
  expect(new Set(rateRows.map(({ label }) => label.toLowerCase())).size).toBe(rateRows.length);
});
