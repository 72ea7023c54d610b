/** A workbook full of what we do not write: made by another library, for tests of what stays. */
import { strToU8, unzipSync, zipSync } from "fflate";
import { writeXlsx } from "hucre/xlsx";

/** A picture of one dot. */
const dot = Uint8Array.from(
  atob(
    "iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNkYPhfDwAChwGA60e6kgAAAABJRU5ErkJggg==",
  ),
  (letter) => letter.charCodeAt(0),
);

/** Sheets Schedule (table, rules, notes), Plan (chart, picture, formats), Secret (hidden), macros. */
export async function richFile(): Promise<Uint8Array> {
  const bytes = await writeXlsx({
    sheets: [
      {
        name: "Schedule",
        rows: [
          ["Mark", "Width", "When"],
          ["D1", 84, new Date("2026-07-31T00:00:00Z")],
          ["D2", "7-0", new Date("2026-08-01T00:00:00Z")],
        ],
        columns: [{ width: 12 }, { width: 9 }, { width: 14, numFmt: "yyyy-mm-dd" }],
        cells: new Map([
          ["0,0", { comment: { author: "Foreman", text: "As on drawing A1" } }],
          ["4,1", { formula: "SUM(B2:B3)", formulaResult: 84 }],
        ]),
        tables: [
          {
            name: "Doors",
            range: "A1:C3",
            columns: [{ name: "Mark" }, { name: "Width" }, { name: "When" }],
          },
        ],
        dataValidations: [{ type: "list", values: ["a", "b"], range: "A5:A9" }],
        freezePane: { rows: 1 },
      },
      {
        name: "Plan",
        rows: [
          ["Month", "Doors"],
          ["Jan", 3],
          ["Feb", 5],
        ],
        charts: [
          {
            type: "column",
            title: "Doors",
            series: [{ name: "Doors", categories: "Plan!$A$2:$A$3", values: "Plan!$B$2:$B$3" }],
            anchor: { from: { row: 5, col: 0 }, to: { row: 15, col: 6 } },
          },
        ],
        images: [{ data: dot, type: "png", anchor: { from: { row: 1, col: 8 } } }],
        conditionalRules: [
          {
            type: "cellIs",
            operator: "greaterThan",
            formula: "4",
            range: "B2:B3",
            priority: 1,
            style: { font: { bold: true } },
          },
        ],
      },
      { name: "Secret", rows: [[7]], hidden: true },
    ],
    namedRanges: [{ name: "Widths", range: "Schedule!$B$2:$B$3" }],
    vbaProject: strToU8("macros are kept as they are"),
  });
  return withExcelsOwn(bytes);
}

/** What Excel adds by itself: marks of its version, and the order of calculation in a part of its own. */
function withExcelsOwn(bytes: Uint8Array): Uint8Array {
  const files = unzipSync(bytes);
  const put = (path: string, from: string, text: string): void => {
    const there = new TextDecoder().decode(files[path]);
    if (!there.includes(from)) throw new Error(`${path} has no ${from}`);
    files[path] = strToU8(there.replace(from, text + from));
  };
  files["xl/calcChain.xml"] = strToU8(
    `<calcChain xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><c r="B5" i="1"/></calcChain>`,
  );
  put(
    "[Content_Types].xml",
    "</Types>",
    `<Override PartName="/xl/calcChain.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.calcChain+xml"/>`,
  );
  put(
    "xl/_rels/workbook.xml.rels",
    "</Relationships>",
    `<Relationship Id="rId900" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/calcChain" Target="calcChain.xml"/>`,
  );
  put(
    "xl/workbook.xml",
    "<bookViews",
    `<fileVersion appName="xl" lastEdited="7"/><workbookPr defaultThemeVersion="166925"/><mc:AlternateContent xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006"><mc:Choice Requires="x15"><x15ac:absPath url="jobs" xmlns:x15ac="http://schemas.microsoft.com/office/spreadsheetml/2010/11/ac"/></mc:Choice></mc:AlternateContent><xr:revisionPtr revIDLastSave="0" documentId="8_{0}" xmlns:xr="http://schemas.microsoft.com/office/spreadsheetml/2014/revision"/>`,
  );
  return zipSync(files);
}
