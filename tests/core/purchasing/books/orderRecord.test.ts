import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { inches, pieces } from "../../../../src/core/base/units";
import type { OrderInput } from "../../../../src/core/purchasing/orders/orderInput";
import {
  changeDraft,
  draftOrder,
  markSent,
  type OrderRecord,
} from "../../../../src/core/purchasing/books/orderRecord";
import { allOpen } from "../../../../src/core/purchasing/books/receipts";
import { takeReceipt } from "../../../../src/core/purchasing/books/takeReceipt";
import { receiveOrder, sendOrder } from "../../../../src/core/purchasing/books/orderBooks";
import {
  noBooks,
  standingOf,
  type OrderBooks,
} from "../../../../src/core/purchasing/books/standing";
import { auditMovements, stockOnHand } from "../../../../src/core/purchasing/books/stockMovements";
import { demandOf, inputOf, today, twoJobs, type DemandWords } from "../orderOf";
import {
  anyDemand,
  bars,
  contentsOf,
  nuts,
  orderAndSend,
  planOf,
  smallOffers,
  valueOf,
} from "./sentOrders";

const input = inputOf({
  demands: twoJobs,
  offers: [nuts, bars],
});

/** Marks the order at that place as received. */
const receive = (at: number, books: OrderBooks): OrderBooks =>
  valueOf(receiveOrder(books, books.orders[at]?.number ?? "none", today + 5, "KB"));

const toBuy = (asked: OrderInput, books: OrderBooks): readonly string[] =>
  planOf(asked, books)
    .lines.filter(({ buy }) => buy > 0)
    .map(({ item, size, buy }) => [item, ...size, "x", buy].join(" "));

const markReceived = (order: OrderRecord, day: number, who: string) =>
  takeReceipt(order, { day, who, reason: "", lines: allOpen(order) }, false);

describe("an order", () => {
  const draft = draftOrder("PO-1", contentsOf(input, noBooks), today, []);

  test("goes from draft to sent to received, and back never", () => {
    const sent = valueOf(markSent(draft, today, "KB")).order;
    const received = valueOf(markReceived(sent, today + 5, "KB")).order;
    expect([draft, sent, received].map(({ state }) => state)).toEqual([
      "draft",
      "sent",
      "received",
    ]);
    expect(received).toMatchObject({ made: today, sent: today, received: today + 5 });
    expect(markReceived(draft, today, "KB")).toMatchObject({ error: { code: "order-not-sent" } });
    expect(markSent(sent, today, "KB")).toMatchObject({ error: { code: "order-is-frozen" } });
    expect(markReceived(received, today, "KB")).toMatchObject({
      error: { code: "order-is-received" },
    });
  });

  test("changes while it is a draft, and is frozen once it is sent", () => {
    const less = { ...draft, packs: [] };
    expect(changeDraft(draft, less, [])).toMatchObject({
      ok: true,
      value: { packs: [], number: "PO-1" },
    });
    const sent = valueOf(markSent(draft, today, "KB")).order;
    expect(changeDraft(sent, less, [])).toMatchObject({
      ok: false,
      error: { code: "order-is-frozen" },
    });
  });

  test("as a draft counts for nothing", () => {
    expect(toBuy(input, { ...noBooks, orders: [draft] })).toEqual(toBuy(input, noBooks));
  });
});

describe("once sent", () => {
  const books = orderAndSend(input, noBooks);

  test("the same need asks for nothing more", () => {
    expect(toBuy(input, books)).toEqual([]);
    expect(planOf(input, books).total).toBe(0);
  });

  test("a later need asks for the difference, from what comes for stock first", () => {
    const more = { ...input, demands: [...input.demands, demandOf(["Mill", "102", "HN 1/4", 40])] };
    const later = planOf(more, books).lines.find(({ kind }) => kind === "loose");
    expect(later).toMatchObject({ buy: 25, need: { covered: 35, fromOrder: 15 } });
  });

  test("what one later order was promised no other is", () => {
    const more = { ...input, demands: [...input.demands, demandOf(["Mill", "102", "HN 1/4", 10])] };
    const second = orderAndSend(more, books);
    expect(planOf(more, books).total).toBe(0);
    const third = { ...more, demands: [...more.demands, demandOf(["Depot", "8", "HN 1/4", 10])] };
    expect(toBuy(third, second)).toEqual(["HN 1/4 x 5"]);
  });

  test("a piece is not cut again, and a further one comes from the offcut only if it fits", () => {
    const short = {
      ...input,
      demands: [...input.demands, demandOf(["Mill", "102", "TRACK", 1, 20])],
    };
    expect(toBuy(short, books)).toEqual(["TRACK 20 x 1"]);
    expect(planOf(short, books).total).toBe(0);
    const long = {
      ...input,
      demands: [...input.demands, demandOf(["Mill", "102", "TRACK", 1, 30])],
    };
    expect(planOf(long, books).total).toBe(5000);
  });
});

