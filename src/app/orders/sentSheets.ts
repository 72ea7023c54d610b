/** Whether the suppliers' sheets of a kept order still say what is on record. */
import type { TypedCell } from "../../core/base/cell";
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import { ok, type Result } from "../../core/base/result";
import { currencyOf, usDollar } from "../../core/money/currency";
import { majorUnits } from "../../core/money/writeMoney";
import { numberOf, textOf } from "../../core/purchasing/offers/offerCells";
import type { OrderedPacks, OrderRecord } from "../../core/purchasing/books/orderRecord";
import { supplierMark } from "../../sheets/orders/orderWish";
import { readOrderedRows, type OrderedColumn } from "../../tables/movementTable";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import { readOurs } from "./orderBook";

export const sentSheetFindings = {
  "order-sheet-changed": {
    level: "warn",
    says: "The sheet of order {order} for {supplier} says {found} where the order has {was}.",
    todo: "The order book holds. Put the cell back; a draft can be worked out again and kept under its number.",
  },
  "order-sheet-rows": {
    level: "warn",
    says: "The sheet of order {order} for {supplier} has {found} lines where the order has {was}.",
    todo: "The order book holds. Put the sheet back; a draft can be worked out again and kept under its number.",
  },
} as const satisfies FindingTable;

/** A finding for every cell that differs; a sheet that is not there says nothing. */
export async function changedSheets(
  workbook: Workbook,
  order: OrderRecord,
): Promise<Result<readonly Finding[], WorkbookFault>> {
  const findings: Finding[] = [];
  for (const { supplier } of order.charges) {
    const block = await readOurs(workbook, supplierMark(supplier, order.number));
    if (!block.ok) return block;
    if (block.value === null) continue;
    const packs = order.packs.filter((each) => each.supplier === supplier);
    const rows = readOrderedRows(block.value) ?? [];
    const values = { order: order.number, supplier };
    if (rows.length !== packs.length) {
      findings.push(
        makeFinding(sentSheetFindings, "order-sheet-rows", {
          place: { sheet: block.value.sheet, row: 0, column: 0 },
          found: String(rows.length),
          values: { ...values, was: packs.length },
        }),
      );
      continue;
    }
    for (const [index, row] of rows.entries()) {
      const line = packs[index];
      if (line === undefined) continue;
      for (const { cell, was } of differing(row, line, order.currency)) {
        findings.push(
          makeFinding(sentSheetFindings, "order-sheet-changed", {
            place: cell?.place ?? null,
            found: textOf(cell) || "nothing",
            values: { ...values, was },
          }),
        );
      }
    }
  }
  return ok(findings);
}

type Row = Readonly<Partial<Record<OrderedColumn, TypedCell>>>;

function differing(
  row: Row,
  { item, words, packSize, count, price, cost }: OrderedPacks,
  currencyCode: string,
): readonly { readonly cell: TypedCell | undefined; readonly was: string }[] {
  const currency = currencyOf(currencyCode) ?? usDollar;
  const texts = { item, size: words.size };
  const numbers = {
    packSize,
    count,
    price: majorUnits(price, currency),
    total: majorUnits(cost, currency),
  };
  return [
    ...(Object.keys(texts) as (keyof typeof texts)[])
      .filter((key) => textOf(row[key]) !== texts[key].trim())
      .map((key) => ({ cell: row[key], was: texts[key] || "nothing" })),
    ...(Object.keys(numbers) as (keyof typeof numbers)[])
      .filter((key) => !isNear(numberOf(row[key]), numbers[key]))
      .map((key) => ({ cell: row[key], was: String(numbers[key]) })),
  ];
}

/** The same but for what a spreadsheet's rounding does in the last digits. */
const isNear = (found: number | null, was: number): boolean =>
  found !== null && Math.abs(found - was) < 1e-6;
