import { describe, expect, test } from "@jest/globals";
import { rateRows } from "../../../../src/core/pricing/rates/rateRows";
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