describe("once received", () => {
  const books = receive(0, orderAndSend(input, noBooks));

  test("what is left over is stock on hand, and every row says why", () => {
    expect(stockOnHand(books.movements)).toEqual([
      { item: "HN 1/4", size: [], pieces: 15 },
      { item: "TRACK", size: [24], pieces: 1 },
    ]);
    expect(
      books.movements.map(({ kind, item, change, order, note }) => [
        kind,
        item,
        change,
        order,
        note,
      ]),
    ).toEqual([
      ["received", "HN 1/4", 50, "PO-1", "1 x 50 from Alder"],
      ["used", "HN 1/4", -35, "PO-1", "for Depot, Mill"],
      ["received", "TRACK", 1, "PO-1", "1 x 1 from Alder"],
      ["used", "TRACK", -1, "PO-1", "for Depot, Mill"],
      ["offcut", "TRACK", 1, "PO-1", "left of a bar"],
    ]);
  });

  test("the next job takes it off the shelf when its order is sent", () => {
    const next = inputOf({ demands: [["Yard", "1", "HN 1/4", 10]], offers: [nuts] });
    const after = orderAndSend(next, books);
    expect(after.movements.at(-1)).toMatchObject({
      kind: "taken",
      change: -10,
      job: "Yard",
      order: "PO-2",
      balance: 5,
    });
    expect(toBuy(next, after)).toEqual([]);
  });
});

test("a promise is kept when what was promised comes, though the later order came first", () => {
  const first = orderAndSend(input, noBooks);
  const more = { ...input, demands: [...input.demands, demandOf(["Mill", "102", "HN 1/4", 10])] };
  const laterFirst = receive(1, orderAndSend(more, first));
  expect(laterFirst.movements).toEqual([]);
  const both = receive(0, laterFirst);
  expect(both.movements.at(-1)).toMatchObject({ kind: "taken", change: -10, order: "PO-2" });
  expect(stockOnHand(both.movements)[0]).toMatchObject({ item: "HN 1/4", pieces: 5 });
  expect(auditMovements(both.movements)).toEqual([]);
});

test("an order that is not in the books cannot be sent", () => {
  expect(sendOrder(noBooks, "PO-9", today, "KB")).toMatchObject({
    error: { code: "order-unknown" },
  });
});

describe("whatever is needed, sent and received", () => {
  const anyNeeds = fc.array(
    fc.record({
      demands: fc.array(anyDemand, { minLength: 1, maxLength: 5 }),
      receives: fc.boolean(),
      kerf: fc.constantFrom(0, 0.125),
    }),
    { minLength: 1, maxLength: 4 },
  );

  test("nothing is ordered twice, the rows add up and the shelf is never below zero", () => {
    fc.assert(
      fc.property(anyNeeds, (needs) => {
        let books = noBooks;
        const all: DemandWords[] = [];
        for (const { demands, receives, kerf } of needs) {
          all.push(...demands);
          const asked = inputOf({ demands: all, offers: smallOffers, kerf });
          books = orderAndSend(asked, books);
          expect(toBuy(asked, books)).toEqual([]);
          if (receives) books = receive(books.orders.length - 1, books);
          expect(toBuy(asked, books)).toEqual([]);
          expect(auditMovements(books.movements)).toEqual([]);
        }
        for (const [at, order] of books.orders.entries()) {
          if (order.state === "sent") books = receive(at, books);
        }
        const { onHand, onOrder } = standingOf(books);
        expect(onOrder).toEqual([]);
        expect(onHand).toEqual(stockOnHand(books.movements));
        expect(auditMovements(books.movements)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });

  test("a bar cut for the jobs and its offcuts are never longer than the bar", () => {
    const asked = inputOf({ demands: [["A", "1", "TRACK", 3, 50]], offers: smallOffers });
    const books = receive(0, orderAndSend(asked, noBooks));
    const inchesOnHand = stockOnHand(books.movements).reduce(
      (sum, { size, pieces: count }) => sum + (size[0] ?? inches(0)) * count,
      0,
    );
    expect(inchesOnHand).toBe(2 * 120 - 3 * 50);
    expect(pieces(books.movements.length)).toBe(4);
  });
});
