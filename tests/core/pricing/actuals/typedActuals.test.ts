/** What a person types when a job is done, put to its estimate. */
import { expect, test } from "@jest/globals";
import type { CellValue } from "../../../../src/core/base/cell";
import { cents, minutes, pieces } from "../../../../src/core/base/units";
import {
  costDifferences,
  jobOutcome,
  type JobActuals,
} from "../../../../src/core/pricing/actuals/actuals";
import { estimatedActuals } from "../../../../src/core/pricing/actuals/estimatedActuals";
import { directKey } from "../../../../src/core/pricing/rollup/rollUpCosts";
import { amountOf } from "../../../../src/core/pricing/rollup/rollUp";
import {
  hasActuals,
  withTypedActuals,
  type ActualRow,
} from "../../../../src/core/pricing/actuals/typedActuals";
import { dollars, estimateOf, pricesOf, ratesOf } from "../pricedJobs";

const north: JobActuals = {
  job: "North",
  costs: [{ name: "Freight", estimated: cents(50_000), actual: null }],
  bags: [{ bag: "Track", estimated: minutes(120), actual: null, rows: [3] }],
  pieces: [{ item: "HN 1/4", counted: pieces(40), used: null }],
};
const typed = (...cells: readonly CellValue[]): ActualRow => {
  const [job, kind, name, actual] = cells.map((value, column) => ({
    value,
    place: { sheet: "Actuals", row: 5, column },
  }));
  return {
    ...(job === undefined ? {} : { job }),
    ...(kind === undefined ? {} : { kind }),
    ...(name === undefined ? {} : { name }),
    ...(actual === undefined ? {} : { actual }),
  };
};
const put = (...rows: readonly ActualRow[]) => withTypedActuals([north], rows, dollars);

test("names in any case; rows of one name add up; a blank says nothing yet", () => {
  const { jobs, findings } = put(
    typed("north", "Cost", "freight", "$400.10"),
    typed("North", "cost", "Freight", 99.9),
    typed("North", "hours", "TRACK", 1.5),
    typed("North", "hours", "track", "0.75"),
    typed("North", "pieces", "hn 1/4", null),
  );
  expect(findings).toEqual([]);
  expect(jobs).toEqual([
    {
      job: "North",
      costs: [{ name: "Freight", estimated: 50_000, actual: 50_000 }],
      bags: [{ bag: "Track", estimated: 120, actual: 135, rows: [3] }],
      pieces: [{ item: "HN 1/4", counted: 40, used: null }],
    },
  ]);
  expect(jobs.map(hasActuals)).toEqual([true]);
  expect(put().jobs.map(hasActuals)).toEqual([false]);
});

test("a cost that nobody estimated counts in full, and is noted with the name that was perhaps meant", () => {
  const { jobs, findings } = put(
    typed("North", "cost", "Frieght", 120),
    typed("North", "cost", "Crane", 75),
  );
  expect(jobs[0]?.costs.slice(1)).toEqual([
    { name: "Frieght", estimated: 0, actual: 12_000 },
    { name: "Crane", estimated: 0, actual: 7_500 },
  ]);
  expect(findings.map(({ code, level }) => [code, level])).toEqual([
    ["actual-not-estimated", "note"],
    ["actual-not-estimated", "note"],
  ]);
  expect(findings[0]?.message).toContain("Did you mean Freight?");
});

test.each<readonly [string, ActualRow, string]>([
  ["a job that is not there", typed("Nort", "cost", "Freight", 1), "actual-of-no-job"],
  ["another kind", typed("North", "weight", "Freight", 1), "actual-of-no-kind"],
  ["hours below zero", typed("North", "hours", "Track", -1), "actual-not-a-number"],
  ["half a piece", typed("North", "pieces", "HN 1/4", 1.5), "actual-not-a-number"],
  ["words for an amount", typed("North", "cost", "Freight", "a lot"), "price-not-understood"],
])("%s is a warning and not used", (_what, row, code) => {
  const { jobs, findings } = put(row);
  expect(jobs).toEqual([north]);
  expect(findings).toEqual([expect.objectContaining({ code, level: "warn" })]);
});

test("a job's estimate, cost by cost, is its direct cost", () => {
  const result = estimateOf([{ mark: "A-1" }, { mark: "A-2", width: "5'", quantity: 3 }]);
  const [price] = pricesOf(result, ratesOf({ equipment: 250, allowance: 80 }));
  const material = result.jobs[0]?.material;
  if (price === undefined || material === undefined) throw new Error("no job");
  const estimate = estimatedActuals(price, material);
  expect(jobOutcome(estimate).estimated).toBe(amountOf(price.rollUp.lines, directKey));
  expect(estimate.costs.map(({ name }) => name)).toEqual(
    expect.arrayContaining(["Freight", "Labour", "Equipment", "Allowances"]),
  );
  const all = estimate.bags.reduce((sum, bag) => sum + bag.estimated, 0);
  expect(all).toBeCloseTo(price.hours.minutes, 6);
  expect(costDifferences([estimate])).toEqual([]);
});
