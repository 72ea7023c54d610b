/**
 * An opening whose hanging load is over what was entered: the count, the price, the order and the
 * quotation all leave it out, and all say so.
 */
import { describe, expect, test } from "@jest/globals";
import { finish } from "../../../src/core/base/steps";
import type { CellValue } from "../../../src/core/base/cell";
import { keptBlocks } from "../../../src/app/reading/keptBlocks";
import { enteredLoads } from "../../../src/app/pricing/enteredLoads";
import { keptTakeOff } from "../../../src/app/reading/keptTakeOff";
import { priceWorkbook } from "../../../src/app/pricing/priceWorkbook";
import { quoteJob } from "../../../src/app/pricing/quoteJob";
import { defaultSettings } from "../../../src/app/settings";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import { workbookLoads } from "../../../src/app/pricing/workbookLoads";
import { scheduleHeadings, workbookOf } from "../typedWorkbook";

type Row = readonly CellValue[];
const light: Row = ["Crib", "A-1", 2, "sliding door", "3'", "7'", "8'", "yes"];
const heavy: Row = ["Crib", "A-2", 1, "sliding door", "8'", "7'", "8'", "yes"];
const rates = (carries: CellValue): readonly (readonly CellValue[])[] => [
  ["Rate", "Unit", "What it means", "Usual"],
  ["One trolley carries", "lb", "", carries],
];

async function counted(lines: readonly Row[], carries: CellValue) {
  const workbook = workbookOf({
    Schedule: [[...scheduleHeadings, "Tail post"], ...lines],
    Rates: rates(carries),
  });
  const taken = await takeOffWorkbook(workbook, defaultSettings);
  if (!taken.ok) throw new Error(taken.error.message);
  const prices = await priceWorkbook(workbook, taken.value, defaultSettings, 46_200);
  if (!prices.ok) throw new Error(prices.error.message);
  const [job] = taken.value.estimate.jobs;
  const [price] = prices.value.jobs;
  if (job === undefined || price === undefined) throw new Error("no job");
  return { workbook, takeOff: taken.value, prices: prices.value, job, price };
}

const quantities = ({ lines }: { readonly lines: readonly { item: string; quantity: number }[] }) =>
  lines.map(({ item, quantity }) => [item, quantity]);

test("gives no count: the job counts what it would without that row, and is not complete", async () => {
  const { takeOff, job } = await counted([light, heavy], 50);
  const without = await counted([light], 50);
  expect(quantities(job.takeOff)).toEqual(quantities(without.job.takeOff));
  expect(job.takeOff.stopped.map(({ mark }) => mark)).toEqual(["A-2"]);
  expect(job.uncounted.map(({ mark }) => mark)).toEqual(["A-2"]);
  expect(job.uncounted[0]?.findings.map(({ code }) => code)).toContain("trolley-over-capacity");
  expect(takeOff.complete).toBe(false);
  expect(without.takeOff.complete).toBe(true);
});

test("is not in the price, which says so", async () => {
  const { price } = await counted([light, heavy], 50);
  const without = await counted([light], 50);
  expect(price.rollUp.notPriced).toEqual(["opening A-2"]);
  expect(price.rollUp.cost).toBe(without.price.rollUp.cost);
});

test("is still among the loads, with its weight and what it is over by", async () => {
  const { takeOff, prices } = await counted([light, heavy], 50);
  const { jobs, findings } = workbookLoads(takeOff, prices, defaultSettings);
  expect(jobs[0]?.openings.map(({ opening, checked }) => [opening.mark, checked.verdict])).toEqual([
    ["A-1", "not checked"],
    ["A-2", "over"],
  ]);
  expect(findings.every(({ level }) => level !== "stop")).toBe(true);
});

test("is named in the quotation as not in its price", async () => {
  const { workbook, takeOff, prices } = await counted([light, heavy], 50);
  const wanted = { job: "Crib", today: 46_200 };
  const quoted = await quoteJob(workbook, takeOff, prices, defaultSettings, wanted);
  if (!quoted.ok) throw new Error(quoted.error);
  const words = JSON.stringify(quoted.value.drawing.rows);
  expect(words).toContain("Openings not in this price: A-2");
  expect(quoted.value.findings.map(({ code }) => code)).toContain("quoted-without-openings");
});

test("is left out of the count that is kept up too", async () => {
  const { workbook, job } = await counted([light, heavy], 50);
  const blocks = await keptBlocks(workbook).read();
  if (!blocks.ok) throw new Error(blocks.error.message);
  const { estimate } = finish(keptTakeOff(enteredLoads)(blocks.value, defaultSettings));
  expect(quantities(estimate.jobs[0]?.takeOff ?? { lines: [] })).toEqual(quantities(job.takeOff));
});

test("is alone in its job: the job is not quoted, and the reason is said", async () => {
  const { workbook, takeOff, prices } = await counted([heavy], 50);
  const wanted = { job: "Crib", today: 46_200 };
  const quoted = await quoteJob(workbook, takeOff, prices, defaultSettings, wanted);
  expect(quoted).toEqual({
    ok: false,
    error: expect.stringContaining("the capacity entered is 50 lb"),
  });
});

describe("nothing is stopped", () => {
  test.each([
    ["where no capacity is entered", null],
    ["where every load is within", 5000],
  ])("%s", async (_where, carries) => {
    const { job, takeOff } = await counted([light, heavy], carries);
    expect(job.takeOff.stopped).toEqual([]);
    expect(takeOff.complete).toBe(true);
  });
});
