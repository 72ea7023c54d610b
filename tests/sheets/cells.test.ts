import { expect, test } from "@jest/globals";
import { bandRow, formula, headingRow, number, text, wordsRow } from "../../src/sheets/cells";
import { printSetup } from "../../src/sheets/printSetup";

test("text keeps what it starts with; empty text is a blank cell of the same look", () => {
  expect(text("=1+1")).toEqual({ kind: "text", text: "=1+1", look: "body" });
  expect(text("", { look: "input" })).toEqual({ kind: "blank", look: "input" });
});

test("a number must be one that a cell can hold", () => {
  expect(number(2.5, "money")).toMatchObject({ kind: "number", number: 2.5, format: "money" });
  expect(() => number(NaN, "count")).toThrow(RangeError);
});

test("a formula starts with an equals sign", () => {
  expect(formula("A1*2", 4, "count")).toMatchObject({ formula: "=A1*2", result: 4 });
});

test("words over several columns join the cells to their right", () => {
  expect(wordsRow("Hardware", "title", 5, { height: 24 })).toEqual({
    cells: [{ kind: "text", text: "Hardware", look: "title", span: 4 }],
    height: 24,
  });
});

test("headings of numbers go right", () => {
  const { cells } = headingRow([{ words: "Item" }, { words: "Quantity", numbers: true }]);
  expect(cells.map((cell) => cell?.align)).toEqual([undefined, "right"]);
});

test("a band has one look from end to end", () => {
  const { cells } = bandRow("total", 3, { 1: number(5, "count") });
  expect(cells.map((cell) => [cell?.kind, cell?.look])).toEqual([
    ["blank", "total"],
    ["number", "total"],
    ["blank", "total"],
  ]);
});

test("printing repeats the heading row and keeps texts in their place", () => {
  const setup = printSetup({
    headingRow: 3,
    subject: "Job\tA",
    title: "Hardware",
    caution: "Mind.",
  });
  expect(setup).toMatchObject({
    titleRows: { first: 3, last: 3 },
    header: "Job A\t\tHardware",
    footer: "Mind.\t\tPage {page} of {pages}",
  });
});
