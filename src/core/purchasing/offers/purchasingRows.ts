/** The firm's own purchasing tables, checked: suppliers' terms, the shelf, the dates of jobs. */
import { isBlank, readDate, type TypedCell } from "../../base/cell";
import { makeFinding, type Finding, type FindingTable } from "../../base/finding";
import { cents, isPieces, pieces, type Cents, type Pieces } from "../../base/units";
import type { LengthUnit } from "../../lengths/length";
import type { Currency } from "../../money/currency";
import { jobKey } from "../../takeoff/takeOff";
import { numberOf, readPackPrice, readSize, textOf, type Report } from "./offerCells";
import type { OrderJob } from "../orders/orderInput";
import type { SizedPieces } from "../sizedPieces";
import type { SupplierTerms } from "../orders/supplierPlan";

export type StockColumn = "item" | "size" | "onHand" | "onOrder";
export type JobDateColumn = "job" | "needBy" | "shipTo";
export type SupplierColumn = "supplier" | "leastOrder" | "freight";
export type OrderRuleColumn = "rule" | "value";

type Row<Key extends string> = Readonly<Partial<Record<Key, TypedCell>>>;

export const purchasingFindings = {
  "stock-not-whole": {
    level: "warn",
    says: "{item} has {found} pieces on this row, which is not a whole number from zero up; they are not counted on.",
    todo: "Type how many there are.",
  },
  "need-by-not-a-date": {
    level: "warn",
    says: "The need-by date of {job} is {found}, which is not a date.",
    todo: "Type a date such as 2026-12-01.",
  },
} as const satisfies FindingTable;

export type Checked<Value> = { readonly value: Value; readonly findings: readonly Finding[] };

/** What a stock sheet says. */
export type CheckedStock = {
  /** Ordered for stock by other means than the order book. */
  readonly onOrder: readonly SizedPieces[];
  /** What was counted on the shelf, zeros too; of two rows for one thing each. */
  readonly counted: readonly SizedPieces[];
};

/** Free stock. A count that cannot be read is no stock: rather bought than counted on. */
export function checkStock(
  rows: readonly Row<StockColumn>[],
  unit: LengthUnit,
): Checked<CheckedStock> {
  const findings: Finding[] = [];
  const report: Report = (finding) => findings.push(finding);
  const sized = rows.flatMap((row) => {
    const item = textOf(row.item);
    const size = readSize(row.size, unit, report);
    if (item === "" || size === null) return [];
    const count = (cell: TypedCell | undefined): Pieces => {
      const number = numberOf(cell) ?? 0;
      if (isPieces(number)) return number;
      const details = { place: cell?.place ?? null, found: textOf(cell), values: { item } };
      report(makeFinding(purchasingFindings, "stock-not-whole", details));
      return pieces(0);
    };
    const isCounted = row.onHand !== undefined && !isBlank(row.onHand.value);
    const onHand = count(row.onHand);
    const isRead = isCounted && numberOf(row.onHand) === onHand;
    return [{ item, size, onHand: isRead ? onHand : null, onOrder: count(row.onOrder) }];
  });
  return {
    value: {
      counted: sized.flatMap(({ item, size, onHand }) =>
        onHand === null ? [] : [{ item, size, pieces: onHand }],
      ),
      onOrder: sized.flatMap(({ item, size, onOrder }) =>
        onOrder === 0 ? [] : [{ item, size, pieces: onOrder }],
      ),
    },
    findings,
  };
}

/** By `jobKey`. The first row of a job counts. */
export function checkJobDates(
  rows: readonly Row<JobDateColumn>[],
): Checked<ReadonlyMap<string, Omit<OrderJob, "job">>> {
  const findings: Finding[] = [];
  const dates = new Map<string, Omit<OrderJob, "job">>();
  for (const row of rows) {
    const job = textOf(row.job);
    if (job === "" || dates.has(jobKey(job))) continue;
    const cell = row.needBy;
    const isTyped = cell !== undefined && !isBlank(cell.value);
    const needBy = isTyped ? readDate(cell.value) : null;
    if (isTyped && needBy === null) {
      const details = { place: cell.place, found: textOf(cell), values: { job }, job };
      findings.push(makeFinding(purchasingFindings, "need-by-not-a-date", details));
    }
    dates.set(jobKey(job), { needBy, shipTo: textOf(row.shipTo) });
  }
  return { value: dates, findings };
}

/** What suppliers ask of an order; blanks are nothing. */
export function checkTerms(
  rows: readonly Row<SupplierColumn>[],
  currency: Currency,
): Checked<readonly SupplierTerms[]> {
  const findings: Finding[] = [];
  const amount = (cell: TypedCell | undefined): Cents =>
    readPackPrice(cell, currency, (finding) => findings.push(finding))?.price ?? cents(0);
  const terms = rows.flatMap((row) => {
    const supplier = textOf(row.supplier);
    const asked = { leastOrder: amount(row.leastOrder), freight: amount(row.freight) };
    return supplier === "" ? [] : [{ supplier, ...asked }];
  });
  return { value: terms, findings };
}
