/** What a drawing looks like in Excel: looks, formats, widths, drop-downs, notes, page set-up. */
import { describe, expect, test } from "@jest/globals";
import type { Drawing } from "../../../src/workbook/drawing";
import { drawnSheet, styleTable } from "../../../src/workbook/drawnSheet";
import { cellKey, parseArea } from "../../fakehost/areas";
import { findSheet, listSource, type FakeCell, type FakeSheet } from "../../fakehost/book";
import { drawing } from "../../workbook/drawings";
import { excelRig, type ExcelRig } from "./excelRig";

const mark = { kind: "hardware", subject: "Job A" };

async function drawn(
  cells: Parameters<typeof drawing>[2],
  more: Partial<Drawing> = {},
  version = "1.9",
): Promise<{ rig: ExcelRig; sheet: FakeSheet; cell: (name: string) => FakeCell | undefined }> {
  const rig = await excelRig({ sheets: [{ name: "Schedule" }] }, version);
  const outcome = await rig.workbook.write([drawing("Hardware", mark, cells, more)]);
  if (!outcome.ok) throw new Error(outcome.error.message);
  const sheet = findSheet(rig.book, "Hardware");
  if (sheet === undefined) throw new Error("No sheet");
  const cell = (name: string): FakeCell | undefined => {
    const { row, column } = parseArea(name);
    return sheet.cells.get(cellKey(row, column));
  };
  return { rig, sheet, cell };
}

test("a text, a row and a header beyond what Excel takes are cut, and the rest is written", async () => {
  const print = { orientation: "portrait", fitToOnePageWide: true, breaksBefore: [] } as const;
  const [text, subject] = ["x".repeat(40_000), "Job A & B ".repeat(60)];
  const { sheet, cell, rig } = await drawn([], {
    rows: [{ cells: [{ kind: "text", text, look: "body" }], height: 600 }],
    print: { ...print, header: `${subject}\t\tHardware`, footer: "{page} of {pages}" },
  });
  expect(cell("A1")?.value).toMatch(/^x{30000,}…$/);
  expect(sheet.rowHeights.get(0)).toBe(409);
  expect(sheet.headers).toMatchObject({ rightHeader: "Hardware", centerFooter: "" });
  expect(sheet.headers["leftHeader"]).toMatch(/^Job A && B.*…$/);
  expect(rig.book.parts).toEqual([]);
});

describe("cells", () => {
  test("have the looks and formats of their dress", async () => {
    const { cell } = await drawn([
      [
        { kind: "text", text: "Item", look: "heading", align: "right", wrap: true },
        { kind: "number", number: 2, look: "total", format: "money" },
        { kind: "blank", look: "input", format: "text" },
      ],
    ]);
    expect(cell("A1")).toMatchObject({
      value: "Item",
      format: "@",
      style: {
        "font.bold": true,
        "font.color": "#FFFFFF",
        "fill.color": "#2F4F4A",
        horizontalAlignment: "Right",
        verticalAlignment: "Top",
        wrapText: true,
      },
    });
    expect(cell("B1")).toMatchObject({ format: "#,##0.00", style: { "font.bold": true } });
    expect(cell("B1")?.style).toHaveProperty(["borders.EdgeTop.color"], "#2F4F4A");
    expect(cell("C1")).toMatchObject({
      value: "",
      format: "@",
      style: { "fill.color": "#FFF9E5" },
    });
  });

  test("every cell of a sheet with all looks has the style that the drawing means", async () => {
    const looks = ["body", "title", "group", "total", "warn", "muted", "stop", "note"] as const;
    const formats = ["count", "money", "percent", "weight"] as const;
    const rows = Array.from({ length: 40 }, (_, row) =>
      Array.from({ length: 7 }, (__, column) => ({
        kind: "number" as const,
        number: row * column,
        look: looks[(row * 3 + (column >> 1)) % looks.length] ?? "body",
        format: formats[(row + column) % formats.length] ?? "count",
      })),
    );
    const { sheet } = await drawn(rows);
    const table = styleTable();
    const wanted = drawnSheet(drawing("x", mark, rows), "x", table);
    for (const [row, cells] of wanted.rows.entries()) {
      for (const [column, each] of cells.entries()) {
        const found = sheet.cells.get(cellKey(row, column));
        const style = table.styles[each?.style ?? -1];
        expect(found?.value).toBe(row * column);
        expect(found?.format).toBe(style?.format);
        expect(found?.style["font.color"]).toBe(`#${style?.ink ?? ""}`);
        expect(found?.style["font.bold"] ?? false).toBe(style?.bold ?? false);
        expect(found?.style["fill.color"]).toBe(
          style?.fill === undefined ? undefined : `#${style.fill}`,
        );
        for (const [line, edge] of [
          [style?.lineBelow, "EdgeBottom"],
          [style?.lineAbove, "EdgeTop"],
        ] as const) {
          if (line === undefined) continue;
          expect(found?.style[`borders.${edge}.style`]).toBe("Continuous");
          expect(found?.style[`borders.${edge}.color`]).toBe(`#${line.ink}`);
        }
      }
    }
  });

  test("a span is joined", async () => {
    const { sheet } = await drawn([[{ kind: "text", text: "wide", look: "title", span: 3 }]]);
    expect(sheet.merges).toEqual([{ row: 0, column: 0, rows: 1, columns: 4 }]);
  });
});

