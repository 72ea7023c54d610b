/** Whether the books have moved on under a draft since it was worked out. */
import type { OrderFault, OrderRecord } from "./orderRecord";
import { sizedKey } from "../sizedItem";
import { jobKeyOf, piecesByKey } from "../sizedPieces";
import { sentOrders, standingOf, type OrderBooks } from "./standing";

/**
 * Why a draft can no longer be sent as it was worked out; `null` where it can. An order sent since
 * gives a job the same thing, or the shelf and what is on order have not all that it takes.
 */
export function draftFault(books: OrderBooks, draft: OrderRecord): OrderFault | null {
  const { number } = draft;
  const fault = (code: OrderFault["code"], says: string): OrderFault => ({
    code,
    number,
    message: `${says} Work the order out again and keep it under its number.`,
  });
  const covered = new Set(draft.covers.map((each) => jobKeyOf(each.job, each)));
  for (const sent of sentOrders(books)) {
    if (draft.after.includes(sent.number)) continue;
    const twice = sent.covers.find((each) => covered.has(jobKeyOf(each.job, each)));
    if (twice === undefined) continue;
    const { item, job } = twice;
    return fault(
      "covered-since",
      `Order ${sent.number} was sent since, with ${item} for ${job} too.`,
    );
  }
  const { onHand, onOrder } = standingOf(books);
  const there = piecesByKey(onHand, sizedKey);
  const take = (taken: OrderRecord["fromShelf"]): string | null => {
    for (const each of taken) {
      const left = (there.get(sizedKey(each)) ?? 0) - each.pieces;
      if (left < 0) return each.item;
      there.set(sizedKey(each), left);
    }
    return null;
  };
  const short = take(draft.fromShelf);
  if (short !== null) {
    return fault(
      "shelf-is-short",
      `It takes more of ${short} off the shelf than is free there now.`,
    );
  }
  for (const [key, count] of piecesByKey(onOrder, sizedKey)) {
    there.set(key, (there.get(key) ?? 0) + count);
  }
  const unpromised = take(draft.fromOrders);
  return unpromised === null
    ? null
    : fault("shelf-is-short", `It counts on more of ${unpromised} than earlier orders bring now.`);
}
