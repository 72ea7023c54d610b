/** The demo workbook: an invented schedule and the starter's invented items, as sheets of the person's. */
import type { CellValue } from "../../core/base/cell";
import { starterItems } from "../../core/kitbook/starter/items";
import { compileKitBook } from "../../core/kitbook/compileKitBook";
import { starterKitBook } from "../../core/kitbook/starter/starterKitBook";
import { itemsSheet } from "../../sheets/itemsSheet";
import { ratesSheet } from "../../sheets/owner/ratesSheet";
import { demoOwnerSheets } from "./demoOwnerSheets";
import { scheduleSheet } from "../../sheets/scheduleSheet";
import type { Drawing } from "../../workbook/drawing";
import { demoPurchasing } from "./demoPurchasing";
import { demoHeadings, demoRows } from "./demoSchedule";

/** The schedule, the items, what prices are made from, then what an order is made from. */
export const demoDrawings = (): readonly Drawing[] => [
  scheduleSheet({
    name: "Schedule",
    notice: "Demo: the jobs and openings are invented, with mistakes of the kind that people make.",
    headings: demoHeadings.split("|"),
    rows: demoRows.map((line) => line.split("|").map(cellOf)),
    types: compileKitBook(starterKitBook, []).book.types.map((type) => type.name),
    spareRows: 40,
  }),
  itemsSheet(
    "Items",
    starterItems,
    "Demo: every cost and weight on this sheet is invented. Replace them with your suppliers' own.",
  ),
  ratesSheet("Rates", demoJobs()),
  ...demoOwnerSheets(),
  ...demoPurchasing(),
];

const demoJobs = (): readonly string[] => [
  ...new Set(demoRows.map((line) => line.split("|")[0] ?? "")),
];

function cellOf(written: string): CellValue {
  if (written === "") return null;
  if (written.startsWith("@")) return { kind: "date", serial: Number(written.slice(1)) };
  return /^\d+$/.test(written) ? Number(written) : written;
}
