import { describe, expect, test } from "@jest/globals";
import type { MemoryWorkbook } from "../../../src/adapters/memory/memoryWorkbook";
import { keepDraft, removeDraft, sendKept } from "../../../src/app/orders/keepOrder";
import {
  moreThanOrdered,
  receiveKept,
  receiveKeptLines,
} from "../../../src/app/orders/receiveOrder";
import { pieces } from "../../../src/core/base/units";
import { standingWord } from "../../../src/core/purchasing/books/receipts";
import { countFile } from "../../../src/app/orders/countFile";
import type { JobsOrder } from "../../../src/app/orders/orderJobs";
import type { CellValue } from "../../../src/core/base/cell";
import { standingOf } from "../../../src/core/purchasing/books/standing";
import { auditMovements } from "../../../src/core/purchasing/books/stockMovements";
import { doorOf, orderOf } from "./orderFiles";
import { workbookOf } from "../typedWorkbook";
import {
  act,
  book,
  day,
  keep,
  keepAndSend,
  need,
  office,
  officeSheets,
  valueOf,
  workedOut,
} from "./orderDesk";

const toBuy = (order: JobsOrder): Readonly<Record<string, number>> =>
  Object.fromEntries(
    order.plan.lines
      .filter(({ item, kind }) => ["TROLLEY", "TRACK"].includes(item) && kind !== "cut")
      .map(({ item, buy }) => [item, buy]),
  );

const onHand = async (workbook: MemoryWorkbook, item: string): Promise<readonly string[]> =>
  standingOf((await book(workbook)).books)
    .onHand.filter((each) => each.item === item)
    .map(({ size, pieces }) => [...size, "x", pieces].join(" "));

const sheetText = (workbook: MemoryWorkbook, name: string): string =>
  JSON.stringify(workbook.snapshot().sheets.find((sheet) => sheet.name === name)?.rows);

const movements = (workbook: MemoryWorkbook): readonly (readonly CellValue[])[] =>
  (workbook.snapshot().sheets.find(({ name }) => name === "Stock movements")?.rows ?? []).map(
    (cells) => cells.map((cell) => cell?.value ?? null),
  );

/** The first row of the sheet of movements to go on with. */
const freeRow = (workbook: MemoryWorkbook): number =>
  movements(workbook).findLastIndex((cells) => typeof cells[0] === "number") + 1;

const typeRow = (workbook: MemoryWorkbook, row: number, cells: Record<number, CellValue>): void => {
  for (const [column, value] of Object.entries(cells)) {
    workbook.type({ sheet: "Stock movements", row, column: Number(column) }, value);
  }
};

describe("a draft", () => {
  test("has the next number of the pattern, its own sheets, and counts for nothing", async () => {
    const workbook = office();
    const before = toBuy(await workedOut(workbook));
    expect(await keep(workbook)).toBe("PO-2026-0001");
    expect(workbook.snapshot().sheets.map(({ name }) => name)).toEqual([
      "List",
      "Offers",
      "Stock",
      "PO-2026-0001 Alder",
      "PO-2026-0001 Birch",
      "PO-2026-0001 allocation",
      "PO-2026-0001 needs",
      "PO-2026-0001 cut list",
      "PO-2026-0001 left over",
      "Order book",
      "To come",
      "Stock movements",
      "Stock now",
    ]);
    expect(toBuy(await workedOut(workbook))).toEqual(before);
    expect(before).toEqual({ TROLLEY: 3, TRACK: expect.any(Number) });
    expect(await keep(workbook)).toBe("PO-2026-0002");
  });

  test("changes under its number, and what it buys no more is said on the old sheet", async () => {
    const workbook = office();
    const number = await keep(workbook);
    need(workbook, 1);
    workbook.type({ sheet: "Stock", row: 2, column: 2 }, 20);
    expect(await keep(workbook, number)).toBe(number);
    const { orders } = (await book(workbook)).books;
    expect(orders.map(({ charges }) => charges.map(({ supplier }) => supplier))).toEqual([[]]);
    expect(sheetText(workbook, `${number} Birch`)).toContain("has this sheet no more");
  });

  test("is removed, says so on its sheets, and leaves its number unused", async () => {
    const workbook = office();
    const number = await keep(workbook);
    valueOf(await removeDraft(workbook, number, { day }));
    expect((await book(workbook)).books).toMatchObject({ orders: [], removed: [number] });
    expect(sheetText(workbook, `${number} Alder`)).toContain("was removed");
    expect(await keep(workbook)).toBe("PO-2026-0002");
    expect(await removeDraft(workbook, "PO-2026-0009", { day })).toMatchObject({
      error: { code: "order-unknown" },
    });
  });

  test("that was worked out with another book is not kept", async () => {
    const workbook = office();
    const order = await workedOut(workbook);
    await keep(workbook);
    expect(await keepDraft(workbook, order, { day, number: null })).toMatchObject({
      error: { code: "book-has-changed" },
    });
  });

  test("typed over on its sheet is not sent until the cell is put back", async () => {
    const workbook = office();
    const number = await keep(workbook);
    const sheet = `${number} Alder`;
    const rows = workbook.snapshot().sheets.find(({ name }) => name === sheet)?.rows ?? [];
    const row = rows.findIndex((cells) => cells[0]?.value === "TROLLEY");
    workbook.type({ sheet, row, column: 4 }, 9);
    const refused = await sendKept(workbook, number, act);
    expect(refused).toMatchObject({ error: { code: "sheet-differs" } });
    expect(refused).toMatchObject({ error: { message: expect.stringContaining("says 9") } });
    expect((await book(workbook)).books.orders[0]?.state).toBe("draft");
    workbook.type({ sheet, row, column: 4 }, 1);
    expect(await sendKept(workbook, number, act)).toMatchObject({ ok: true });
  });
});

