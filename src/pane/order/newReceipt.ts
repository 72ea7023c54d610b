/** What a person types of a receipt, read against what is to come of the order. */
import { err, ok, type Result } from "../../core/base/result";
import { pieces } from "../../core/base/units";
import { lineName, piecesWords, readCame } from "../../app/orders/orderLineNames";
import type { ReceiptAct } from "../../app/orders/receiveOrder";
import type { OrderRecord } from "../../core/purchasing/books/orderRecord";
import { lineStands } from "../../core/purchasing/books/receipts";
import { serialOf } from "./dateField";

export type TypedLine = { readonly came: string; readonly isClosed: boolean };
export type TypedReceipt = {
  /** As a date field holds it. */
  readonly day: string;
  readonly reason: string;
  /** By line; a line that is not there has nothing typed. */
  readonly lines: Readonly<Record<number, TypedLine>>;
};

export const nothingTyped: TypedLine = { came: "", isClosed: false };

/** Every open line with all that is to come of it. */
export const allToCome = (order: OrderRecord): TypedReceipt["lines"] =>
  Object.fromEntries(
    lineStands(order).flatMap(({ open }, line) => {
      const packs = order.packs[line];
      if (open === 0 || packs === undefined) return [];
      const came = open % packs.packSize === 0 ? String(open / packs.packSize) : `${open} pcs`;
      return [[line, { came, isClosed: false }]];
    }),
  );

type ReadReceipt = {
  readonly receipt: Pick<ReceiptAct, "day" | "lines" | "reason">;
  /** Lines of which more came than is to come, in words. */
  readonly over: readonly string[];
};

/** Error: what is still to be typed or mended, in a sentence. */
export function readReceipt(
  order: OrderRecord,
  { day, reason, lines }: TypedReceipt,
): Result<ReadReceipt, string> {
  const date = serialOf(day);
  if (date === null) return err("Give the day.");
  const read: ReceiptAct["lines"][number][] = [];
  const over: string[] = [];
  for (const [line, { open }] of lineStands(order).entries()) {
    const { came, isClosed } = lines[line] ?? nothingTyped;
    const packs = order.packs[line];
    if (packs === undefined || (came.trim() === "" && !isClosed)) continue;
    const count = came.trim() === "" ? pieces(0) : readCame(came, packs);
    if (count === null) {
      return err(
        `“${came}” of ${lineName(packs)} is no number of packs, nor of pieces as 37 pcs is.`,
      );
    }
    if (count > open) {
      const words = piecesWords(open, packs);
      over.push(`${lineName(packs)}: ${piecesWords(count, packs)} where ${words} are to come`);
    }
    if (count > 0 || isClosed) read.push({ line, came: count, isClosed });
  }
  if (read.length === 0) return err("Type what came, or say what will not come.");
  if (reason.trim() === "" && read.some(({ isClosed }) => isClosed)) {
    return err("Say why the rest will not come.");
  }
  return ok({ receipt: { day: date, lines: read, reason: reason.trim() }, over });
}
