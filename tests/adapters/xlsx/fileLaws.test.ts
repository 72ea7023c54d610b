import { beforeAll, describe, expect, test } from "@jest/globals";
import { snapshotBytes } from "../../../src/adapters/xlsx/snapshotBytes";
import { blankSheet, workbookOf } from "../../../src/workbook/blankSheet";
import { brokenLaws } from "./fileLaws";
import { editPart } from "./personTypes";

describe("the laws that files are checked by", () => {
  let sound: Uint8Array;
  beforeAll(() => {
    const sheet = {
      ...blankSheet("One"),
      rows: [
        [{ value: "a" }, { value: "b" }],
        [{ value: 1 }, { value: 2, note: "so" }],
      ],
      tables: [{ name: "T", headingRow: 0, lastRow: 1, firstColumn: 0, lastColumn: 1 }],
      merges: [{ row: 4, column: 0, rows: 1, columns: 2 }],
    };
    sound = snapshotBytes(workbookOf("", [sheet, blankSheet("Two")]));
  });

  test("find nothing in a sound file", () => {
    expect(brokenLaws(sound)).toEqual([]);
  });

  const sheet = "xl/worksheets/sheet1.xml";
  const breaches: [what: string, path: string, from: string, to: string][] = [
    ["elements out of order", sheet, "<sheetData>", "<mergeCells/><sheetData>"],
    ["cells out of order", sheet, `r="B1"`, `r="A1"`],
    ["rows out of order", sheet, `<row r="2"`, `<row r="1"`],
    ["a style that is not there", sheet, `<c r="A1"`, `<c s="9" r="A1"`],
    ["a wrong count", sheet, `<mergeCells count="1"`, `<mergeCells count="2"`],
    ["an unknown relationship", sheet, `r:id="rIdCrib1"`, `r:id="rId9"`],
    ["two sheets of one name", "xl/workbook.xml", `name="Two"`, `name="ONE"`],
    ["a position without a sheet", "xl/workbook.xml", `activeTab="0"`, `activeTab="2"`],
    ["a part of no known kind", "[Content_Types].xml", `Extension="vml"`, `Extension="vmx"`],
    ["a relationship to nowhere", "xl/_rels/workbook.xml.rels", "styles.xml", "style.xml"],
    ["a table with a wrong column", "xl/tables/table1.xml", `name="b"`, `name="A"`],
  ];
  test.each(breaches)("find %s", (_, path, from, to) => {
    const broken = editPart(sound, path, (text) => {
      expect(text).toContain(from);
      return text.replace(from, to);
    });
    expect(brokenLaws(broken)).not.toEqual([]);
  });
});
