import { describe, expect, test } from "@jest/globals";
import type { JobToChange } from "../../src/app/pricing/whatIfJobs";
import { cents, tenThousandths } from "../../src/core/base/units";
import { usDollar } from "../../src/core/money/currency";
import type { MarginRow } from "../../src/core/pricing/marginTable";
import { starterRanges } from "../../src/core/pricing/chances/ownerRanges";
import { noPercent, percent } from "../../src/core/pricing/rates/percent";
import { rollUp } from "../../src/core/pricing/rollup/rollUp";
import type { RollUpInput } from "../../src/core/pricing/rollup/rollUpInput";
import { inOrder } from "../../src/pane/margins/jobOrder";
import { gapWords, pointsWords, shareWords } from "../../src/pane/margins/marginWords";
import { readRange, shownRange, withRange } from "../../src/pane/margins/typedRanges";
import { nothingTyped } from "../../src/app/pricing/keptWhatIfs";
import { readWhatIf } from "../../src/pane/margins/typedWhatIf";

describe("words of a margin", () => {
  test.each([
    [0.2408, "24.1 %"],
    [-0.0001, "0.0 %"],
    [null, "none"],
  ])("a share of %s is %s", (share, words) => {
    expect(shareWords(share)).toBe(words);
  });

  test.each([
    [-0.024, "2.4 points below"],
    [-0.0001, "less than 0.1 points below"],
    [0.031, "3.1 points above"],
    [0, "on target"],
    [null, "no margin"],
  ])("a gap of %s is %s", (gap, words) => {
    expect(gapWords(gap)).toBe(words);
  });

  test("a change of margin has its sign", () => {
    expect(pointsWords(0.24, 0.2)).toBe("-4.0 points");
    expect(pointsWords(0.2, 0.24)).toBe("+4.0 points");
    expect(pointsWords(0.2, 0.2)).toBe("0.0 points");
    expect(pointsWords(null, 0.2)).toBe("");
  });
});

const job = (name: string, more: Partial<MarginRow> = {}): MarginRow => ({
  job: name,
  cost: cents(100),
  price: cents(200),
  profit: cents(100),
  markup: 1,
  margin: 0.5,
  target: percent(240_000),
  gap: 0.26,
  short: cents(0),
  oldestPrice: 46_000,
  shareNotPriced: 0,
  isIncomplete: false,
  ...more,
});

describe("the order of jobs", () => {
  // As `marginTable` hands them over: what is most at risk first.
  const rows = [
    job("B", { margin: 0.1, gap: -0.1, profit: cents(90), price: cents(900) }),
    job("A", { margin: null, gap: null, profit: cents(0), price: cents(0), oldestPrice: null }),
    job("C", { shareNotPriced: 0.5, oldestPrice: 45_000 }),
  ];
  test.each([
    ["risk", "B A C"],
    ["margin", "A B C"],
    ["gap", "A B C"],
    ["profit", "A B C"],
    ["price", "B C A"],
    ["age", "A C B"],
    ["notPriced", "C B A"],
    ["name", "A B C"],
  ] as const)("by %s", (order, names) => {
    expect(
      inOrder(rows, order)
        .map((row) => row.job)
        .join(" "),
    ).toBe(names);
  });
});

const input: RollUpInput = {
  job: "Crib",
  material: [
    { family: "Track", counted: cents(100_000), spares: cents(0), leftOver: cents(0) },
    { family: "Bolts", counted: cents(10_000), spares: cents(0), leftOver: cents(0) },
  ],
  sparesPaidBy: "job",
  leftOverPaidBy: "stock",
  notPriced: [],
  freight: [{ name: "Freight", kind: "typed", amount: cents(20_000) }],
  labour: [
    { role: "installer", hundredths: 1000, rate: tenThousandths(400_000), burden: noPercent },
  ],
  equipment: [],
  subcontract: [],
  allowance: [],
  overhead: null,
  contingency: null,
  salesTax: { paid: null, charged: null },
  bond: null,
  price: { method: "margin", percent: percent(200_000) },
  rounding: { step: 0, way: "nearest" },
};
const toChange: JobToChange = {
  job: "Crib",
  input,
  rollUp: rollUp(input),
  target: percent(200_000),
};