describe("the sheet", () => {
  const dressed: Partial<Drawing> = {
    columnWidths: [10, 20],
    frozenRows: 3,
    frozenColumns: 1,
    print: {
      orientation: "landscape",
      titleRows: { first: 1, last: 2 },
      columns: { first: 0, last: 1 },
      fitToOnePageWide: true,
      breaksBefore: [4, 9],
      header: "Nuts & bolts\t{page} of {pages}",
      footer: "",
    },
  };

  test("has widths, frozen panes and page set-up", async () => {
    const { sheet } = await drawn([["x", "y"]], dressed);
    // Ten digits of 7 pixels and 5 for padding are 75 pixels; a pixel is three quarters of a point.
    expect([...sheet.columnWidths]).toEqual([
      [0, 56.25],
      [1, 108.75],
    ]);
    expect(sheet.frozen).toEqual({ row: 0, column: 0, rows: 3, columns: 1 });
    expect(sheet.page).toMatchObject({
      orientation: "Landscape",
      zoom: { horizontalFitToPages: 1 },
    });
    expect(sheet.titleRows).toMatchObject({ row: 1, rows: 2 });
    expect(sheet.printArea).toMatchObject({ column: 0, columns: 2, row: 0, rows: 1_048_576 });
    expect(sheet.breaks).toEqual([4, 9]);
    expect(sheet.headers).toMatchObject({ leftHeader: "Nuts && bolts", centerHeader: "&P of &N" });
  });

  test("has the paper and margins that it asks for", async () => {
    const margins = { top: 0.5, bottom: 0.25, left: 1, right: 0 };
    const print = { orientation: "portrait", fitToOnePageWide: false, breaksBefore: [] } as const;
    const { sheet } = await drawn([["x"]], {
      print: { ...print, paper: "a4", margins, header: "", footer: "" },
    });
    expect(sheet.page).toMatchObject({
      paperSize: "A4",
      topMargin: 36,
      bottomMargin: 18,
      leftMargin: 72,
      rightMargin: 0,
    });
  });

  test("gets the new ones when it is replaced, and nothing stays hidden or filtered", async () => {
    const { rig, sheet } = await drawn([["x"], ["y"]], dressed);
    sheet.hiddenRows.add(1);
    sheet.rowHeights.set(1, 90);
    sheet.hasFilter = true;
    sheet.filteredRows.add(1);
    await rig.workbook.write([drawing("Hardware", mark, [["x"], ["z"]], { columnWidths: [5] })]);
    expect(sheet.columnWidths.get(0)).toBe(30);
    expect(sheet.rowHeights.size).toBe(0);
    expect(sheet.frozen).toBeNull();
    expect(sheet.page).toMatchObject({ orientation: "Portrait" });
    expect(sheet.breaks).toEqual([]);
    expect([...sheet.hiddenRows, ...sheet.filteredRows]).toEqual([]);
  });
});

