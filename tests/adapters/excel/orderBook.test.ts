import { expect, test } from "@jest/globals";
import { sendKept } from "../../../src/app/orders/keepOrder";
import { receiveKept } from "../../../src/app/orders/receiveOrder";
import { standingOf } from "../../../src/core/purchasing/books/standing";
import { act, book, keep, officeSheets, valueOf, workedOut } from "../../app/orders/orderDesk";
import { excelDesk } from "./excelDesk";

test("an order is kept, sent and received in Excel, with a row by hand between", async () => {
  const desk = await excelDesk(officeSheets(3), "1.9");
  const { workbook } = desk;
  const number = await keep(workbook);
  valueOf(await sendKept(workbook, number, act));
  const { books, findings } = await book(workbook);
  expect(findings).toEqual([]);
  expect((await workedOut(workbook)).plan.total).toBe(0);

  const sheet = "Stock movements";
  const row = 3 + books.movements.length;
  desk.type({ sheet, row, column: 2 }, "TROLLEY");
  desk.type({ sheet, row, column: 5 }, 4);
  valueOf(await receiveKept(workbook, number, act));
  const after = await book(workbook);
  expect(after.findings).toEqual([]);
  expect(after.books.orders.map(({ state }) => state)).toEqual(["received"]);
  // Two are left of the box of five, and four were put there by hand.
  const trolleys = standingOf(after.books).onHand.filter(({ item }) => item === "TROLLEY");
  expect(trolleys.map(({ pieces }) => pieces)).toEqual([6]);
  expect(desk.sheets().map(({ name }) => name)).not.toContain(`${sheet} (kept)`);
}, 60_000);

test("a request that Excel refuses leaves record and sheets in agreement", async () => {
  for (const call of [1, 4, 7, 10, 14, 18, 22]) {
    const desk = await excelDesk(officeSheets(3), "1.9");
    const number = await keep(desk.workbook);
    desk.failAt(call);
    // A refused reading rejects; the pane tells of it.
    const sent = await sendKept(desk.workbook, number, act).catch(() => ({ ok: false }));
    desk.failAt(null);
    const { books, findings } = await book(desk.workbook);
    expect({ call, findings, state: books.orders[0]?.state }).toEqual({
      call,
      findings: [],
      state: sent.ok ? "sent" : "draft",
    });
  }
}, 120_000);
