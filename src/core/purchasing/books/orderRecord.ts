/**
 * An order as the firm keeps it: a draft that may change, sent and then frozen, at last received
 * (`takeReceipt.ts`).
 *
 * The record says for every job what the order covers, so that a later order asks only for the
 * difference; and it says what moves on the shelf, as rows for `stockMovements.ts`.
 */
import { err, ok, type Result } from "../../base/result";
import type { Cents, Pieces } from "../../base/units";
import type { JobPieces, SizedPieces } from "../sizedPieces";
import type { OrderJob } from "../orders/orderInput";
import type { Receipt } from "./receipt";
import type { SizedItem } from "../sizedItem";
import type { Share } from "../orders/shares";
import type { StockChange } from "./stockMovements";

export const orderStates = ["draft", "sent", "received"] as const;
export type OrderState = (typeof orderStates)[number];

/** Item and size as they read on the order's sheets, whatever they are called later. */
export type OrderedWords = { readonly description: string; readonly size: string };

/** Packs as they were ordered; prices and words are those of that day. */
export type OrderedPacks = SizedItem & {
  readonly words: OrderedWords;
  readonly supplier: string;
  readonly packSize: Pieces;
  readonly count: number;
  readonly price: Cents;
  readonly cost: Cents;
  /** Pieces of them that go to stock. */
  readonly leftOver: Pieces;
  /** The earliest date of the jobs they are for. */
  readonly needBy: number | null;
  /** The last day to order them; `null` where no job that needs them has a date. */
  readonly orderBy: number | null;
  /** Those that they are for; for bars, those whose pieces are cut from them. */
  readonly jobs: readonly string[];
  /** Add up to the cost. */
  readonly shares: readonly Share[];
};

/** What a supplier adds to the goods, and whose cost that is. */
export type OrderedCharge = {
  readonly supplier: string;
  readonly madeUp: Cents;
  readonly freight: Cents;
  readonly shares: readonly Share[];
};

/** What is taken from stock for a job; `job` is `null` for bars that several share. */
export type TakenPieces = SizedPieces & { readonly job: string | null };

/** Bars of one length that are cut alike. */
export type OrderedCut = {
  readonly bar: SizedItem;
  readonly bars: Pieces;
  /** Whether the order buys them; others are on the shelf or promised. */
  readonly isBought: boolean;
  /** Of each bar. */
  readonly gives: readonly JobPieces[];
  /** What is kept of each bar: one piece, or none. */
  readonly offcuts: readonly SizedPieces[];
};

/** What an order is about, before it has a number and a state. */
export type OrderContents = {
  readonly jobs: readonly OrderJob[];
  readonly packs: readonly OrderedPacks[];
  /** One for each supplier, in the order of their sheets. */
  readonly charges: readonly OrderedCharge[];
  /** What it gives to each job, by what the job counts: loose pieces, and lengths that are cut. */
  readonly covers: readonly JobPieces[];
  /** Taken off the shelf when it is sent. */
  readonly fromShelf: readonly TakenPieces[];
  /** Promised from what earlier orders bring for stock; taken as soon as that is there. */
  readonly fromOrders: readonly TakenPieces[];
  /** Kept for stock as their bars come. */
  readonly offcuts: readonly SizedPieces[];
  /** In the order of the cut list; `null` for an order kept before cuts were on record. */
  readonly cuts: readonly OrderedCut[] | null;
  readonly total: Cents;
  /** ISO 4217 code of the currency of all of it. */
  readonly currency: string;
  /** Whether everything that the jobs needed was on it. */
  readonly complete: boolean;
};

export type OrderRecord = OrderContents & {
  readonly number: string;
  readonly state: OrderState;
  /** The orders that had been sent when it was worked out, and that it reckons with. */
  readonly after: readonly string[];
  /** Date serials; `null` while it has not come to that. */
  readonly made: number;
  readonly sent: number | null;
  readonly received: number | null;
  /** What has come of it; only ever added to. */
  readonly receipts: readonly Receipt[];
  /** Promises that it will not get, since an order that was to bring it was closed short. */
  readonly givenUp: readonly TakenPieces[];
};

export const orderFaultCodes = [
  "order-unknown",
  "order-is-frozen",
  "order-not-sent",
  "order-is-received",
  "line-unknown",
  "nothing-received",
  "reason-missing",
  "more-than-ordered",
  "shelf-is-short",
  "covered-since",
] as const;

export type OrderFault = {
  readonly code: (typeof orderFaultCodes)[number];
  readonly number: string;
  readonly message: string;
};

export type OrderStep = {
  readonly order: OrderRecord;
  /** For the stock movements, in their order. */
  readonly changes: readonly StockChange[];
};

export const draftOrder = (
  number: string,
  contents: OrderContents,
  day: number,
  after: readonly string[],
): OrderRecord => ({
  ...contents,
  number,
  state: "draft",
  after,
  made: day,
  sent: null,
  received: null,
  receipts: [],
  givenUp: [],
});

/** The draft with other contents. An order once sent is frozen: what is needed later is another order. */
export function changeDraft(
  order: OrderRecord,
  contents: OrderContents,
  after: readonly string[],
): Result<OrderRecord, OrderFault> {
  if (order.state !== "draft") {
    const message = `Order ${order.number} is sent and stays as it is. Make another for the difference.`;
    return err({ code: "order-is-frozen", number: order.number, message });
  }
  return ok({ ...order, ...contents, after });
}

/** Freezes the draft and takes what it needs off the shelf. */
export function markSent(
  order: OrderRecord,
  day: number,
  who: string,
): Result<OrderStep, OrderFault> {
  if (order.state !== "draft") {
    const message = `Order ${order.number} has been sent already.`;
    return err({ code: "order-is-frozen", number: order.number, message });
  }
  const changes = order.fromShelf.map((taken) => takenChange(order, taken, day, who));
  return ok({ order: { ...order, state: "sent", sent: day }, changes });
}

/** Pieces that go from the shelf to a job of the order. */
export const takenChange = (
  order: OrderRecord,
  { item, size, pieces: count, job }: TakenPieces,
  day: number,
  who: string,
): StockChange => ({
  item,
  size,
  kind: "taken",
  change: 0 - count,
  day,
  job,
  order: order.number,
  who,
  note: job === null ? `cut for ${jobNames(order)}` : "",
});

const jobNames = (order: OrderRecord): string => order.jobs.map(({ job }) => job).join(", ");
