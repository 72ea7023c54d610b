import { expect, test } from "@jest/globals";
import type { MemoryWorkbook } from "../../../src/adapters/memory/memoryWorkbook";
import {
  priceSteps,
  priceWorkbook,
  readPriceInputs,
  type WorkbookPrices,
} from "../../../src/app/pricing/priceWorkbook";
import { readSettings, writeSettings } from "../../../src/app/settings";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import { countFile } from "../../../src/app/orders/countFile";
import { keepDraft, sendKept } from "../../../src/app/orders/keepOrder";
import { receiveKeptLines } from "../../../src/app/orders/receiveOrder";
import { finish } from "../../../src/core/base/steps";
import { cents, pieces } from "../../../src/core/base/units";
import { usDollar } from "../../../src/core/money/currency";
import { orderedMaterial } from "../../../src/core/pricing/orderedMaterial";
import { orderOf } from "../orders/orderFiles";
import { act, book, day, keep, need, office, valueOf } from "../orders/orderDesk";

async function prices(workbook: MemoryWorkbook): Promise<WorkbookPrices> {
  const settings = await readSettings(workbook);
  const takeOff = valueOf(await takeOffWorkbook(workbook, settings));
  return valueOf(await priceWorkbook(workbook, takeOff, settings, day));
}

const material = ({ jobs }: WorkbookPrices): number =>
  (jobs[0]?.input.material ?? []).reduce((sum, { counted, spares }) => sum + counted + spares, 0);
const codes = ({ findings }: WorkbookPrices): readonly string[] => findings.map(({ code }) => code);
/** What the items table says that a trolley costs, in cents. */
const starterTrolley = 1875;

test("a job costs what was ordered for it once that is sent, and says so", async () => {
  const workbook = office(3);
  const estimated = await prices(workbook);
  expect(codes(estimated)).not.toContain("material-by-orders");
  const number = await keep(workbook);
  expect(material(await prices(workbook))).toBe(material(estimated));
  valueOf(await sendKept(workbook, number, act));
  const ordered = await prices(workbook);
  const note = ordered.findings.find(({ code }) => code === "material-by-orders");
  expect(note).toMatchObject({ level: "note", message: expect.stringContaining(number) });

  const [order] = (await book(workbook)).books.orders;
  const shareOf = (item: string): number =>
    (order?.packs ?? [])
      .filter((packs) => packs.item === item)
      .flatMap(({ shares }) => shares)
      .reduce((sum, { job, cost }) => sum + (job === "Dock" ? cost : 0), 0);
  // Three of six trolleys were bought, at 10.00 each; the shelf's three cost what the items table says.
  expect(shareOf("TROLLEY")).toBe(3000);
  const settings = await readSettings(workbook);
  const takeOff = valueOf(await takeOffWorkbook(workbook, settings));
  const costOf = (item: string): number =>
    (takeOff.estimate.jobs[0]?.material.lines ?? [])
      .filter(({ line }) => line.item === item)
      .reduce((sum, { cost }) => sum + (cost ?? 0), 0);
  expect(costOf("TROLLEY")).toBe(6 * starterTrolley);
  expect(material(ordered) - material(estimated)).toBe(
    3000 - 3 * starterTrolley + (shareOf("TRACK") - costOf("TRACK")),
  );
});

test("a need beyond the order costs what the items table says, and one that fell is paid for", async () => {
  const workbook = office(3);
  valueOf(await sendKept(workbook, await keep(workbook), act));
  const three = material(await prices(workbook));
  need(workbook, 4);
  const four = await prices(workbook);
  // Two trolleys more by the items table, among all else of a fourth door.
  expect(material(four) - three).toBeGreaterThan(2 * starterTrolley);
  need(workbook, 1);
  const [line] = (await prices(workbook)).jobs;
  expect(line?.input.material.every(({ counted, spares }) => counted >= 0 && spares >= 0)).toBe(
    true,
  );
  const [order] = (await book(workbook)).books.orders;
  const paid = (order?.packs ?? [])
    .flatMap(({ shares }) => shares)
    .reduce((sum, { job, cost }) => sum + (job === "Dock" ? cost : 0), 0);
  expect(material(await prices(workbook))).toBeGreaterThanOrEqual(paid);
});

