/** Receipts in parts: what the jobs, the shelf and the next order make of them. */
import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { pieces } from "../../../../src/core/base/units";
import { inEffect } from "../../../../src/core/purchasing/books/orderProgress";
import { receiveLines } from "../../../../src/core/purchasing/books/orderBooks";
import type { OrderInput } from "../../../../src/core/purchasing/orders/orderInput";
import type { OrderRecord } from "../../../../src/core/purchasing/books/orderRecord";
import { lineStands, standingWord } from "../../../../src/core/purchasing/books/receipts";
import type { SizedPieces } from "../../../../src/core/purchasing/sizedPieces";
import {
  noBooks,
  standingOf,
  type OrderBooks,
} from "../../../../src/core/purchasing/books/standing";
import { auditMovements, stockOnHand } from "../../../../src/core/purchasing/books/stockMovements";
import { offerOf } from "../offerOf";
import { demandOf, inputOf, today, twoJobs, type DemandWords } from "../orderOf";
import { anyDemand, bars, nuts, orderAndSend, planOf, smallOffers, valueOf } from "./sentOrders";

type Came = readonly [line: number, came: number, close?: "close"];
const receipt = (lines: readonly Came[], day = today + 5) => ({
  day,
  who: "MJ",
  reason: lines.some(([, , close]) => close !== undefined) ? "sold out" : "",
  lines: lines.map(([line, came, close]) => ({
    line,
    came: pieces(came),
    isClosed: close !== undefined,
  })),
});
const receive = (books: OrderBooks, number: string, lines: readonly Came[], isSure = false) =>
  receiveLines(books, number, receipt(lines), isSure);
const received = (books: OrderBooks, number: string, lines: readonly Came[]) =>
  valueOf(receive(books, number, lines));

const toBuy = (asked: OrderInput, books: OrderBooks): readonly string[] =>
  planOf(asked, books)
    .lines.filter(({ buy, kind }) => buy > 0 && kind !== "bar")
    .map(({ item, size, buy }) => [item, ...size, "x", buy].join(" "));
const rows = ({ movements }: OrderBooks): readonly string[] =>
  movements.map(({ kind, item, change, job }) => [kind, item, change, job ?? "-"].join(" "));
const first = ({ orders: [order] }: OrderBooks): OrderRecord => {
  if (order === undefined) throw new Error("no order");
  return order;
};

const input = inputOf({ demands: twoJobs, offers: [nuts, bars], needBy: { Depot: 20, Mill: 40 } });

