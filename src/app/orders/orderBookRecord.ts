/**
 * The order book as the workbook keeps it: one setting, as JSON. The record is what holds; the sheets
 * show it, and what a person writes on them is taken in from there.
 *
 * Sheets and record change as one. The record is written first with what it was before; the sheets
 * follow as one act, and one of them says which change of the book it shows. So whatever is refused
 * midway, the next reader sees by that sheet whether the change was made, and takes the one or the
 * other record.
 */
import { fractionDenominators } from "../../core/lengths/writeLength";
import type { SizedPieces } from "../../core/purchasing/sizedPieces";
import { noBooks, type OrderBooks } from "../../core/purchasing/books/standing";
import { movementKinds, type StockMovement } from "../../core/purchasing/books/stockMovements";
import type { Workbook } from "../../workbook/workbook";
import { jsonValue } from "../jsonValue";
import { aNumber, aText, listOf, oneOf, orNull, partsOf, type Shape } from "../jsonShape";
import { anOrder, aSizedPieces, aWhole, sized } from "./orderShape";
import { defaultSettings, lengthStyleNames, type Settings } from "../settings";

export type BookRecord = {
  /** Counts the changes of the book. */
  readonly change: number;
  readonly books: OrderBooks;
  /** What a person's own stock sheet said when it was last taken in, zeros too. */
  readonly counts: readonly SizedPieces[];
  /** How the sheets of the book write sizes. */
  readonly style: Pick<Settings, "lengths" | "fraction">;
};

export const emptyRecord: BookRecord = {
  change: 0,
  books: noBooks,
  counts: [],
  style: { lengths: defaultSettings.lengths, fraction: defaultSettings.fraction },
};

/** `text` is what the setting holds of it, `null` where no book is kept. */
export type KeptRecord =
  | { readonly kind: "none"; readonly record: BookRecord; readonly text: null }
  | { readonly kind: "kept"; readonly record: BookRecord; readonly text: string }
  /** It cannot be read in whole, and nothing is written over it. */
  | { readonly kind: "damaged"; readonly record: BookRecord; readonly text: string };

const settingKey = "orderBook";

/** `shownChange` is the change of the book that its sheet shows; `null` where there is no such sheet. */
export async function readBookRecord(
  workbook: Pick<Workbook, "readSetting">,
  shownChange: number | null,
): Promise<KeptRecord> {
  const text = (await workbook.readSetting(settingKey)) ?? "";
  if (text === "") return { kind: "none", record: emptyRecord, text: null };
  const value = jsonValue(text);
  const half = aHalfWritten(value);
  if (half === undefined) return keptAs(text, value);
  const settled = half.change === shownChange ? half.next : half.before;
  return settled === ""
    ? { kind: "none", record: emptyRecord, text: null }
    : keptAs(settled, jsonValue(settled));
}

function keptAs(text: string, value: unknown): KeptRecord {
  const record = aRecord(value);
  return record === undefined
    ? { kind: "damaged", record: emptyRecord, text }
    : { kind: "kept", record, text };
}

/** Keeps the record while the sheets are written; `before` is the text that it takes the place of. */
export const holdRecord = (
  workbook: Pick<Workbook, "writeSetting">,
  record: BookRecord,
  before: string | null,
): ReturnType<Workbook["writeSetting"]> =>
  workbook.writeSetting(
    settingKey,
    JSON.stringify({ change: record.change, next: recordText(record), before: before ?? "" }),
  );

/** Once the sheets stand, the new record; once they were refused, the text as it was before. */
export const settleRecord = (
  workbook: Pick<Workbook, "writeSetting">,
  settled: BookRecord | string | null,
): ReturnType<Workbook["writeSetting"]> =>
  workbook.writeSetting(
    settingKey,
    settled === null || typeof settled === "string" ? (settled ?? "") : recordText(settled),
  );

/**
 * The parts always in one order, so that what is unchanged has the same text. Version 1 knew no
 * receipts in parts.
 */
const recordText = ({ change, books, counts, style }: BookRecord): string =>
  JSON.stringify({ version: 2, change, ...books, counts, style });

type HalfWritten = { readonly change: number; readonly next: string; readonly before: string };
const aHalfWritten: Shape<HalfWritten> = partsOf<HalfWritten>({
  change: aNumber,
  next: aText,
  before: aText,
});

const aMovement: Shape<StockMovement> = partsOf<StockMovement>({
  number: aWhole,
  day: aWhole,
  ...sized,
  kind: oneOf(movementKinds),
  change: aWhole,
  balance: aWhole,
  job: orNull(aText),
  order: orNull(aText),
  who: aText,
  note: aText,
});

const aRecord: Shape<BookRecord> = (value) => {
  const parts = partsOf<Omit<BookRecord, "books"> & OrderBooks & { readonly version: number }>({
    version: oneOf([1, 2]),
    change: aWhole,
    orders: listOf(anOrder),
    movements: listOf(aMovement),
    removed: listOf(aText),
    elsewhere: listOf(aSizedPieces),
    counts: listOf(aSizedPieces),
    style: partsOf<BookRecord["style"]>({
      lengths: oneOf(lengthStyleNames),
      fraction: oneOf(fractionDenominators),
    }),
  })(value);
  if (parts === undefined) return undefined;
  const { change, orders, movements, removed, elsewhere, counts, style } = parts;
  return { change, books: { orders, movements, removed, elsewhere }, counts, style };
};
