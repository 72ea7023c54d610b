/** A receipt of a sent order: rows for the shelf, and the order with the receipt behind its others. */
import { err, ok, type Result } from "../../base/result";
import { progressOf, type OrderProgress } from "./orderProgress";
import type { OrderedPacks, OrderFault, OrderRecord, OrderStep, TakenPieces } from "./orderRecord";
import type { Receipt } from "./receipt";
import { lineStands } from "./receipts";
import { sizedKey, type SizedItem } from "../sizedItem";
import { lessPieces } from "../sizedPieces";
import type { StockChange } from "./stockMovements";

/**
 * What was bought for the jobs goes to them as it comes, and the rest to the shelf. The order is
 * received once nothing is to come any more. `isSure`: more than is still to come of a line is taken
 * in too, as stock; it is refused otherwise, whether the order is open or received. `owed`: promises
 * to it that are still open.
 */
export function takeReceipt(
  order: OrderRecord,
  receipt: Receipt,
  isSure: boolean,
  owed: readonly TakenPieces[] = [],
): Result<OrderStep, OrderFault> {
  const fault = receiptFault(order, receipt, isSure);
  if (fault !== null) return err(fault);
  const added = { ...order, receipts: [...order.receipts, receipt] };
  const isOver = lineStands(added).every(({ open }) => open === 0);
  const after: OrderRecord =
    isOver && order.state === "sent"
      ? { ...added, state: "received", received: receipt.day }
      : added;
  const [had, has] = [progressOf(order, owed), progressOf(after, owed)];
  const { day, who } = receipt;
  const row = (
    { item, size }: SizedItem,
    kind: StockChange["kind"],
    change: number,
    note: string,
    job: string | null = null,
  ): StockChange => ({ item, size, kind, change, day, job, order: order.number, who, note });
  const usedRow = (packs: OrderedPacks, change: number): StockChange => {
    const [job = null, ...others] = packs.jobs;
    return others.length === 0
      ? row(packs, "used", change, "", job)
      : row(packs, "used", change, `for ${packs.jobs.join(", ")}`);
  };
  const changes = [
    ...order.packs.flatMap((packs, at) => {
      const came = (has.lines[at]?.came ?? 0) - (had.lines[at]?.came ?? 0);
      return [
        row(packs, "received", came, receivedWords(packs, came)),
        usedRow(packs, (had.used[at] ?? 0) - (has.used[at] ?? 0)),
      ];
    }),
    ...offcutChanges(order, had, has, receipt),
  ];
  return ok({ order: after, changes: changes.filter(({ change }) => change !== 0) });
}

/** Rows for the offcuts that there are now and were not before. */
export const offcutChanges = (
  { number }: OrderRecord,
  had: OrderProgress,
  has: OrderProgress,
  { day, who }: Pick<Receipt, "day" | "who">,
): readonly StockChange[] =>
  lessPieces(has.offcuts, had.offcuts, sizedKey).map(({ item, size, pieces }) => ({
    item,
    size,
    kind: "offcut",
    change: pieces,
    day,
    job: null,
    order: number,
    who,
    note: "left of a bar",
  }));

/** `2 x 50 from Alder`, or `37 pieces from Alder` of boxes that were not full. */
const receivedWords = ({ packSize, supplier }: OrderedPacks, came: number): string =>
  came % packSize === 0
    ? `${came / packSize} x ${packSize} from ${supplier}`
    : `${came} pieces from ${supplier}`;

function receiptFault(order: OrderRecord, receipt: Receipt, isSure: boolean): OrderFault | null {
  const { number, packs } = order;
  const fault = (code: OrderFault["code"], message: string): OrderFault => ({
    code,
    number,
    message,
  });
  if (order.state === "draft") {
    return fault("order-not-sent", `Order ${number} is a draft. Mark it as sent first.`);
  }
  const unknown = receipt.lines.find(({ line }) => packs[line] === undefined);
  if (unknown !== undefined) {
    return fault("line-unknown", `Order ${number} has no line ${unknown.line + 1}.`);
  }
  const stands = lineStands(order);
  const isNothing = receipt.lines.every(
    ({ line, came, isClosed }) => came === 0 && !(isClosed && (stands[line]?.open ?? 0) > 0),
  );
  if (isNothing && order.state === "received") {
    return fault("order-is-received", `Order ${number} has been received already.`);
  }
  if (isNothing && stands.some(({ open }) => open > 0)) {
    return fault("nothing-received", "Nothing is said to have come.");
  }
  if (receipt.reason === "" && receipt.lines.some(({ isClosed }) => isClosed)) {
    return fault("reason-missing", "Say why the rest will not come.");
  }
  if (isSure) return null;
  const over = stands.flatMap(({ open }, line) => {
    const came = receipt.lines.reduce((sum, each) => sum + (each.line === line ? each.came : 0), 0);
    return came <= open ? [] : [`${packs[line]?.item ?? ""}: ${came} where ${open} are to come`];
  });
  return over.length === 0
    ? null
    : fault(
        "more-than-ordered",
        `More came of order ${number} than was to come (${over.join("; ")}). Confirm it, and what is beyond the order is stock.`,
      );
}