describe("a receipt of some lines", () => {
  const sent = orderAndSend(input, noBooks);

  test("gives the jobs theirs first, the earliest first, and leaves the rest open", () => {
    const books = received(sent, "PO-1", [[0, 20]]);
    expect(standingWord(first(books))).toBe("part received");
    expect(lineStands(first(books)).map(({ open }) => open)).toEqual([30, 1]);
    expect(rows(books)).toEqual(["received HN 1/4 20 -", "used HN 1/4 -20 -"]);
    const { supplied, orderedForJobs, onOrder } = standingOf(books);
    const nutsOf = (all: readonly (SizedPieces & { readonly job: string })[]) =>
      all.filter(({ item }) => item === "HN 1/4").map(({ job, pieces: count }) => [job, count]);
    expect(nutsOf(supplied)).toEqual([
      ["Depot", 15],
      ["Mill", 5],
    ]);
    expect(nutsOf(orderedForJobs)).toEqual([["Mill", 15]]);
    expect(onOrder.find(({ item }) => item === "HN 1/4")).toMatchObject({ pieces: 15 });
    expect(toBuy(input, books)).toEqual([]);
  });

  test("once all have come, says what one receipt of all would", () => {
    const parts = [
      [0, 20],
      [0, 30],
      [1, 1],
    ].reduce((books, [line = 0, came = 0]) => received(books, "PO-1", [[line, came]]), sent);
    const whole = received(sent, "PO-1", [
      [0, 50],
      [1, 1],
    ]);
    expect(standingWord(first(parts))).toBe("received");
    expect(stockOnHand(parts.movements)).toEqual(stockOnHand(whole.movements));
    expect(standingOf(parts)).toEqual(standingOf(whole));
    expect(auditMovements(parts.movements)).toEqual([]);
  });

  test("closed short is needed again, costs only what came, and needs a reason", () => {
    const books = received(sent, "PO-1", [
      [0, 20, "close"],
      [1, 1],
    ]);
    expect(standingWord(first(books))).toBe("received short");
    expect(toBuy(input, books)).toEqual(["HN 1/4 x 15"]);
    expect(inEffect(first(books)).packs[0]).toMatchObject({
      cost: 240,
      leftOver: 0,
      shares: [
        { job: "Depot", cost: 180 },
        { job: "Mill", cost: 60 },
      ],
    });
    expect(
      receiveLines(sent, "PO-1", { ...receipt([[0, 0, "close"]]), reason: "" }, false),
    ).toMatchObject({ error: { code: "reason-missing" } });
  });

  test("a bar that does not come is cut for nobody", () => {
    const books = received(sent, "PO-1", [
      [1, 0, "close"],
      [0, 50],
    ]);
    expect(toBuy(input, books)).toEqual(["TRACK 96 x 1", "TRACK 120 x 1"]);
    expect(stockOnHand(books.movements).map(({ item }) => item)).toEqual(["HN 1/4"]);
  });

  test("of more than is to come is refused until it is confirmed, and then is stock", () => {
    const refused = receive(sent, "PO-1", [[1, 3]]);
    expect(refused).toMatchObject({ error: { code: "more-than-ordered" } });
    expect(
      receive(sent, "PO-1", [
        [1, 1],
        [1, 1],
      ]),
    ).toMatchObject({ ok: false });
    const books = valueOf(receive(sent, "PO-1", [[1, 3]], true));
    expect(lineStands(first(books))[1]).toMatchObject({ came: 3, extra: 2 });
    expect(stockOnHand(books.movements)).toContainEqual({ item: "TRACK", size: [240], pieces: 2 });
  });

  test("what comes after all is stock, though the order was received", () => {
    const books = received(sent, "PO-1", [
      [0, 20, "close"],
      [1, 1],
    ]);
    expect(receive(books, "PO-1", [[0, 30]])).toMatchObject({ ok: false });
    const late = valueOf(receive(books, "PO-1", [[0, 30]], true));
    expect(stockOnHand(late.movements)).toContainEqual({ item: "HN 1/4", size: [], pieces: 30 });
    expect(toBuy(input, late)).toEqual([]);
  });

  test("of nothing, of no line, of a draft is refused", () => {
    expect(receive(sent, "PO-1", [])).toMatchObject({ error: { code: "nothing-received" } });
    expect(receive(sent, "PO-1", [[0, 0]])).toMatchObject({ error: { code: "nothing-received" } });
    expect(receive(sent, "PO-1", [[7, 1]])).toMatchObject({ error: { code: "line-unknown" } });
  });
});

describe("an order that was promised what was closed short", () => {
  const more = { ...input, demands: [...input.demands, demandOf(["Mill", "102", "HN 1/4", 10])] };
  const both = orderAndSend(more, orderAndSend(input, noBooks));

  test("gives it up, and its job needs it again", () => {
    const books = received(both, "PO-1", [
      [0, 38, "close"],
      [1, 1],
    ]);
    expect(books.orders[1]?.givenUp).toMatchObject([{ item: "HN 1/4", pieces: 7, job: "Mill" }]);
    expect(stockOnHand(books.movements).filter(({ item }) => item === "HN 1/4")).toEqual([]);
    expect(toBuy(more, books)).toEqual(["HN 1/4 x 7"]);
  });

  test("gives up an offcut too, of a bar that the one before it does not get", () => {
    const pieces = (count: number): OrderInput =>
      inputOf({
        demands: [["Mill", "1", "TRACK", count, 60]],
        offers: [offerOf({ item: "TRACK", size: [240], price: 5000 })],
      });
    const three = [1, 2, 3].reduce((books, count) => orderAndSend(pieces(count), books), noBooks);
    expect(three.orders.map(({ packs }) => packs.length)).toEqual([1, 0, 0]);
    const books = received(three, "PO-1", [[0, 0, "close"]]);
    expect(books.orders.map(({ givenUp }) => givenUp.map(({ size }) => size[0]))).toEqual([
      [],
      [180],
      [120],
    ]);
    expect(toBuy(pieces(3), books)).toEqual(["TRACK 60 x 3"]);
  });

  test("keeps it where enough comes all the same", () => {
    const books = received(both, "PO-1", [
      [0, 45, "close"],
      [1, 1],
    ]);
    expect(books.orders[1]?.givenUp).toEqual([]);
    expect(toBuy(more, books)).toEqual([]);
  });
});

