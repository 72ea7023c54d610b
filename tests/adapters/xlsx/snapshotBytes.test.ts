import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { strFromU8, unzipSync } from "fflate";
import { snapshotBytes } from "../../../src/adapters/xlsx/snapshotBytes";
import { blankSheet, workbookOf } from "../../../src/workbook/blankSheet";
import type { CellSnapshot, CellStyle, WorkbookSnapshot } from "../../../src/workbook/snapshot";
import { brokenLaws } from "./fileLaws";
import { fileWorkbookOf } from "./opened";

const styles: readonly CellStyle[] = [
  {},
  {
    font: "Georgia",
    size: 14,
    bold: true,
    italic: true,
    underline: true,
    strike: true,
    ink: "1F4E79",
    fill: "FFF1D6",
    lineAbove: { weight: "thin", ink: "2F4F4A" },
    lineBelow: { weight: "thick", ink: "000000" },
    lineLeft: { weight: "medium", ink: "FF0000" },
    lineRight: { weight: "thin", ink: "00FF00" },
    format: `#,##0.00 "€"`,
    align: "center",
    alignDown: "middle",
    wrap: true,
  },
  { format: "yyyy-mm-dd" },
  { format: "@", align: "left", indent: true, alignDown: "top" },
  { format: "0.0%", align: "right", alignDown: "bottom" },
];

const whole: WorkbookSnapshot = {
  ...workbookOf("Job.xlsx", [
    {
      ...blankSheet("Door list & “more”"),
      rows: [
        [
          { value: "Mark", style: 1, note: "As on\nthe drawing" },
          { value: "Width", style: 3 },
        ],
        [{ value: "D1" }, null, { value: { kind: "date", serial: 46_210.5 }, style: 2 }],
        [],
        [
          { value: 42, formula: "=6*7", style: 4 },
          { value: "x", formula: `="x"` },
          { value: true, formula: "=1<2" },
          { value: { kind: "error", error: "#N/A" }, formula: "=NA()" },
          { value: "", formula: `=""` },
        ],
        [
          { value: 1, formula: "=SEQUENCE(2,2)", spill: { rows: 2, columns: 2 } },
          { value: 2 },
          { value: 4, formula: "=LET(wide,2,wide*2)" },
          { value: 7, formula: "=CRIB.PLATE(7,7)" },
          { value: false },
          { value: "=1+1" },
        ],
        [{ value: 3 }, { value: 4 }],
      ],
      columnWidths: [12, null, 7.5],
      rowHeights: [30, null, 12.75],
      frozenRows: 1,
      frozenColumns: 2,
      merges: [{ row: 7, column: 0, rows: 2, columns: 3 }],
      tables: [{ name: "Doors", headingRow: 0, lastRow: 1, firstColumn: 0, lastColumn: 1 }],
      choices: [
        { column: 1, firstRow: 1, lastRow: 9, list: ["a", `7'-0"`], othersToo: false },
        { column: 2, firstRow: 1, lastRow: 9, list: ["c"], othersToo: true },
        { column: 3, firstRow: 1, lastRow: 9, list: ["a, b", "x".repeat(300)], othersToo: true },
      ],
      print: {
        orientation: "landscape",
        titleRows: { first: 0, last: 1 },
        columns: { first: 0, last: 27 },
        fitToOnePageWide: true,
        breaksBefore: [3, 5],
        header: "Job A & B\t{date}\tHardware",
        footer: "\t{page} of {pages}\t{sheet} {file}",
      },
    },
    { ...blankSheet("Hidden"), visible: false, rows: [[{ value: 7 }]] },
    {
      ...blankSheet("Ours"),
      isProtected: true,
      mark: { kind: "hardware", subject: "Job A" },
      written: "0011223344556677",
    },
  ]),
  activeSheet: "Ours",
  styles,
  names: [{ name: "Widths", formula: "='Door list & “more”'!$B$2:$B$9" }],
  settings: { unit: "mm", "issues.1": "[1]", "issues.2": '["=A & <B>"]' },
};

/** Styles by what they are, not by number: a file numbers them anew. */
function plain({ styles: known, ...workbook }: WorkbookSnapshot): unknown {
  const styled = (cell: CellSnapshot | null): unknown =>
    cell === null ? null : { ...cell, style: known[cell.style ?? 0] ?? {} };
  return {
    ...workbook,
    sheets: workbook.sheets.map((sheet) => ({
      ...sheet,
      rows: sheet.rows.map((row) => row.map(styled)),
    })),
  };
}