describe("a typed what-if", () => {
  test("takes what it can read, and tells what it cannot", () => {
    const changes = new Map([
      ["hours", "10 %"],
      ["material: Track", "-5"],
      ["freight", "x"],
      ["discount", "101"],
    ]);
    const { whatIf, faults } = readWhatIf({ ...nothingTyped, changes }, toChange, usDollar);
    expect(whatIf).toMatchObject({ hours: 100_000, freight: 0, discount: 0 });
    expect(whatIf.material.get("Track")).toBe(-50_000);
    expect([...faults].map(([name, { code }]) => [name, code])).toEqual([
      ["freight", "change-not-a-percentage"],
      ["discount", "change-out-of-range"],
    ]);
  });

  // Cost 1,700.00: by hand, 1,700 x 1.25 = 1,700 / (1 - 0.2) = 2,125.
  test.each([
    ["price", "$2,000.50", 200_050, []],
    ["markup", "25", 212_500, []],
    ["margin", "20 %", 212_500, []],
    ["markup", "20", 204_000, ["markup-is-the-target-margin"]],
    ["margin", "25", 226_667, ["margin-is-the-target-markup"]],
    ["margin", "95", null, ["margin-out-of-range"]],
    ["price", "soon", null, ["price-not-understood"]],
  ] as const)("a win by %s of %s", (winWay, win, price, codes) => {
    const { whatIf, winFindings } = readWhatIf(
      { ...nothingTyped, win, winWay },
      toChange,
      usDollar,
    );
    expect(whatIf.winPrice).toBe(price);
    expect(winFindings.map(({ code }) => code)).toEqual(codes);
  });

  test("a win by margin covers the cost with the changes", () => {
    const changes = new Map([["freight", "100"]]);
    const typed = { ...nothingTyped, changes, win: "20", winWay: "margin" } as const;
    // 1,900 / 0.8
    expect(readWhatIf(typed, toChange, usDollar).whatIf.winPrice).toBe(237_500);
  });
});

describe("typed ranges", () => {
  const shape = "pert";
  test("are read as percentages, a blank as none", () => {
    expect(readRange({ low: "-5", likely: "", high: "10 %", shape })).toEqual({
      low: percent(-50_000),
      likely: noPercent,
      high: percent(100_000),
      shape,
    });
    expect(readRange({ low: "5", likely: "0", high: "10", shape })).toMatch(/between the lowest/);
    expect(readRange({ low: "?", likely: "0", high: "10", shape })).toMatch(/type percentages/);
  });

  test("show what was typed as long as it cannot be used or says the same", () => {
    const range = {
      low: percent(-50_000),
      likely: noPercent,
      high: percent(100_000),
      shape,
    } as const;
    const same = { low: "-5.0", likely: "", high: "10", shape } as const;
    const wrong = { ...same, low: "20" };
    expect(shownRange(same, range)).toBe(same);
    expect(shownRange(wrong, range)).toBe(wrong);
    const fromElsewhere = { ...range, high: percent(200_000) };
    expect(shownRange(same, fromElsewhere)).toMatchObject({ low: "-5", likely: "0", high: "20" });
  });

  test("for every job take the place of the job's own; others stay", () => {
    const change = { low: noPercent, likely: noPercent, high: percent(10_000), shape } as const;
    const hours = { subject: "hours", family: "" } as const;
    const own = withRange(starterRanges, hours, change, { job: "Crib", forJob: "Crib" });
    expect(own).toHaveLength(starterRanges.length + 1);
    const every = withRange(own, hours, change, { job: "crib ", forJob: "" });
    expect(every).toHaveLength(starterRanges.length);
    expect(every.at(-1)).toEqual({ ...hours, job: "", ...change });
  });
});