describe("drop-downs", () => {
  const choice = (list: readonly string[], othersToo = false): Partial<Drawing> => ({
    choices: [{ column: 0, firstRow: 1, lastRow: 3, list, othersToo }],
  });

  test("write a short list into the rule", async () => {
    const { cell, rig } = await drawn([["Level"]], choice(["stop", "warn"]));
    expect(cell("A2")?.validation).toMatchObject({
      rule: { list: { inCellDropDown: true, source: "stop,warn" } },
      errorAlert: { showAlert: true },
    });
    expect(cell("A5")).toBeUndefined();
    expect(rig.book.sheets).toHaveLength(2);
  });

  test("let other things be typed where they may", async () => {
    const { cell } = await drawn([["Level"]], choice(["stop"], true));
    expect(cell("A2")?.validation).toMatchObject({ errorAlert: { showAlert: false } });
  });

  test.each([
    ["a long list", Array.from({ length: 90 }, (_, item) => `ITEM ${item}`)],
    ["items with commas", ["bolt, carriage", "nut"]],
    ["a first item like a formula", ["=1+1", "2"]],
  ])("find %s on a sheet that nobody sees", async (_, list) => {
    const { cell, rig } = await drawn([["Item"]], choice(list));
    const found = cell("A2");
    expect(found === undefined ? null : listSource(found)).toBe(
      `='Cribsheet lists'!$A$1:$A$${list.length}`,
    );
    const lists = findSheet(rig.book, "Cribsheet lists");
    expect(lists?.visibility).toBe("VeryHidden");
    expect(list.map((__, row) => lists?.cells.get(cellKey(row, 0))?.value)).toEqual(list);
    expect((await rig.workbook.sheets()).map(({ name }) => name)).toEqual(["Schedule", "Hardware"]);
  });

  test("share that sheet, and a list stays where it is when others come", async () => {
    const one = ["a,b", "c"];
    const other = ["d,e", "f"];
    const { rig, cell } = await drawn([["Item"]], choice(one));
    const second = drawing("Second", null, [["Item"]], choice(other));
    await rig.workbook.write([second]);
    await rig.workbook.write([drawing("Third", null, [["Item"]], choice(one))]);
    const sources = ["Hardware", "Second", "Third"].map((name) => {
      const found = findSheet(rig.book, name)?.cells.get(cellKey(1, 0));
      return found === undefined ? null : listSource(found);
    });
    expect(sources).toEqual([
      "='Cribsheet lists'!$A$1:$A$2",
      "='Cribsheet lists'!$B$1:$B$2",
      "='Cribsheet lists'!$A$1:$A$2",
    ]);
    expect(cell("A2")).toBeDefined();
    expect(rig.book.sheets.filter(({ visibility }) => visibility !== "Visible")).toHaveLength(1);
  });
});

describe("notes", () => {
  const noted = [
    [{ kind: "text", text: "Spares", look: "heading", note: "See the kit book." }],
  ] as const;

  test("are notes where Excel takes them, on a sheet that is replaced too", async () => {
    const { rig, sheet } = await drawn(noted, {}, "1.18");
    expect([...sheet.notes]).toEqual([[0, "See the kit book."]]);
    expect(await rig.workbook.write([drawing("Hardware", mark, noted)])).toMatchObject({
      ok: true,
      value: [{ was: "replaced", keptAs: null }],
    });
    expect([...sheet.notes]).toEqual([[0, "See the kit book."]]);
  });

  test("are shown on the selected cell where Excel does not take them yet", async () => {
    const { cell } = await drawn(noted);
    expect(cell("A1")?.validation).toMatchObject({
      prompt: { showPrompt: true, message: "See the kit book." },
    });
  });

  test("that a person wrote keep the old sheet", async () => {
    const { rig, sheet } = await drawn(noted, {}, "1.18");
    sheet.notes.set(cellKey(5, 1), "asked on site");
    expect(await rig.workbook.write([drawing("Hardware", mark, noted)])).toMatchObject({
      ok: true,
      value: [{ keptAs: "Hardware (kept)" }],
    });
    expect([...(findSheet(rig.book, "Hardware (kept)")?.notes.values() ?? [])]).toContain(
      "asked on site",
    );
  });
});