describe("a snapshot written as a file", () => {
  test("comes back as it was, all of it", () => {
    const bytes = snapshotBytes(whole);
    expect(brokenLaws(bytes)).toEqual([]);
    expect(plain(fileWorkbookOf(bytes).snapshot())).toEqual(plain(whole));
  });

  test("keeps each long setting in a part of its own, and no two parts are of one number", () => {
    const parts = unzipSync(snapshotBytes(whole));
    const texts = Object.entries(parts)
      .filter(([path]) => /^customXml\/item\d+\.xml$/.test(path))
      .map(([, bytes]) => strFromU8(bytes));
    expect(texts).toHaveLength(3);
    expect(texts.filter((text) => text.includes("issues.2"))).toHaveLength(1);
    const numbers = Object.entries(parts)
      .filter(([path]) => path.startsWith("customXml/itemProps"))
      .map(([, bytes]) => /ds:itemID="(\{[-0-9A-F]{36}\})"/.exec(strFromU8(bytes))?.[1]);
    expect(new Set(numbers).size).toBe(3);
    expect(numbers).not.toContain(undefined);
  });

  test("is the same file each time", () => {
    expect(snapshotBytes(whole)).toEqual(snapshotBytes(whole));
  });

  test("comes back as it was, whatever its cells hold", () => {
    const text = fc.string({ unit: "binary", minLength: 1, maxLength: 20 });
    const value = fc.oneof(
      // XML has one line end; so do spreadsheets.
      text.map((each) => each.replace(/\r\n?/g, "\n")),
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((number) => number + 0),
      fc.boolean(),
    );
    const cell = fc.option(fc.record({ value, note: text }, { requiredKeys: ["value"] }));
    const rows = fc.array(fc.array(cell, { maxLength: 5 }), { maxLength: 6 });
    fc.assert(
      fc.property(rows, (made) => {
        const workbook = workbookOf("", [{ ...blankSheet("Any"), rows: made }]);
        const [sheet] = fileWorkbookOf(snapshotBytes(workbook)).snapshot().sheets;
        expect(trimmed(sheet?.rows ?? [])).toEqual(trimmed(made));
      }),
      { numRuns: 200 },
    );
  });

  test.each<[what: string, cell: CellSnapshot]>([
    ["no number", { value: NaN }],
    ["without end", { value: Infinity }],
  ])("refuses a cell that is %s", (_, cell) => {
    const workbook = workbookOf("", [{ ...blankSheet("Bad"), rows: [[cell]] }]);
    expect(() => snapshotBytes(workbook)).toThrow(RangeError);
  });

  test("needs a visible sheet", () => {
    expect(() => snapshotBytes(workbookOf("", [{ ...blankSheet("A"), visible: false }]))).toThrow(
      RangeError,
    );
  });

  test("cuts a text that no cell could hold, and says so with an ellipsis", () => {
    const workbook = workbookOf("", [
      { ...blankSheet("Long"), rows: [[{ value: "x".repeat(40_000) }]] },
    ]);
    const value = fileWorkbookOf(snapshotBytes(workbook)).snapshot().sheets[0]?.rows[0]?.[0]?.value;
    expect(value).toBe(`${"x".repeat(32_766)}…`);
  });

  test("leaves out a drop-down of nothing and a table without a row", () => {
    const workbook = workbookOf("", [
      {
        ...blankSheet("A"),
        rows: [[{ value: "Mark" }]],
        choices: [{ column: 0, firstRow: 1, lastRow: 2, list: [], othersToo: true }],
        tables: [{ name: "T", headingRow: 0, lastRow: 0, firstColumn: 0, lastColumn: 0 }],
      },
    ]);
    const bytes = snapshotBytes(workbook);
    expect(brokenLaws(bytes)).toEqual([]);
    expect(fileWorkbookOf(bytes).snapshot().sheets[0]).toMatchObject({ choices: [], tables: [] });
  });
});

/** Without cells that hold nothing at the ends of rows and of the sheet. */
function trimmed(rows: readonly (readonly (CellSnapshot | null)[])[]): unknown[] {
  const cut = rows.map((row) => row.slice(0, row.findLastIndex((cell) => cell !== null) + 1));
  return cut.slice(0, cut.findLastIndex((row) => row.length > 0) + 1);
}
