/** Orders as an office keeps them: planned for what is missing, written down, sent. */
import fc from "fast-check";
import type { Result } from "../../../../src/core/base/result";
import { addDraft, sendOrder } from "../../../../src/core/purchasing/books/orderBooks";
import { orderContents } from "../../../../src/core/purchasing/books/orderContents";
import type { OrderContents } from "../../../../src/core/purchasing/books/orderRecord";
import { standingOf, type OrderBooks } from "../../../../src/core/purchasing/books/standing";
import type { OrderInput } from "../../../../src/core/purchasing/orders/orderInput";
import { offerOf } from "../offerOf";
import { orderOf, showSize, today, type DemandWords } from "../orderOf";

export const nuts = offerOf({ item: "HN 1/4", pack: 50, price: 600 });
export const bars = offerOf({ item: "TRACK", size: [240], price: 5000 });

export const valueOf = <T>(result: Result<T, { readonly message: string }>): T => {
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
};

/** What is still to be ordered. */
export const planOf = (asked: OrderInput, books: OrderBooks): ReturnType<typeof orderOf> =>
  orderOf({ ...asked, standing: standingOf(books) });

export const contentsOf = (asked: OrderInput, books: OrderBooks): OrderContents =>
  orderContents(planOf(asked, books), {
    standing: standingOf(books),
    wordsOf: ({ item, size }) => ({ description: item, size: showSize(size) }),
    currency: "USD",
    complete: true,
  });

/** Plans what is missing, writes it down and marks it as sent. */
export function orderAndSend(asked: OrderInput, books: OrderBooks): OrderBooks {
  const number = `PO-${books.orders.length + 1}`;
  const drafted = addDraft(books, number, contentsOf(asked, books), today);
  return valueOf(sendOrder(drafted, number, today, "KB"));
}

/** What a job may need, drawn by chance, of what `smallOffers` offer. */
export const anyDemand: fc.Arbitrary<DemandWords> = fc.oneof(
  fc.tuple(
    fc.constantFrom("A", "B"),
    fc.constantFrom("1", "2"),
    fc.constantFrom("HN", "FW"),
    fc.integer({ min: 1, max: 40 }),
  ),
  fc.tuple(
    fc.constantFrom("A", "B"),
    fc.constantFrom("1", "2"),
    fc.constant("TRACK"),
    fc.integer({ min: 1, max: 3 }),
    fc.constantFrom(20, 35, 50, 110),
  ),
);
export const smallOffers = [
  offerOf({ item: "HN", pack: 7, price: 70 }),
  offerOf({ item: "HN", supplier: "Birch", pack: 12, price: 110 }),
  offerOf({ item: "FW", pack: 25, price: 90 }),
  offerOf({ item: "TRACK", size: [120], pack: 2, price: 900 }),
];
