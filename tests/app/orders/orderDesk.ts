/** An office with one job and an order book, for tests. All of it is invented. */
import type { MemoryWorkbook } from "../../../src/adapters/memory/memoryWorkbook";
import { countFile } from "../../../src/app/orders/countFile";
import { keepDraft, sendKept } from "../../../src/app/orders/keepOrder";
import { readOrderBook, type OrderBook } from "../../../src/app/orders/orderBook";
import type { JobsOrder } from "../../../src/app/orders/orderJobs";
import { readSettings } from "../../../src/app/settings";
import type { CellValue } from "../../../src/core/base/cell";
import type { Result } from "../../../src/core/base/result";
import { headings, orderOf } from "./orderFiles";
import type { Workbook } from "../../../src/workbook/workbook";
import { workbookOf, type TypedSheets } from "../typedWorkbook";

export const day = 46_340;
export const act = { day, who: "KB" };

const schedule = (doors: number): readonly (readonly CellValue[])[] => [
  headings,
  ["Dock", "X-1", doors, "sliding door", "4'", "7'", "8'", "yes", "concrete"],
];

/** Trolleys in boxes of five, track in bars of 20 ft; three trolleys and an offcut on the shelf. */
export const officeSheets = (doors: number): TypedSheets => ({
  List: schedule(doors),
  Offers: [
    ["Item", "Size", "Supplier", "Pieces in a pack", "Price per pack"],
    ["TROLLEY", null, "Alder", 5, 50],
    ["TRACK", "20'", "Birch", 1, 80],
  ],
  Stock: [
    ["Item", "Size", "On hand"],
    ["TROLLEY", null, 3],
    ["TRACK", "9'-6\"", 1],
  ],
});

export const office = (doors = 3): MemoryWorkbook => workbookOf(officeSheets(doors));

export const valueOf = <T>(result: Result<T, { readonly message: string }>): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

export async function workedOut(workbook: Workbook): Promise<JobsOrder> {
  return orderOf([valueOf(await countFile({ file: "a.xlsx", workbook }, day))]);
}

export async function keep(workbook: Workbook, number: string | null = null): Promise<string> {
  return valueOf(await keepDraft(workbook, await workedOut(workbook), { day, number })).number;
}

export async function keepAndSend(workbook: Workbook): Promise<string> {
  const number = await keep(workbook);
  return valueOf(await sendKept(workbook, number, act)).number;
}

export const book = async (workbook: Workbook): Promise<OrderBook> =>
  valueOf(await readOrderBook(workbook, await readSettings(workbook), day));

/** Changes the number of doors on the schedule. */
export const need = (workbook: MemoryWorkbook, doors: number): void => {
  workbook.type({ sheet: "List", row: 1, column: 2 }, doors);
};