test("an order kept before cuts were on record counts a bar's part of the pieces, rounded down", () => {
  const cutInput = inputOf({ demands: [["A", "1", "TRACK", 6, 100]], offers: [bars] });
  const sent = orderAndSend(cutInput, noBooks);
  const old = { ...sent, orders: sent.orders.map((order) => ({ ...order, cuts: null })) };
  for (const books of [sent, old]) {
    expect(toBuy(cutInput, received(books, "PO-1", [[0, 1]]))).toEqual([]);
    const short = received(books, "PO-1", [[0, 2, "close"]]);
    expect(toBuy(cutInput, short)).toEqual(["TRACK 100 x 2"]);
    expect(toBuy(cutInput, received(books, "PO-1", [[0, 3]]))).toEqual([]);
  }
});

describe("whatever is needed, sent and received in parts", () => {
  const anyRounds = fc.array(
    fc.record({
      demands: fc.array(anyDemand, { minLength: 1, maxLength: 4 }),
      receipts: fc.array(
        fc.record({
          order: fc.nat({ max: 5 }),
          line: fc.nat({ max: 5 }),
          part: fc.constantFrom(0, 0.3, 0.7, 1, 1.5),
          closes: fc.boolean(),
        }),
        { maxLength: 5 },
      ),
    }),
    { minLength: 1, maxLength: 4 },
  );
  /** Inches for what is cut, pieces for the others. */
  const measure = (all: readonly SizedPieces[], item: string): number =>
    all.reduce(
      (sum, each) => sum + (each.item === item ? (each.size[0] ?? 1) * each.pieces : 0),
      0,
    );

  test("nothing is ordered twice, nothing is missing, and what came is with the jobs or on the shelf", () => {
    let closings = 0;
    let givenUp = 0;
    fc.assert(
      fc.property(anyRounds, (rounds) => {
        let books = noBooks;
        const all: DemandWords[] = [];
        for (const { demands, receipts } of rounds) {
          all.push(...demands);
          const asked = inputOf({ demands: all, offers: smallOffers });
          books = orderAndSend(asked, books);
          expect(toBuy(asked, books)).toEqual([]);
          let isShort = false;
          for (const { order: at, line: which, part, closes } of receipts) {
            const order = books.orders[at % books.orders.length];
            if (order === undefined || order.packs.length === 0) continue;
            const line = which % order.packs.length;
            const { open = 0 } = lineStands(order)[line] ?? {};
            const came = Math.round(open * part);
            const before = standingOf(books);
            const step = receive(
              books,
              order.number,
              [closes ? [line, came, "close"] : [line, came]],
              true,
            );
            if (!step.ok) continue;
            books = step.value;
            expect(auditMovements(books.movements)).toEqual([]);
            const after = standingOf(books);
            // What a job has it keeps.
            for (const item of ["HN", "FW", "TRACK"]) {
              expect(measure(after.supplied, item)).toBeGreaterThanOrEqual(
                measure(before.supplied, item) - 1e-9,
              );
            }
            if (closes) closings += 1;
            isShort ||= closes;
            if (!isShort) expect(toBuy(asked, books)).toEqual([]);
          }
          givenUp += books.orders.filter((order) => order.givenUp.length > 0).length;
        }
        const asked = inputOf({ demands: all, offers: smallOffers });
        books = orderAndSend(asked, books);
        expect(toBuy(asked, books)).toEqual([]);
        for (const { number, state } of books.orders) {
          if (state !== "sent") continue;
          const order = books.orders.find((each) => each.number === number);
          const lines = order === undefined ? [] : lineStands(order);
          books = received(
            books,
            number,
            lines.flatMap(({ open }, line): Came[] => (open === 0 ? [] : [[line, open]])),
          );
        }
        const { onOrder, supplied, orderedForJobs, onHand } = standingOf(books);
        expect([onOrder, orderedForJobs]).toEqual([[], []]);
        expect(onHand).toEqual(stockOnHand(books.movements));
        expect(toBuy(asked, books)).toEqual([]);
        for (const item of ["HN", "FW", "TRACK"]) {
          const came = books.movements
            .filter(({ kind }) => kind === "received")
            .map(({ item: of, size, change }) => ({ item: of, size, pieces: pieces(change) }));
          const needed = all
            .filter(([, , of]) => of === item)
            .reduce((sum, [, , , count, length = 1]) => sum + count * length, 0);
          expect(measure(supplied, item)).toBeCloseTo(needed, 6);
          const lost = measure(came, item) - measure(supplied, item) - measure(onHand, item);
          // Scrap of bars is all that may be lost.
          if (item === "TRACK") expect(lost).toBeGreaterThanOrEqual(-1e-9);
          else expect(lost).toBe(0);
        }
      }),
      { numRuns: 150 },
    );
    expect(closings).toBeGreaterThan(20);
    expect(givenUp).toBeGreaterThan(0);
  });
});