test("what nobody offers is needed all the same, and the refusal says so", async () => {
  const { List } = officeSheets(2);
  const workbook = workbookOf({ List: List ?? [] });
  const kept = await keepDraft(workbook, await workedOut(workbook), { day, number: null });
  expect(kept.ok ? "" : kept.error.message).toMatch(
    /^Nothing of what is needed can be ordered, so there is no order\. Nobody offers what is needed here/,
  );
});

describe("once sent", () => {
  test("nothing is needed twice, and a later need is another order for the difference", async () => {
    const workbook = office();
    await keepAndSend(workbook);
    expect(toBuy(await workedOut(workbook))).toEqual({ TROLLEY: 0 });
    expect((await workedOut(workbook)).plan.total).toBe(0);
    need(workbook, 5);
    // Six needed of which three were bought, in a box of five: two of it are free and serve the rest.
    expect(toBuy(await workedOut(workbook))).toMatchObject({ TROLLEY: 2 });
    const second = await keepAndSend(workbook);
    expect(second).toBe("PO-2026-0002");
    expect(toBuy(await workedOut(workbook))).toEqual({ TROLLEY: 0 });
  });

  test("an order is frozen: its record and its sheets stay to the letter", async () => {
    const workbook = office();
    const number = await keepAndSend(workbook);
    const record = JSON.stringify((await book(workbook)).books.orders[0]);
    const sheets = workbook
      .snapshot()
      .sheets.filter(({ name }) => name.startsWith(number))
      .map(({ name, rows }) => [name, JSON.stringify(rows)]);
    expect(await keepDraft(workbook, await workedOut(workbook), { day, number })).toMatchObject({
      error: { code: "nothing-to-order" },
    });
    need(workbook, 5);
    expect(await keepDraft(workbook, await workedOut(workbook), { day, number })).toMatchObject({
      error: { code: "order-is-frozen" },
    });
    expect(await removeDraft(workbook, number, { day })).toMatchObject({
      error: { code: "order-is-frozen" },
    });
    await keepAndSend(workbook);
    expect(JSON.stringify((await book(workbook)).books.orders[0])).toBe(record);
    for (const [name, rows] of sheets) expect(sheetText(workbook, name ?? "")).toBe(rows);
  });

  test("what it takes off the shelf is a row of the movements", async () => {
    const workbook = office();
    const number = await keepAndSend(workbook);
    expect(movements(workbook).filter((cells) => typeof cells[0] === "number")).toEqual([
      [
        1,
        expect.anything(),
        "TROLLEY",
        null,
        "counted",
        3,
        3,
        null,
        null,
        null,
        expect.any(String),
      ],
      [
        2,
        expect.anything(),
        "TRACK",
        "9'-6\"",
        "counted",
        1,
        1,
        null,
        null,
        null,
        expect.any(String),
      ],
      [3, expect.anything(), "TROLLEY", null, "taken", -3, 0, "Dock", number, "KB", null],
      [4, expect.anything(), "TRACK", "9'-6\"", "taken", -1, 0, null, number, "KB", "cut for Dock"],
    ]);
  });

  test("two drafts of one need: the second is refused once the first is sent", async () => {
    const workbook = office();
    const [first, second] = [await keep(workbook), await keep(workbook)];
    valueOf(await sendKept(workbook, first, act));
    expect(await sendKept(workbook, second, act)).toMatchObject({
      error: { code: "covered-since" },
    });
  });
});

