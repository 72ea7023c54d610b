/** A workbook of two hundred jobs: every margin, what moves it, and its hanging loads. */
import { beforeAll, expect, test } from "@jest/globals";
import { ownerDrawings } from "../../../src/app/pricing/ownerDrawings";
import { priceDrawings, priceSteps, readPriceInputs } from "../../../src/app/pricing/priceWorkbook";
import type { WorkbookPrices } from "../../../src/app/pricing/priceWorkbook";
import { defaultSettings } from "../../../src/app/settings";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../../../src/app/reading/workbookTakeOff";
import { whatIfJobs } from "../../../src/app/pricing/whatIfJobs";
import { workbookLoads } from "../../../src/app/pricing/workbookLoads";
import type { CellValue } from "../../../src/core/base/cell";
import { costModel } from "../../../src/core/pricing/rates/costModel";
import { percent, shareOf } from "../../../src/core/pricing/rates/percent";
import { amountOf } from "../../../src/core/pricing/rollup/rollUp";
import { lineKeys } from "../../../src/core/pricing/rollup/rollUpPrice";
import { asEstimated } from "../../../src/core/pricing/chances/whatIf";
import { scheduleHeadings, workbookOf } from "../typedWorkbook";

const jobCount = 200;
const widths = ["4'", "5'-0 1/2\"", "8'", "9'-6\"", "12'"];

const schedule: readonly (readonly CellValue[])[] = [
  [...scheduleHeadings, "Tail post"],
  ...Array.from({ length: jobCount }, (_, job) =>
    [0, 1, 2].map((mark): CellValue[] => [
      `Job ${job + 1}`,
      `D-${mark + 1}`,
      1 + ((job + mark) % 4),
      "sliding door",
      widths[(job + mark) % widths.length] ?? "8'",
      "7'",
      "8'",
      "yes",
    ]),
  ).flat(),
];

let takeOff: WorkbookTakeOff;
let prices: WorkbookPrices;
const told: number[] = [];

beforeAll(async () => {
  const workbook = workbookOf({ Schedule: schedule });
  const taken = await takeOffWorkbook(workbook, defaultSettings);
  const inputs = await readPriceInputs(workbook);
  if (!taken.ok || !inputs.ok) throw new Error("not read");
  takeOff = taken.value;
  const steps = priceSteps(takeOff, inputs.value, defaultSettings, 46_200);
  let step = steps.next();
  for (; step.done !== true; step = steps.next()) told.push(step.value);
  prices = step.value;
});

test("are priced a job a step, so that a pane can go on between them", () => {
  const jobsDone = told.map((part) => part * jobCount);
  expect(jobsDone.map(Math.round)).toEqual(Array.from({ length: jobCount }, (_, job) => job));
  for (const done of jobsDone) expect(done).toBeCloseTo(Math.round(done), 9);
  expect(prices.jobs).toHaveLength(jobCount);
});

test("each add up, keep their target, and the table is their sum", () => {
  for (const { rollUp, target } of prices.jobs) {
    const cost = amountOf(rollUp.lines, lineKeys.cost);
    expect(cost + amountOf(rollUp.lines, lineKeys.profit)).toBe(rollUp.price);
    expect(rollUp.margin).toBeGreaterThanOrEqual(shareOf(target));
  }
  const { rows, total } = prices.margins;
  expect(rows).toHaveLength(jobCount);
  expect(total.cost).toBe(rows.reduce((sum, row) => sum + row.cost, 0));
  expect(total.profit).toBe(total.price - total.cost);
});

test("gain nothing by more hours, and lose by them at a held price", () => {
  const more = whatIfJobs(prices.jobs, { ...asEstimated, hours: percent(250_000) });
  const follows = whatIfJobs(prices.jobs, {
    ...asEstimated,
    hours: percent(250_000),
    price: "follows",
  });
  for (const [index, { job, answer }] of more.rows.entries()) {
    expect(answer.rollUp.margin).toBeLessThan(job.rollUp.margin ?? NaN);
    const followed = follows.rows[index]?.answer.rollUp.margin ?? NaN;
    expect(followed).toBeGreaterThanOrEqual(shareOf(job.target));
  }
});

test("have a model of their cost within a cent a line", () => {
  for (const { input, rollUp } of prices.jobs) {
    const model = costModel(input, rollUp);
    const material = model.material.reduce((sum, { coefficient }) => sum + coefficient, 0);
    const cost = model.fixed + material + model.labour + model.freight + model.bond * model.price;
    expect(Math.abs(cost - rollUp.cost)).toBeLessThan(rollUp.lines.length);
  }
});

test("have their hanging loads, and one sheet each for margins, loads and what-if", () => {
  const loads = workbookLoads(takeOff, prices, defaultSettings);
  expect(loads.jobs.flatMap(({ openings }) => openings)).toHaveLength(3 * jobCount);
  const sheets = [
    ...priceDrawings(prices, defaultSettings),
    ...ownerDrawings(takeOff, prices, defaultSettings, loads),
  ];
  const names = sheets.map(({ name }) => name).filter((name) => !name.startsWith("Price "));
  expect(names).toEqual(["Margins", "Hanging loads", "What-if"]);
});
