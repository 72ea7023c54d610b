import { afterAll, describe, expect, test } from "@jest/globals";
import { embeddedWorkbook } from "../../../src/adapters/embedded/embeddedWorkbook";
import { openGridWorkbook, startEngine } from "../../../src/adapters/embedded/engine";
import { blankSheet } from "../../../src/workbook/blankSheet";
import type { SheetSnapshot, WorkbookSnapshot } from "../../../src/workbook/snapshot";

const engine = startEngine();
afterAll(() => engine.univer.dispose());

const sheet = (name: string, more: Partial<SheetSnapshot>): SheetSnapshot => ({
  ...blankSheet(name),
  ...more,
});

const full: WorkbookSnapshot = {
  name: "Job A.xlsx",
  activeSheet: "Hardware",
  styles: [
    { size: 10, ink: "1F2328", bold: true, fill: "2F4F4A", align: "center", alignDown: "middle" },
    { format: "#,##0.00", italic: true, underline: true, strike: true, wrap: true },
    {
      font: "Georgia",
      size: 16,
      lineAbove: { weight: "medium", ink: "2F4F4A" },
      lineBelow: { weight: "thin", ink: "E3E6E4" },
      lineLeft: { weight: "thick", ink: "000000" },
      lineRight: { weight: "thin", ink: "FF0000" },
    },
    { format: "yyyy-mm-dd" },
    { format: "@", align: "left", indent: true },
  ],
  names: [
    { name: "Rate", formula: "=Schedule!$B$2" },
    { name: "Twice", formula: "=2*3" },
  ],
  settings: { unit: "mm" },
  leftOut: ["charts or pictures on “Schedule”"],
  sheets: [
    sheet("Schedule", {
      rows: [
        [
          { value: "Mark", style: 0 },
          { value: "Width", style: 0, note: "of the opening" },
          null,
          { value: { kind: "date", serial: 46210 }, style: 3 },
        ],
        [
          { value: "=1+1", style: 4 },
          { value: 84.5, style: 1 },
          { value: true },
          { value: null, style: 2 },
        ],
        [
          { value: "007" },
          { value: 42, formula: "=6*7" },
          null,
          { value: { kind: "error", error: "#N/A" } },
        ],
      ],
      columnWidths: [12, null, 30],
      rowHeights: [24, null, 15],
      frozenRows: 1,
      frozenColumns: 2,
      merges: [{ row: 4, column: 0, rows: 2, columns: 3 }],
      tables: [{ name: "Openings", headingRow: 0, lastRow: 2, firstColumn: 0, lastColumn: 1 }],
      choices: [
        { column: 2, firstRow: 1, lastRow: 9, list: ["left", "right, far"], othersToo: false },
        { column: 3, firstRow: 1, lastRow: 9, list: ["yes"], othersToo: true },
      ],
      isProtected: true,
    }),
    sheet("Hardware", {
      rows: [[{ value: "x" }]],
      mark: { kind: "hardware", subject: "Job A" },
      written: "0123456789abcdef",
      print: {
        orientation: "landscape",
        titleRows: { first: 0, last: 1 },
        columns: { first: 0, last: 2 },
        fitToOnePageWide: true,
        paper: "a4",
        margins: { top: 0.5, bottom: 0, left: 0.25, right: 0 },
        breaksBefore: [10],
        header: "Job A",
        footer: "{page}",
      },
      pictures: [
        {
          row: 3,
          column: 0,
          width: 100,
          height: 50,
          title: "Elevation of A-1",
          description: "A door.",
          marks: [
            {
              kind: "circle",
              stroke: "thin",
              group: "12-1",
              center: { x: 10, y: 10 },
              radius: 2,
            },
          ],
        },
      ],
      charts: [
        {
          row: 8,
          column: 1,
          width: 400,
          height: 200,
          title: "Margin and target",
          firstRow: 1,
          lastRow: 4,
          nameColumn: 0,
          valueColumns: [2, 3],
          headingRow: 0,
          format: "percent",
        },
      ],
    }),
    sheet("Secret", { visible: false }),
  ],
};

/** The same with styles in place of their numbers, which a host may count otherwise. */
const plain = (workbook: WorkbookSnapshot): object => ({
  ...workbook,
  styles: null,
  sheets: workbook.sheets.map((each) => ({
    ...each,
    rows: each.rows.map((cells) =>
      cells.map((cell) =>
        cell === null ? null : { ...cell, style: workbook.styles[cell.style ?? -1] ?? null },
      ),
    ),
  })),
});

describe("a workbook that goes through the grid", () => {
  test("comes back as it was", () => {
    expect(plain(embeddedWorkbook(engine, full).snapshot())).toEqual(plain(full));
  });

  test("comes back as it was the second time", () => {
    const once = embeddedWorkbook(engine, full).snapshot();
    expect(plain(embeddedWorkbook(engine, once).snapshot())).toEqual(plain(once));
  });

  test("works out formulas that had no result, names and tables among them", async () => {
    const workbook = embeddedWorkbook(engine, {
      ...full,
      sheets: [
        ...full.sheets,
        sheet("Calc", {
          rows: [
            [
              { value: null, formula: "=Rate*Twice" },
              { value: null, formula: "=SUM(Openings[Width])" },
              { value: 0, formula: "=SEQUENCE(2)", spill: { rows: 2, columns: 1 } },
            ],
            [null, null, { value: 2 }],
          ],
        }),
      ],
    });
    await workbook.calculated();
    const read = await workbook.read({ kind: "sheet", sheet: "Calc" });
    expect(read).toMatchObject({
      ok: true,
      value: {
        rows: [
          [507, 126.5, 1],
          [null, null, 2],
        ],
      },
    });
  });
});

test("a formula that was filled down is read in each of its cells", () => {
  const workbook = embeddedWorkbook(engine, { ...full, sheets: [sheet("Fill", { rows: [] })] });
  const filled = openGridWorkbook(engine).getSheets()[0]?.getCellMatrix();
  filled?.setValue(4, 2, { f: "=A5*$B$1", si: "one" });
  filled?.setValue(5, 2, { si: "one" });
  filled?.setValue(6, 3, { si: "one" });
  const [rows] = workbook.snapshot().sheets.map((each) => each.rows);
  expect([rows?.[4]?.[2], rows?.[5]?.[2], rows?.[6]?.[3]].map((cell) => cell?.formula)).toEqual([
    "=A5*$B$1",
    "=A6*$B$1",
    "=B7*$B$1",
  ]);
});
