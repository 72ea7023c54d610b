import { describe, expect, test } from "@jest/globals";
import type { DrawnCell, Drawing } from "../../src/workbook/drawing";
import { drawnSheet, styleTable } from "../../src/workbook/drawnSheet";
import { drawing } from "./drawings";

const withCells = (cells: readonly (DrawnCell | null)[]): Drawing =>
  drawing("Hardware", { kind: "hardware", subject: "J1" }, [cells], {
    columnWidths: [10],
    rows: [{ cells, height: 20 }],
    frozenRows: 1,
  });

describe("a drawing becomes a sheet", () => {
  const table = styleTable();
  const sheet = drawnSheet(
    withCells([
      { kind: "text", text: "=1+1", look: "body" },
      { kind: "number", number: 3, look: "body", format: "count", note: "why" },
      null,
      { kind: "formula", formula: "=B1*2", result: 6, look: "total", span: 2 },
      { kind: "text", text: "x", look: "body" },
    ]),
    "Hardware (2)",
    table,
  );

  test("under the name it was given, with its mark, print and frozen rows", () => {
    expect(sheet).toMatchObject({
      name: "Hardware (2)",
      mark: { kind: "hardware", subject: "J1" },
      rowHeights: [20],
      frozenRows: 1,
    });
  });

  test("text keeps the text format, so that it cannot become a formula", () => {
    const cell = sheet.rows[0]?.[0];
    expect(cell?.value).toBe("=1+1");
    expect(cell?.formula).toBeUndefined();
    expect(table.styles[cell?.style ?? -1]?.format).toBe("@");
  });

  test("a formula keeps its result beside it, and a span becomes a merge", () => {
    expect(sheet.rows[0]?.[3]).toMatchObject({ value: 6, formula: "=B1*2" });
    expect(sheet.merges).toEqual([{ row: 0, column: 3, rows: 1, columns: 3 }]);
  });

  test("cells dressed alike share one style", () => {
    expect(sheet.rows[0]?.[4]?.style).toBe(sheet.rows[0]?.[0]?.style);
    expect(table.styles).toHaveLength(3);
  });
});

test("words right behind a number are set in, so that the two are not read as one", () => {
  const table = styleTable();
  const words: DrawnCell = { look: "body", kind: "text", text: "in packs" };
  const seven: DrawnCell = { look: "body", kind: "number", number: 7 };
  const middle: DrawnCell = { ...words, align: "center" };
  const { rows } = drawnSheet(withCells([words, seven, words, seven, middle]), "List", table);
  const styles = rows[0]?.map((cell) => table.styles[cell?.style ?? -1]);
  expect(styles?.map((style) => style?.indent ?? false)).toEqual([
    false,
    false,
    true,
    false,
    false,
  ]);
  expect(styles?.[2]?.align).toBe("left");
});
