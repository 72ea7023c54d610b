import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import type { Block, CellValue } from "../../src/core/base/cell";
import { findingCell } from "../../src/core/base/finding";
import { compileKitBook } from "../../src/core/kitbook/compileKitBook";
import {
  kitBookSections,
  sectionColumns,
  type KitBookRows,
  type KitBookSection,
} from "../../src/core/kitbook/rows";
import { starterKitBook } from "../../src/core/kitbook/starter/starterKitBook";
import { kitBookDrawings } from "../../src/tables/kitBookDrawings";
import { readKitBook } from "../../src/tables/kitBookTable";
import { shownValue, type Drawing } from "../../src/workbook/drawing";

const sheetOf = (drawing: Drawing): Block => ({
  sheet: drawing.name,
  row: 0,
  column: 0,
  rows: drawing.rows.map(({ cells }) =>
    cells.map((cell) => (cell === null ? null : shownValue(cell))),
  ),
});

/** Values alone, without their places. */
const valuesOf = (rows: KitBookRows | undefined) =>
  kitBookSections.map((section) =>
    (rows?.[section] ?? []).map((row) =>
      Object.fromEntries(Object.entries(row).map(([column, cell]) => [column, cell.value])),
    ),
  );

/** Lines of cells between commas, as a .csv holds them. */
const block = (sheet: string, lines: string): Block => ({
  sheet,
  row: 0,
  column: 0,
  rows: lines
    .trim()
    .split("\n")
    .map((line) =>
      line.split(",").map((cell): CellValue => {
        const written = cell.trim();
        if (written === "") return null;
        return /^\d+$/.test(written) ? Number(written) : written;
      }),
    ),
});

describe("a book written to sheets", () => {
  test("is read back as it was", () => {
    const reading = readKitBook(kitBookDrawings(starterKitBook).map(sheetOf));
    expect(reading?.findings).toEqual([]);
    expect(valuesOf(reading?.rows)).toEqual(valuesOf(starterKitBook));
  });

  test("compiles to the same book", () => {
    const reading = readKitBook(kitBookDrawings(starterKitBook).map(sheetOf));
    const { book, findings } = compileKitBook(reading?.rows ?? starterKitBook, []);
    const names = (from: typeof book) =>
      from.types.map(({ name, parts }) => [name, parts.map(({ quantity }) => quantity.text)]);
    expect(findings).toEqual([]);
    expect(names(book)).toEqual(names(compileKitBook(starterKitBook, []).book));
    expect(book.types[0]?.parts[0]?.source.place).toEqual({
      sheet: "Kit book parts",
      row: 3,
      column: 0,
    });
  });

  test("is read back whatever its cells hold", () => {
    const value = fc.oneof(
      fc.string({ minLength: 1 }).filter((text) => text.trim() !== ""),
      fc.double({ noNaN: true, noDefaultInfinity: true }),
      fc.boolean(),
      fc.constant(null),
      fc.record({ kind: fc.constant("date" as const), serial: fc.nat(60_000) }),
    );
    const row = <Section extends KitBookSection>(section: Section) =>
      fc
        .array(value, { minLength: 6, maxLength: 10 })
        // A row that is all blank, or holds one text, is no row but a gap or a title.
        .filter((cells) => cells.slice(0, 6).filter((cell) => cell !== null).length > 1)
        .map((cells) =>
          Object.fromEntries(
            sectionColumns[section].map((column, index) => [
              column,
              { value: cells[index] ?? null, place: null },
            ]),
          ),
        ) as fc.Arbitrary<KitBookRows[Section][number]>;
    const book: fc.Arbitrary<KitBookRows> = fc.record({
      sizes: fc.array(row("sizes"), { maxLength: 4 }),
      parts: fc.array(row("parts"), { maxLength: 4 }),
      limits: fc.array(row("limits"), { maxLength: 4 }),
      charts: fc.array(row("charts"), { maxLength: 4 }),
    });
    fc.assert(
      fc.property(book, (rows) => {
        const reading = readKitBook(kitBookDrawings(rows).map(sheetOf));
        expect(valuesOf(reading?.rows)).toEqual(valuesOf(rows));
      }),
    );
  });

  const drawings = kitBookDrawings(starterKitBook);

  test("keeps formulas as text, items that start with = among them", () => {
    const cells = drawings.flatMap(({ rows }) => rows.flatMap((row) => row.cells));
    expect(cells.filter((cell) => cell?.kind === "formula")).toEqual([]);
    expect(cells).toContainEqual(
      expect.objectContaining({
        kind: "text",
        format: "text",
        text: '=CHART("track plate", post_nominal, door_nominal)',
      }),
    );
  });

  test("belongs to the person", () => {
    expect(drawings.map(({ name, mark }) => [name, mark])).toEqual([
      ["Kit book sizes", null],
      ["Kit book parts", null],
      ["Kit book limits", null],
      ["Kit book charts", null],
    ]);
  });

  test("has a drop-down where only some words do", () => {
    const headings = drawings.flatMap(({ choices, rows }) =>
      choices.map(({ column, list }) => {
        const heading = rows[2]?.cells[column];
        return [heading?.kind === "text" ? heading.text : "", list.join()];
      }),
    );
    expect(headings).toEqual([
      ["Unit", "length,count,number,text,yes/no"],
      ["Level", "stop,warn,note"],
      ["Match", "exact,next up"],
    ]);
  });

  test("has its tables over its rows, also where a section has none", () => {
    const empty = { sizes: [], parts: [], limits: [], charts: [] };
    for (const { tables, rows } of [...drawings, ...kitBookDrawings(empty)]) {
      const [table] = tables;
      expect(table).toMatchObject({ headingRow: 2, lastRow: rows.length - 1 });
      expect(rows.length).toBeGreaterThan(3);
    }
  });
});

