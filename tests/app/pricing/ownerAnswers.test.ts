/** What an owner asks of a priced workbook: ranges, what-if, simulation, actuals. */
import { describe, expect, test } from "@jest/globals";
import type { MemoryWorkbook } from "../../../src/adapters/memory/memoryWorkbook";
import { actualsReport } from "../../../src/app/pricing/jobActuals";
import { priceWorkbook } from "../../../src/app/pricing/priceWorkbook";
import { keepOwnerRanges } from "../../../src/app/pricing/ranges";
import { defaultSettings } from "../../../src/app/settings";
import { runSimulation, simulationTask } from "../../../src/app/pricing/simulateJob";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import { swingsOfJob, whatIfJob, whatIfJobs } from "../../../src/app/pricing/whatIfJobs";
import type { CellValue } from "../../../src/core/base/cell";
import { finish } from "../../../src/core/base/steps";
import { cents } from "../../../src/core/base/units";
import { costByPrice, keepsTarget } from "../../../src/core/pricing/keepTarget";
import { percent } from "../../../src/core/pricing/rates/percent";
import { asEstimated } from "../../../src/core/pricing/chances/whatIf";
import { scheduleRows, workbookOf, type TypedSheets } from "../typedWorkbook";

const schedule = scheduleRows("A-1 | 2 | sliding door | 8' | 7' | 8'");
const withSheets = (sheets: TypedSheets = {}): MemoryWorkbook =>
  workbookOf({ Schedule: schedule, ...sheets });

async function priced(workbook: MemoryWorkbook) {
  const takeOff = await takeOffWorkbook(workbook, defaultSettings);
  if (!takeOff.ok) throw new Error(takeOff.error.message);
  const prices = await priceWorkbook(workbook, takeOff.value, defaultSettings, 46_000);
  if (!prices.ok) throw new Error(prices.error.message);
  const [job] = prices.value.jobs;
  if (job === undefined) throw new Error("no job");
  return { job, prices: prices.value, takeOff: takeOff.value };
}

const rangesSheet: readonly (readonly CellValue[])[] = [
  ["Range of", "Job", "Lowest", "Most likely", "Highest", "Shape"],
  ["hours", null, "0 %", null, "50 %", "uniform"],
];

describe("ranges", () => {
  test("are the starter's, then those kept in the workbook, then those of a sheet", async () => {
    const workbook = withSheets();
    expect((await priced(workbook)).prices.ranges.from).toBe("starter");
    const kept = (await priced(workbook)).prices.ranges.ranges.slice(0, 1);
    await keepOwnerRanges(workbook, kept);
    expect((await priced(workbook)).prices.ranges).toEqual({
      ranges: kept,
      from: "kept",
      findings: [],
    });
    const { prices } = await priced(withSheets({ Ranges: rangesSheet }));
    expect(prices.ranges).toMatchObject({
      from: "sheet",
      ranges: [{ subject: "hours", high: 500_000 }],
    });
  });

  test.each(["{", "[1]", '[{"subject":"hours"}]', '{"a":1}'])(
    "what is kept and cannot be read as ranges (%s) is passed over",
    async (text) => {
      const workbook = withSheets();
      await workbook.writeSetting("ranges", text);
      expect((await priced(workbook)).prices.ranges.from).toBe("starter");
    },
  );

  test("a row that cannot be used is among the findings of the prices", async () => {
    const [headings = []] = rangesSheet;
    const { prices } = await priced(withSheets({ Ranges: [headings, ["luck", null, 0, 0, 1]] }));
    expect(prices.findings.map(({ code }) => code)).toContain("range-subject-unknown");
  });
});