describe("once received", () => {
  test("what is left over is on the shelf, and the next job has it from there", async () => {
    const workbook = office();
    const number = await keepAndSend(workbook);
    valueOf(await receiveKept(workbook, number, act));
    expect(await onHand(workbook, "TROLLEY")).toEqual(["x 2"]);
    expect((await onHand(workbook, "TRACK")).length).toBeGreaterThan(0);
    expect(await receiveKept(workbook, number, act)).toMatchObject({
      error: { code: "order-is-received" },
    });
    need(workbook, 4);
    const order = await workedOut(workbook);
    expect(order.plan.lines.find(({ item }) => item === "TROLLEY")).toMatchObject({
      buy: 0,
      need: { fromHand: 2, covered: 6 },
    });
  });

  test("a number typed anew on the stock sheet is a count of the shelf; the old ones are not", async () => {
    const workbook = office();
    const number = await keepAndSend(workbook);
    valueOf(await receiveKept(workbook, number, act));
    workbook.type({ sheet: "Stock", row: 1, column: 2 }, 7);
    expect(await onHand(workbook, "TROLLEY")).toEqual(["x 7"]);
    need(workbook, 4);
    await keepAndSend(workbook);
    expect(await onHand(workbook, "TROLLEY")).toEqual(["x 5"]);
    expect(auditMovements((await book(workbook)).books.movements)).toEqual([]);
  });
});

/** As a version that knew no receipts in parts kept it. */
async function keptLongAgo(workbook: MemoryWorkbook): Promise<void> {
  const record = JSON.parse((await workbook.readSetting("orderBook")) ?? "") as {
    readonly orders: readonly Readonly<Record<string, unknown>>[];
  };
  const orders = record.orders.map((order) =>
    Object.fromEntries(
      Object.entries(order).filter(([key]) => !["cuts", "receipts", "givenUp"].includes(key)),
    ),
  );
  await workbook.writeSetting("orderBook", JSON.stringify({ ...record, version: 1, orders }));
}

describe("received in parts", () => {
  const lines = (line: number, came: number, isClosed = false) => ({
    ...act,
    lines: [{ line, came: pieces(came), isClosed }],
    reason: isClosed ? "sold out" : "",
    isSure: false,
  });
  const wordsOf = async (workbook: MemoryWorkbook): Promise<readonly string[]> =>
    (await book(workbook)).books.orders.map(standingWord);

  test.each(["now", "long ago"])("what is to come of an order kept %s is said", async (when) => {
    const workbook = office();
    const number = await keepAndSend(workbook);
    if (when === "long ago") await keptLongAgo(workbook);
    const [order] = (await book(workbook)).books.orders;
    const trolleys = order?.packs.findIndex(({ item }) => item === "TROLLEY") ?? -1;
    const done = valueOf(await receiveKeptLines(workbook, number, lines(trolleys, 4)));
    expect(done.says).toEqual([`Order ${number} is part received.`]);
    expect(sheetText(workbook, "To come")).toContain("2026-11-14: 4 (KB)");
    expect(sheetText(workbook, "Order book")).toContain("part received");
    expect(await onHand(workbook, "TROLLEY")).toEqual(["x 1"]);
    expect(toBuy(await workedOut(workbook))).toEqual({ TROLLEY: 0 });
    expect(await receiveKeptLines(workbook, number, lines(trolleys, 2))).toMatchObject({
      error: { code: moreThanOrdered },
    });
    valueOf(await receiveKept(workbook, number, act));
    expect(await wordsOf(workbook)).toEqual(["received"]);
    expect(await onHand(workbook, "TROLLEY")).toEqual(["x 2"]);
  });

  test("what is closed short is needed again, and the sheet says why", async () => {
    const workbook = office();
    const number = await keepAndSend(workbook);
    const [order] = (await book(workbook)).books.orders;
    const trolleys = order?.packs.findIndex(({ item }) => item === "TROLLEY") ?? -1;
    valueOf(await receiveKeptLines(workbook, number, lines(trolleys, 1, true)));
    expect(sheetText(workbook, "To come")).toContain("1, the rest will not come: sold out (KB)");
    expect(toBuy(await workedOut(workbook))).toMatchObject({ TROLLEY: 2 });
    valueOf(await receiveKept(workbook, number, act));
    expect(await wordsOf(workbook)).toEqual(["received short"]);
  });

  test("an order that was received long ago is received, and gave what it gave", async () => {
    const workbook = office();
    valueOf(await receiveKept(workbook, await keepAndSend(workbook), act));
    const before = standingOf((await book(workbook)).books);
    await keptLongAgo(workbook);
    expect(await wordsOf(workbook)).toEqual(["received"]);
    expect(standingOf((await book(workbook)).books)).toEqual(before);
  });
});

