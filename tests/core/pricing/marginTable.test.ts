import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { cents } from "../../../src/core/base/units";
import { marginDoubts, marginTable, type PricedJob } from "../../../src/core/pricing/marginTable";
import { percent } from "../../../src/core/pricing/rates/percent";
import { rollUp } from "../../../src/core/pricing/rollup/rollUp";
import type { RollUpInput } from "../../../src/core/pricing/rollup/rollUpInput";
import { anyJob, plainJob } from "./jobs";

const target = percent(250_000);
type Known = Partial<Omit<PricedJob, "rollUp">> & { readonly input?: Partial<RollUpInput> };

/** A job whose cost and price are typed. */
const jobOf = (job: string, cost: number, price: number, known: Known = {}): PricedJob => ({
  rollUp: rollUp({
    ...plainJob,
    job,
    material: [],
    freight: [],
    labour: [],
    equipment: [],
    allowance: [{ name: "All", kind: "typed", amount: cents(cost) }],
    overhead: null,
    contingency: null,
    salesTax: { paid: null, charged: null },
    price: { method: "typed", price: cents(price) },
    ...known.input,
  }),
  target: known.target ?? target,
  oldestPrice: known.oldestPrice ?? null,
  lines: known.lines ?? 10,
  unpricedLines: known.unpricedLines ?? 0,
});
const order = (jobs: readonly PricedJob[]) => marginTable(jobs).rows.map(({ job }) => job);

describe("the table of all jobs", () => {
  test("shows cost, price, profit, margin, target, gap and what the price is short of", () => {
    const [row] = marginTable([jobOf("North", 80_000, 100_000, { unpricedLines: 1 })]).rows;
    expect(row).toMatchObject({ cost: 80_000, price: 100_000, profit: 20_000, short: 6_667 });
    expect(row?.margin).toBeCloseTo(0.2, 12);
    expect(row?.markup).toBeCloseTo(0.25, 12);
    expect(row?.gap).toBeCloseTo(-0.05, 12);
    expect([row?.shareNotPriced, row?.isIncomplete]).toEqual([0.1, true]);
  });

  test("adds up", () => {
    fc.assert(
      fc.property(fc.array(anyJob, { maxLength: 5 }), (inputs) => {
        const jobs = inputs.map((input) => ({ ...jobOf("Any", 0, 0), rollUp: rollUp(input) }));
        const { rows, total } = marginTable(jobs);
        const sum = (of: "cost" | "price" | "profit" | "short") =>
          rows.reduce((all, row) => all + row[of], 0);
        expect([total.cost, total.price, total.profit, total.short]).toEqual([
          sum("cost"),
          sum("price"),
          sum("profit"),
          sum("short"),
        ]);
      }),
    );
  });

  test("puts the most money short of target first, whatever the margins are", () => {
    const small = jobOf("small, deep in loss", 2_000, 1_000);
    const large = jobOf("large, a little short", 8_000_000, 10_000_000);
    expect(order([small, large])).toEqual(["large, a little short", "small, deep in loss"]);
  });

  test("then what is not all priced, then the oldest prices, then the name", () => {
    const fine = [10_000, 20_000] as const;
    expect(
      order([
        jobOf("B", ...fine, { oldestPrice: 46_000 }),
        jobOf("newer", ...fine, { oldestPrice: 46_100 }),
        jobOf("no dates", ...fine),
        jobOf("half unpriced", ...fine, { unpricedLines: 5 }),
        jobOf("freight unpriced", ...fine, { input: { notPriced: ["freight"] } }),
        jobOf("A", ...fine, { oldestPrice: 46_000 }),
      ]),
    ).toEqual(["half unpriced", "freight unpriced", "no dates", "A", "B", "newer"]);
  });

  test("a job that just keeps its target is short of nothing", () => {
    const [row] = marginTable([jobOf("North", 75_000, 100_000)]).rows;
    expect(row?.short).toBe(0);
  });

  test("a job priced at its target is not short by what rounding to the cent took", () => {
    // 1,000.00 / (1 - 25 %) = 1,333.333...
    const priced = (cost: number) =>
      jobOf("North", cost, 0, {
        input: { price: { method: "margin", percent: target }, rounding: { step: 0, way: "up" } },
      });
    const job = priced(100_000);
    const { price, cost } = job.rollUp;
    expect([price, cost, 4 * (price - cost) < price]).toEqual([133_333, 100_000, true]);
    const [row] = marginTable([job]).rows;
    expect(row?.short).toBe(0);
    expect(marginTable([jobOf("North", 100_000, price - 1)]).rows[0]?.short).toBe(2);
  });

  test("has a job without lines, or without a price", () => {
    const [row] = marginTable([jobOf("North", 0, 0, { lines: 0 })]).rows;
    expect(row).toMatchObject({ margin: null, gap: null, shareNotPriced: 0, short: 0 });
  });
});

describe("what an owner is told", () => {
  const age = { today: 46_200, mostDays: 90 };
  const doubts = (job: PricedJob) => marginDoubts(marginTable([job]), [job], age);

  test.each([
    ["a price below cost", jobOf("N", 1_000, 900), "price-below-cost"],
    ["a margin below target", jobOf("N", 80_000, 100_000), "margin-below-target"],
    ["prices that are old", jobOf("N", 1, 100, { oldestPrice: 46_109 }), "prices-old"],
    [
      "a cost that is not complete",
      jobOf("N", 1, 100, { input: { notPriced: ["GUIDE"] } }),
      "price-incomplete",
    ],
  ])("%s", (_what, job, code) => {
    const found = doubts(job);
    expect(found.map((finding) => finding.code)).toEqual([code]);
    expect(found[0]?.message).not.toMatch(/[{}]/);
  });

  test("the price that keeps the target, in its words", () => {
    expect(doubts(jobOf("N", 80_000, 100_000))[0]?.message).toBe(
      "The margin of 20.0 % is below the target of 25 %. A price of $1,066.67 keeps the target.",
    );
  });

  test("nothing about a job that is as it should be", () => {
    expect(doubts(jobOf("N", 1, 100, { oldestPrice: 46_110 }))).toEqual([]);
  });
});