test("what was closed short costs the job nothing, and what is missing what the items table says", async () => {
  const workbook = office(3);
  const number = await keep(workbook);
  valueOf(await sendKept(workbook, number, act));
  const ordered = material(await prices(workbook));
  const [order] = (await book(workbook)).books.orders;
  const line = order?.packs.findIndex(({ item }) => item === "TROLLEY") ?? -1;
  const lines = [{ line, came: pieces(1), isClosed: true }];
  const receipt = { ...act, lines, reason: "sold out", isSure: false };
  valueOf(await receiveKeptLines(workbook, number, receipt));
  // Of three trolleys at 10.00 one came.
  expect(material(await prices(workbook))).toBe(ordered - 2000 + 2 * starterTrolley);
});

test("an order in another currency is not used, and is named", async () => {
  const workbook = office(3);
  valueOf(await sendKept(workbook, await keep(workbook), act));
  await writeSettings(workbook, { ...(await readSettings(workbook)), currency: "EUR" });
  const priced = await prices(workbook);
  expect(codes(priced)).toContain("order-in-other-currency");
  expect(codes(priced)).not.toContain("material-by-orders");
});

test("what suppliers added says of which order it is, and what share of it", async () => {
  const workbook = office(3);
  valueOf(await sendKept(workbook, await keep(workbook), act));
  const [order] = (await book(workbook)).books.orders;
  const takeOff = valueOf(await takeOffWorkbook(workbook, await readSettings(workbook)));
  const [job] = takeOff.estimate.jobs;
  if (order === undefined || job === undefined) throw new Error("no order");
  const charge = (supplier: string, own: number, stock: number) => ({
    supplier,
    madeUp: cents(0),
    freight: cents(own + stock),
    shares: [
      { job: "Dock", cost: cents(own) },
      { job: null, cost: cents(stock) },
    ],
  });
  const charged = {
    ...order,
    charges: [charge("North supply", 1250, 2750), charge("South supply", 900, 0)],
  };
  const { charges, chargesHow } = orderedMaterial("Dock", job.material, [charged], usDollar);
  expect(charges).toBe(2150);
  expect(chargesHow).toBe(
    `order ${order.number}, North supply: $12.50 of $40.00, by its share of the goods; ` +
      `order ${order.number}, South supply: all of $9.00`,
  );
});

test("an order that kept the job with its workbook's name costs it too, and not a job of another", async () => {
  const workbook = office(3);
  const other = office(3);
  const files = [
    valueOf(await countFile({ file: await workbook.name(), workbook }, day)),
    valueOf(await countFile({ file: "other.xlsx", workbook: other }, day)),
  ];
  const order = orderOf(files, { jobs: files.map(({ file }) => `${file}:Dock`), today: day });
  const { number } = valueOf(await keepDraft(workbook, order, { day, number: null }));
  valueOf(await sendKept(workbook, number, act));
  const [kept] = (await book(workbook)).books.orders;
  const names = kept?.jobs.map(({ job }) => job) ?? [];
  expect(names.every((name) => name.startsWith("Dock ("))).toBe(true);
  const priced = await prices(workbook);
  expect(codes(priced)).toContain("material-by-orders");
  const own = `Dock (${await workbook.name()})`;
  const paid = (kept?.packs ?? [])
    .filter(({ item }) => item === "TROLLEY")
    .flatMap(({ shares }) => shares)
    .reduce((sum, { job, cost }) => sum + (job === own ? cost : 0), 0);
  expect(paid).toBeGreaterThan(0);
  const settings = await readSettings(workbook);
  const takeOff = valueOf(await takeOffWorkbook(workbook, settings));
  const inputs = valueOf(await readPriceInputs(workbook));
  const elsewhere = { ...inputs, file: "third.xlsx" };
  expect(codes(finish(priceSteps(takeOff, elsewhere, settings, day)))).not.toContain(
    "material-by-orders",
  );
});