test("what is on order by other means is promised once, and taken when it has come", async () => {
  const workbook = office(5);
  workbook.type({ sheet: "Stock", row: 0, column: 3 }, "On order");
  workbook.type({ sheet: "Stock", row: 1, column: 3 }, 2);
  const order = await workedOut(workbook);
  // Ten needed: three on the shelf, two on their way.
  expect(toBuy(order)).toMatchObject({ TROLLEY: 5 });
  const number = await keepAndSend(workbook);
  const { onOrder } = standingOf((await book(workbook)).books);
  expect(onOrder.filter(({ item }) => item === "TROLLEY")).toEqual([]);
  need(workbook, 6);
  expect(toBuy(await workedOut(workbook))).toMatchObject({ TROLLEY: 2 });
  workbook.type({ sheet: "Stock", row: 1, column: 3 }, 0);
  workbook.type({ sheet: "Stock", row: 1, column: 2 }, 2);
  expect(await onHand(workbook, "TROLLEY")).toEqual([]);
  valueOf(await receiveKept(workbook, number, act));
  expect(
    movements(workbook)
      .filter((cells) => cells[2] === "TROLLEY")
      .at(-1),
  ).toEqual(expect.arrayContaining(["taken", -2, 0, "Dock", number]));
});

describe("rows that a person adds to the stock movements", () => {
  test("are taken in, numbered, and their sheet is written over without a copy", async () => {
    const workbook = office();
    const number = await keepAndSend(workbook);
    const row = freeRow(workbook);
    typeRow(workbook, row, {
      2: "trolley",
      4: "Returned",
      5: 2,
      9: "MJ",
      10: "came back from site",
    });
    typeRow(workbook, row + 1, { 2: "WASHER", 6: 40 });
    expect(await onHand(workbook, "TROLLEY")).toEqual(["x 2"]);
    valueOf(await receiveKept(workbook, number, act));
    expect(workbook.snapshot().sheets.map(({ name }) => name)).not.toContain(
      "Stock movements (kept)",
    );
    expect(movements(workbook)[row]).toEqual([
      5,
      expect.anything(),
      "trolley",
      null,
      "returned",
      2,
      2,
      null,
      null,
      "MJ",
      "came back from site",
    ]);
    expect(await onHand(workbook, "WASHER")).toEqual(["x 40"]);
    expect((await book(workbook)).findings).toEqual([]);
  });

  test("that cannot be read stop every change of the book, and name the row", async () => {
    const workbook = office();
    const number = await keepAndSend(workbook);
    typeRow(workbook, freeRow(workbook), { 2: "TROLLEY", 5: "some" });
    const refused = await receiveKept(workbook, number, act);
    expect(refused).toMatchObject({
      error: { code: "movement-row-unreadable", message: expect.stringContaining("some") },
    });
  });

  test("and rows of ours that were changed or taken out are findings, and stand as they were", async () => {
    const workbook = office();
    const number = await keepAndSend(workbook);
    typeRow(workbook, 3, { 5: 30 });
    typeRow(workbook, 4, Object.fromEntries(Array.from({ length: 11 }, (_, at) => [at, null])));
    const { findings } = await book(workbook);
    expect(findings.map(({ code }) => code)).toEqual(["movement-row-changed", "movement-row-gone"]);
    expect(findings[0]?.message).toContain("says 30 where 3 was written");
    valueOf(await receiveKept(workbook, number, act));
    expect(movements(workbook)[3]?.[5]).toBe(3);
    expect(workbook.snapshot().sheets.map(({ name }) => name)).toContain("Stock movements (kept)");
  });
});

