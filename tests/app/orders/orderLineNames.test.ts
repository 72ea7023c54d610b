/** What a person calls a line, and types of what came. */
import { describe, expect, test } from "@jest/globals";
import { namedLine, piecesWords, readCame } from "../../../src/app/orders/orderLineNames";
import { cents, inches, pieces } from "../../../src/core/base/units";
import { draftOrder, type OrderedPacks } from "../../../src/core/purchasing/books/orderRecord";

const packs = (item: string, supplier: string, size: string, packSize = 1): OrderedPacks => ({
  item,
  size: size === "" ? [] : [inches(240)],
  words: { description: "", size },
  supplier,
  packSize: pieces(packSize),
  count: 1,
  price: cents(0),
  cost: cents(0),
  leftOver: pieces(0),
  needBy: null,
  orderBy: null,
  jobs: [],
  shares: [],
});
const order = draftOrder(
  "PO-1",
  {
    jobs: [],
    packs: [
      packs("TROLLEY", "Alder", ""),
      packs("TROLLEY", "Birch", "", 10),
      packs("TRACK", "Birch", "20'-0\""),
      packs("2", "Birch", ""),
    ],
    charges: [],
    covers: [],
    fromShelf: [],
    fromOrders: [],
    offcuts: [],
    cuts: [],
    total: cents(0),
    currency: "USD",
    complete: true,
  },
  46_340,
  [],
);

describe("a line", () => {
  test.each([
    ["3", 2],
    ["track", 2],
    [" Track  20'-0\" ", 2],
    ["TROLLEY from alder", 0],
    ["2 from Birch", 3],
    ["1", 0],
  ])("is called %s", (named, line) => {
    expect(namedLine(order, named)).toEqual({ ok: true, value: line });
  });

  test.each([
    ["TROLLEY", "more than one line", "1: TROLLEY from Alder; 2: TROLLEY from Birch"],
    ["2", "more than one line", "2: TROLLEY from Birch; 4: 2 from Birch"],
    ["9", "has no line", "3: TRACK 20'-0\" from Birch"],
    ["", "has no line", "1: TROLLEY"],
  ])("is not told by %s", (named, says, lines) => {
    const told = namedLine(order, named);
    expect(told).toMatchObject({ ok: false, error: expect.stringContaining(says) });
    expect(told).toMatchObject({ error: expect.stringContaining(lines) });
  });
});

test.each([
  ["3", 30],
  [" 3 packs ", 30],
  ["37pcs", 37],
  ["1 piece", 1],
  ["0", 0],
  ["-1", null],
  ["1.5", null],
  ["3 boxes", null],
  ["", null],
  ["9999999999", null],
])("%s came of packs of ten: %s pieces", (typed, came) => {
  expect(readCame(typed, { packSize: pieces(10) })).toBe(came);
});

test.each([
  [30, 10, "3 packs of 10"],
  [10, 10, "1 pack of 10"],
  [37, 10, "37 pcs"],
  [1, 1, "1 pc"],
])("%s pieces in packs of %s are %s", (count, packSize, words) => {
  expect(piecesWords(count, { packSize: pieces(packSize) })).toBe(words);
});
