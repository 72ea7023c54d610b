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