describe("whatever is refused on the way", () => {
  test("record and sheets agree: all of it was done, or nothing", async () => {
    const calm = office();
    const drafted = await keep(calm);
    const start = calm.snapshot();
    calm.failAt(null);
    valueOf(await sendKept(calm, drafted, act));
    const calls = calm.calls();
    const done = calm.snapshot();
    const { memoryWorkbook } = await import("../../../src/adapters/memory/memoryWorkbook");
    for (const onwards of [false, true]) {
      for (let call = 1; call <= calls; call += 1) {
        const workbook = memoryWorkbook(start);
        workbook.failAt(call, onwards);
        const sent = await sendKept(workbook, drafted, act).catch(() => null);
        workbook.failAt(null);
        const [order] = (await book(workbook)).books.orders;
        const sheets = JSON.stringify(workbook.snapshot().sheets);
        expect(order?.state).toBe(sheets === JSON.stringify(done.sheets) ? "sent" : "draft");
        if (order?.state === "draft") expect(sheets).toBe(JSON.stringify(start.sheets));
        expect(sent?.ok === true).toBe(order?.state === "sent");
        // And the next act goes on from there.
        const next =
          order?.state === "draft"
            ? await sendKept(workbook, drafted, act)
            : await receiveKept(workbook, drafted, act);
        expect(next.ok).toBe(true);
      }
    }
  }, 60_000);
});

test("a damaged record is a stop, and nothing is written over it", async () => {
  const workbook = office();
  const number = await keepAndSend(workbook);
  await workbook.writeSetting("orderBook", '{"version":1,"orders":[{}]}');
  expect((await workedOut(workbook)).complete).toBe(false);
  expect(await receiveKept(workbook, number, act)).toMatchObject({
    error: { code: "order-book-damaged" },
  });
  expect(await workbook.readSetting("orderBook")).toBe('{"version":1,"orders":[{}]}');
});

test("the book of another workbook is reckoned with, and an order is kept only where that is", async () => {
  const [mine, other] = [office(), office()];
  await keepAndSend(other);
  const counted = async (file: string, workbook: MemoryWorkbook) =>
    valueOf(await countFile({ file, workbook }, day));
  const files = [await counted("mine.xlsx", mine), await counted("other.xlsx", other)];
  const order = orderOf(files, { jobs: ["other.xlsx:Dock"] });
  expect(order.bookFile).toBe("other.xlsx");
  expect(order.plan.total).toBe(0);
  expect(await keepDraft(mine, order, { day, number: null })).toMatchObject({
    error: { code: "book-has-changed" },
  });
  // A job of the same name in another workbook is another job, and has nothing yet.
  expect(orderOf(files, { jobs: ["mine.xlsx:Dock"] }).plan.total).toBeGreaterThan(0);
  // Where the book's own workbook has no such job, nobody can say which of two the order was for.
  const [third, fourth] = [
    await counted("third.xlsx", workbookOf({ List: doorOf("Dock") })),
    await counted("fourth.xlsx", workbookOf({ List: doorOf("Dock") })),
  ];
  const keeper = office();
  await keepAndSend(keeper);
  keeper.type({ sheet: "List", row: 1, column: 0 }, "Yard");
  const both = orderOf([await counted("keeper.xlsx", keeper), third, fourth], {
    jobs: ["third.xlsx:Dock", "fourth.xlsx:Dock"],
  });
  expect(both.findings.map(({ finding }) => finding.code)).toContain("ordered-job-unsure");
  await keepAndSend(mine);
  const twice = orderOf([await counted("mine.xlsx", mine), await counted("other.xlsx", other)], {
    jobs: ["mine.xlsx:Dock"],
  });
  expect(twice.findings.map(({ finding }) => finding.code)).toContain("book-in-two-files");
});