const stacked = `
Our kit book
,
Sizes
Name, Worked out as, Opening type, Units
leaf, width / 2, Door, length

Kit book: Parts
ITEM, QTY, Type, Bag, Only when
NUT, 2, Door, Hinges
BOLT, leaf, Door, Hinges, leaf > 1
ITEM, QTY, Type, Bag, Only when
WASHER, 2, Door, Hinges

Limits
Type, When, Level, Message
Door, leaf > 5', stop, Too wide

Charts
Chart, Down, Value
rail, 7', RAIL 7
`;

describe("reading", () => {
  test("takes sections one below the other, with headings in any order and their synonyms", () => {
    const reading = readKitBook([block("book", stacked)]);
    expect(reading?.findings).toEqual([]);
    const [sizes, parts, limits, charts] = valuesOf(reading?.rows);
    expect(sizes).toMatchObject([{ type: "Door", name: "leaf", formula: "width / 2" }]);
    expect(parts?.map((row) => [row["item"], row["quantity"], row["when"]])).toEqual([
      ["NUT", 2, null],
      ["BOLT", "leaf", "leaf > 1"],
      ["WASHER", 2, null],
    ]);
    expect(limits).toMatchObject([{ level: "stop", message: "Too wide" }]);
    expect(charts).toMatchObject([{ chart: "rail", match: null, down: "7'", value: "RAIL 7" }]);
  });

  test("keeps the place of every cell, and gives a column that is not there its row's", () => {
    const [first] =
      readKitBook([{ ...block("book", stacked), row: 10, column: 2 }])?.rows.parts ?? [];
    expect(first?.item.place).toEqual({ sheet: "book", row: 18, column: 2 });
    expect(first?.quantity.place).toEqual({ sheet: "book", row: 18, column: 3 });
    expect(first?.minutes).toEqual({ value: null, place: { sheet: "book", row: 18, column: 2 } });
  });

  test("knows a section by its headings alone", () => {
    const reading = readKitBook([
      block("Hardware rules", "Type, Item, Quantity, When\nDoor, NUT, 2, TRUE"),
    ]);
    expect(reading?.rows.parts).toHaveLength(1);
  });

  test("takes a row once that is read as a table and as a part of its sheet", () => {
    const sheet = block("Kit book parts", "Parts\nType, Item, Quantity, Bag\nDoor, NUT, 2, Hinges");
    const table = { ...sheet, row: 1, rows: sheet.rows.slice(1) };
    expect(readKitBook([table, sheet])?.rows.parts).toHaveLength(1);
  });

  test.each([
    ["a schedule", "Mark, Type, Width, Height, Qty\nD1, Door, 8', 7', 1"],
    ["an items table", "Code, Description, Unit, Unit cost\nNUT, Nut, each, 1"],
    ["a list of parts", "Parts\nName, Supplier\nNut, Somebody"],
    ["nothing", ""],
  ])("finds no book in %s", (_what, lines) => {
    expect(readKitBook([block("Sheet1", lines)])).toBeNull();
  });

  test("says which columns it does not read", () => {
    const reading = readKitBook([
      block(
        "Kit book parts",
        "Type, Item, Quantity, Bag, Cut lenght, Qty\nDoor, RAIL, 1, Track, 7'",
      ),
    ]);
    expect(reading?.findings.map((finding) => [finding.code, findingCell(finding)])).toEqual([
      ["kit-book-heading-unknown", "'Kit book parts'!E1"],
      ["kit-book-heading-twice", "'Kit book parts'!F1"],
    ]);
    expect(reading?.findings[0]?.message).toContain("Did you mean Cut length?");
  });

  test("says that a section has no headings", () => {
    const reading = readKitBook([block("Kit book limits", "Door, TRUE, stop, Never")]);
    expect(reading?.rows.limits).toEqual([]);
    expect(reading?.findings).toMatchObject([{ code: "kit-book-without-headings", level: "stop" }]);
  });
});