describe("what-if", () => {
  test("the price that keeps the target does, a cent less does not; the discount leads to it", async () => {
    const { job } = await priced(withSheets());
    const answer = whatIfJob(job, { ...asEstimated, hours: percent(200_000) });
    const cost = costByPrice(answer.rollUp);
    expect(answer.addsCost).toBeGreaterThan(0);
    expect(answer.addsPrice).toBe(0);
    expect(keepsTarget(cost, answer.priceThatKeeps, job.target)).toBe(true);
    expect(keepsTarget(cost, cents(answer.priceThatKeeps - 1), job.target)).toBe(false);
    expect(answer.discountThatKeeps.amount).toBe(answer.rollUp.price - answer.priceThatKeeps);
  });

  test("over all jobs the sums are those of the rows, and a win price is nobody's", async () => {
    const { prices } = await priced(withSheets());
    const table = whatIfJobs(prices.jobs, { ...asEstimated, winPrice: cents(1) });
    expect(table.after).toEqual(table.before);
    const more = whatIfJobs(prices.jobs, { ...asEstimated, rate: percent(100_000) });
    expect(more.addsProfit).toBe(more.rows.reduce((sum, { answer }) => sum + answer.addsProfit, 0));
    expect(more.addsProfit).toBeLessThan(0);
  });

  test("swings follow the typed ranges, widest first", async () => {
    const { job, prices } = await priced(withSheets({ Ranges: rangesSheet }));
    const [first, ...others] = swingsOfJob(job, prices.ranges.ranges);
    expect(first).toMatchObject({ name: "hours", low: 0, high: 500_000 });
    expect(others.every(({ swing }) => swing === 0)).toBe(true);
  });
});

test("a simulation can be sent to a worker, tells how far it is, and is the same for the same seed", async () => {
  const { job, prices } = await priced(withSheets({ Ranges: rangesSheet }));
  const task = structuredClone(simulationTask(job, prices.ranges.ranges, { seed: 7, draws: 4000 }));
  const told: number[] = [];
  const steps = runSimulation(task);
  let step = steps.next();
  for (; step.done !== true; step = steps.next()) told.push(step.value);
  expect(told).toEqual([0.25, 0.5, 0.75, 1]);
  expect(step.value).toEqual(finish(runSimulation(task)));
  const high = whatIfJob(job, { ...asEstimated, hours: percent(500_000) }).rollUp.margin ?? NaN;
  const [low, most] = [step.value?.margins[0] ?? NaN, step.value?.margins.at(-1) ?? NaN];
  // Hours move evenly from as estimated to half as much again, so the mean is in the middle.
  expect(low).toBeGreaterThanOrEqual(high - 1e-4);
  expect(most).toBeLessThanOrEqual((job.rollUp.margin ?? NaN) + 1e-4);
  expect(step.value?.mean).toBeCloseTo((high + (job.rollUp.margin ?? NaN)) / 2, 2);
});

test("actuals give differences, and suggestions that name their cells", async () => {
  const headings = ["Job", "Actual of", "Name", "Actual"];
  const before = await priced(withSheets());
  const bag = before.job.hours.bags[0];
  const [item] = before.prices.actuals.jobs[0]?.pieces ?? [];
  if (bag === undefined || item === undefined) throw new Error("no bag");
  const { prices, takeOff } = await priced(
    withSheets({
      Actuals: [
        headings,
        ["Crib", "hours", bag.bag, (bag.minutes * 2) / 60],
        ["Crib", "cost", "Freight", 500],
        ["Crib", "pieces", item.item, item.counted * 2],
      ],
    }),
  );
  const report = actualsReport(prices.actuals, takeOff.inputs);
  expect(report.outcomes).toHaveLength(1);
  expect(report.bags).toEqual([
    expect.objectContaining({ name: bag.bag, share: expect.closeTo(1) }),
  ]);
  expect(report.costs.map(({ name }) => name)).toEqual(["Freight"]);
  const kinds = report.suggestions.map(({ kind }) => kind);
  expect([...new Set(kinds)].sort()).toEqual(["minutes", "spares"]);
  // The starter's rows stand on no sheet of this workbook.
  expect(report.suggestions.every(({ place }) => place === null)).toBe(true);
  expect(report.suggestions.every(({ from, to }) => from !== to && to !== "")).toBe(true);
});
