/** Charts of the spreadsheet's own in a file: they point at their cells, and are replaced with their sheet. */
import { expect, test } from "@jest/globals";
import { strFromU8, unzipSync } from "fflate";
import { fileWorkbook } from "../../../src/adapters/xlsx/fileWorkbook";
import { snapshotParts } from "../../../src/adapters/xlsx/snapshotBytes";
import { number, row, text } from "../../../src/sheets/cells";
import type { DrawnChart, Drawing } from "../../../src/workbook/drawing";
import { drawnWorkbook } from "../../../src/workbook/drawnWorkbook";

const chart: DrawnChart = {
  row: 4,
  column: 0,
  width: 400,
  height: 200,
  title: "Margin & target",
  firstRow: 1,
  lastRow: 2,
  nameColumn: 0,
  valueColumns: [1],
  headingRow: 0,
  format: "percent",
};
const drawing = (charts: readonly DrawnChart[]): Drawing => ({
  name: "All margins",
  mark: { kind: "margins", subject: "" },
  columnWidths: [20, 10],
  rows: [
    row(text("Job"), text("Margin")),
    row(text("North <1>"), number(0.25, "percent")),
    row(text("South"), number(-0.125, "percent")),
  ],
  frozenRows: 1,
  frozenColumns: 0,
  tables: [],
  choices: [],
  charts,
  print: {
    orientation: "portrait",
    fitToOnePageWide: true,
    breaksBefore: [],
    header: "",
    footer: "",
  },
});

async function rewritten(before: readonly DrawnChart[], after: readonly DrawnChart[]) {
  const parts = snapshotParts(drawnWorkbook("m.xlsx", [drawing(before)]));
  const workbook = fileWorkbook(parts, "m.xlsx");
  const written = await workbook.write([drawing(after)]);
  if (!written.ok) throw new Error(written.error.message);
  return Object.fromEntries(
    Object.entries(unzipSync(workbook.bytes())).map(([path, part]) => [path, strFromU8(part)]),
  );
}
const chartsOf = (parts: Readonly<Record<string, string>>): readonly string[] =>
  Object.keys(parts).filter((path) => path.startsWith("xl/charts/chart"));

test("a chart names its cells on its sheet and holds what they show now", async () => {
  const parts = await rewritten([], [chart]);
  const [path = ""] = chartsOf(parts);
  const xml = parts[path] ?? "";
  expect(xml).toContain("<c:f>'All margins'!$A$2:$A$3</c:f>");
  expect(xml).toContain("<c:f>'All margins'!$B$2:$B$3</c:f>");
  expect(xml).toContain("<c:f>'All margins'!$B$1</c:f>");
  expect(xml).toContain("<c:v>North &lt;1&gt;</c:v>");
  expect(xml).toContain("<c:v>-0.125</c:v>");
  expect(xml).toContain("<a:t>Margin &amp; target</a:t>");
  expect(parts["[Content_Types].xml"]).toContain(`PartName="/${path}"`);
  const drawn = Object.entries(parts).find(([name]) => /drawings\/drawing\d+\.xml$/.test(name));
  expect(drawn?.[1]).toContain('name="Cribsheet chart 1"');
});

test("bars start at zero unless one goes below it", async () => {
  const least = async (lastRow: number): Promise<boolean> => {
    const parts = await rewritten([], [{ ...chart, lastRow }]);
    return (parts[chartsOf(parts)[0] ?? ""] ?? "").includes('<c:min val="0"/>');
  };
  expect([await least(1), await least(2)]).toEqual([true, false]);
});

test("writing again leaves one chart, and writing without one leaves none", async () => {
  const again = await rewritten([chart], [chart]);
  expect(chartsOf(again)).toHaveLength(1);
  const none = await rewritten([chart], []);
  expect(chartsOf(none)).toEqual([]);
  expect(Object.values(none).some((xml) => xml.includes("Cribsheet chart"))).toBe(false);
  expect(none["[Content_Types].xml"]).not.toContain("/xl/charts/");
});

test("a chart comes back from the file as it was drawn, and is not told as left out", () => {
  const parts = snapshotParts(drawnWorkbook("m.xlsx", [drawing([chart])]));
  const back = fileWorkbook(parts, "m.xlsx").snapshot();
  expect(back.sheets[0]?.charts).toEqual([chart]);
  expect(back.leftOut).toEqual([]);
});

const changedParts = (change: (xml: string, path: string) => string) => {
  const parts = new Map(snapshotParts(drawnWorkbook("m.xlsx", [drawing([chart])])));
  for (const [path, part] of parts) {
    if (path.startsWith("xl/charts/") || path.startsWith("xl/drawings/")) {
      parts.set(path, new TextEncoder().encode(change(strFromU8(part), path)));
    }
  }
  return parts;
};

test("a chart that a spreadsheet saved in its own way is read too", () => {
  const to = `<xdr:to><xdr:col>2</xdr:col><xdr:colOff>127000</xdr:colOff><xdr:row>6</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to>`;
  const parts = changedParts((xml) =>
    xml
      .replaceAll("oneCellAnchor", "twoCellAnchor")
      .replace(/<xdr:ext cx="\d+" cy="\d+"\/>/, to)
      .replace(/<c:tx><c:strRef>.*?<\/c:strRef><\/c:tx>/, "<c:tx><c:v>Margin</c:v></c:tx>"),
  );
  const back = fileWorkbook(parts, "m.xlsx").snapshot();
  // Columns of 20 and 10 characters, ten points more, and two rows.
  const size = { width: 108.75 + 56.25 + 10, height: 30 };
  expect(back.sheets[0]?.charts).toEqual([{ ...chart, ...size }]);
});

test.each<readonly [string, (xml: string) => string]>([
  ["is of another kind now", (xml) => xml.replaceAll("barChart", "pieChart")],
  ["shows cells of another sheet", (xml) => xml.replaceAll("'All margins'!", "Plan!")],
  ["names cells that no sheet has", (xml) => xml.replaceAll("$B$3", "$XFZ$9999999")],
  ["is broken", (xml) => (xml.includes("chartSpace") ? xml.slice(0, 300) : xml)],
  ["is nowhere", (xml) => xml.replaceAll(/r:id="[^"]*"/g, 'r:id="none"')],
])("a chart that %s is told as left out, and the file opens", (_, change) => {
  const back = fileWorkbook(changedParts(change), "m.xlsx").snapshot();
  expect(back.sheets[0]?.charts).toBeUndefined();
  expect(back.leftOut).toEqual(["charts or pictures on “All margins”"]);
});
