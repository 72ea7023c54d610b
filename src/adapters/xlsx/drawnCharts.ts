/**
 * Our charts on a sheet: bars by name (DrawingML charts, ECMA-376 part 1, chapter 21), which the
 * spreadsheet draws from the cells and draws anew when they change. Each has a name of ours, so that
 * it is known again and replaced; charts that a person put beside it stay.
 */
import { cellText, columnName, sheetReference } from "../../core/base/cell";
import { chartFill, chartFills, chartName, startsAtZero } from "../../workbook/chartLooks";
import type { DrawnChart } from "../../workbook/drawing";
import { numberFormatCodes } from "../../workbook/looks";
import type { SheetSnapshot } from "../../workbook/snapshot";
import { emptyDrawing, highestId, nameIn, namespaces, units } from "./drawnPictures";
import { encode, neededText } from "./parts";
import {
  addRelationship,
  freePath,
  relationshipsOf,
  removePart,
  removeRelationships,
  setContentType,
  xmlStart,
} from "./relationships";
import { append, escapeXml, parseXml, splice, type XmlElement } from "./xml";

const chartNamespace = "http://schemas.openxmlformats.org/drawingml/2006/chart";
const relationNamespace = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";

const at = (row: number, column: number): string => `$${columnName(column)}$${row + 1}`;

/**
 * Puts the sheet's charts in place of those that were ours. `drawing` is the id of the sheet's
 * drawing, where it has one; the answer is the id it has now.
 */
export function putCharts(
  parts: Map<string, Uint8Array>,
  path: string,
  drawing: string | null,
  sheet: SheetSnapshot,
): string | null {
  const charts = sheet.charts ?? [];
  const old = relationshipsOf(parts, path).find(({ id }) => id === drawing);
  if (old === undefined && charts.length === 0) return null;
  const target = old?.target ?? freePath(parts, "xl/drawings/drawing", ".xml");
  const source = old === undefined ? emptyDrawing : neededText(parts, target);
  if (charts.length === 0 && !source.includes(chartName)) return drawing;
  const root = parseXml(source);
  const ours = root.children.filter((anchor) => nameIn(anchor)?.startsWith(chartName) === true);
  removeCharts(parts, target, new Set(ours.flatMap(chartIds)));
  const first = highestId(root) + 1;
  const added = charts.map((chart, index) => {
    const chartPath = freePath(parts, "xl/charts/chart", ".xml");
    parts.set(chartPath, encode(chartXml(chart, sheet)));
    setContentType(
      parts,
      chartPath,
      "application/vnd.openxmlformats-officedocument.drawingml.chart+xml",
    );
    const link = addRelationship(parts, target, "chart", chartPath);
    return anchorXml(chart, { id: first + index, name: `${chartName}${index + 1}`, link });
  });
  const gone = ours.map(({ start, end }) => ({ start, end, text: "" }));
  parts.set(target, encode(splice(source, [...gone, append(source, root, added.join(""))])));
  if (old !== undefined) return old.id;
  setContentType(parts, target, "application/vnd.openxmlformats-officedocument.drawing+xml");
  return addRelationship(parts, path, "drawing", target);
}

/** The relationships of the charts in an anchor. */
const chartIds = (element: XmlElement): readonly string[] => [
  ...(element.name === "chart" ? [element.attributes["id"] ?? ""] : []),
  ...element.children.flatMap(chartIds),
];

function removeCharts(
  parts: Map<string, Uint8Array>,
  drawing: string,
  ids: ReadonlySet<string>,
): void {
  for (const { id, target } of relationshipsOf(parts, drawing)) {
    if (ids.has(id)) removePart(parts, target);
  }
  removeRelationships(parts, drawing, ({ id }) => ids.has(id));
}

function anchorXml(
  { row, column, width, height, title }: DrawnChart,
  { id, name, link }: { readonly id: number; readonly name: string; readonly link: string },
): string {
  return [
    `<xdr:oneCellAnchor ${namespaces}>`,
    `<xdr:from><xdr:col>${column}</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from>`,
    `<xdr:ext cx="${units(width)}" cy="${units(height)}"/>`,
    `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="${id}" name="${name}" descr="${escapeXml(title)}"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr>`,
    `<xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm>`,
    `<a:graphic><a:graphicData uri="${chartNamespace}"><c:chart xmlns:c="${chartNamespace}" xmlns:r="${relationNamespace}" r:id="${link}"/></a:graphicData></a:graphic>`,
    `</xdr:graphicFrame><xdr:clientData/></xdr:oneCellAnchor>`,
  ].join("");
}

function chartXml(chart: DrawnChart, { name, rows }: SheetSnapshot): string {
  const { firstRow, lastRow, nameColumn, valueColumns, headingRow, title, format } = chart;
  const code = escapeXml(numberFormatCodes[format]);
  const down = (column: number): string =>
    escapeXml(`${sheetReference(name)}!${at(firstRow, column)}:${at(lastRow, column)}`);
  const shown = (row: number, column: number): string =>
    escapeXml(cellText(rows[row]?.[column]?.value ?? null));
  const points = (column: number): string =>
    Array.from(
      { length: lastRow - firstRow + 1 },
      (_, index) => `<c:pt idx="${index}"><c:v>${shown(firstRow + index, column)}</c:v></c:pt>`,
    ).join("");
  const count = `<c:ptCount val="${lastRow - firstRow + 1}"/>`;
  const series = valueColumns.map((column, index) =>
    [
      `<c:ser><c:idx val="${index}"/><c:order val="${index}"/>`,
      `<c:tx><c:strRef><c:f>${escapeXml(`${sheetReference(name)}!${at(headingRow, column)}`)}</c:f><c:strCache><c:ptCount val="1"/><c:pt idx="0"><c:v>${shown(headingRow, column)}</c:v></c:pt></c:strCache></c:strRef></c:tx>`,
      `<c:spPr><a:solidFill><a:srgbClr val="${chartFill(index)}"/></a:solidFill><a:ln w="6350"><a:solidFill><a:srgbClr val="${chartFills[0]}"/></a:solidFill></a:ln></c:spPr>`,
      `<c:invertIfNegative val="0"/>`,
      `<c:cat><c:strRef><c:f>${down(nameColumn)}</c:f><c:strCache>${count}${points(nameColumn)}</c:strCache></c:strRef></c:cat>`,
      `<c:val><c:numRef><c:f>${down(column)}</c:f><c:numCache><c:formatCode>${code}</c:formatCode>${count}${points(column)}</c:numCache></c:numRef></c:val></c:ser>`,
    ].join(""),
  );
  return [
    `${xmlStart}<c:chartSpace xmlns:c="${chartNamespace}" xmlns:a="http://schemas.openxmlformats.org/drawingml/2006/main" xmlns:r="${relationNamespace}"><c:roundedCorners val="0"/><c:chart>`,
    `<c:title><c:tx><c:rich><a:bodyPr/><a:p><a:r><a:rPr lang="en-US" sz="1200"/><a:t>${escapeXml(title)}</a:t></a:r></a:p></c:rich></c:tx><c:overlay val="0"/></c:title>`,
    `<c:autoTitleDeleted val="0"/><c:plotArea><c:layout/>`,
    `<c:barChart><c:barDir val="bar"/><c:grouping val="clustered"/><c:varyColors val="0"/>${series.join("")}<c:gapWidth val="60"/><c:axId val="1"/><c:axId val="2"/></c:barChart>`,
    // The first name stands on top, as it does on the sheet.
    `<c:catAx><c:axId val="1"/><c:scaling><c:orientation val="maxMin"/></c:scaling><c:delete val="0"/><c:axPos val="l"/><c:numFmt formatCode="General" sourceLinked="0"/><c:majorTickMark val="none"/><c:minorTickMark val="none"/><c:tickLblPos val="low"/><c:crossAx val="2"/><c:crosses val="autoZero"/></c:catAx>`,
    `<c:valAx><c:axId val="2"/><c:scaling><c:orientation val="minMax"/>${startsAtZero(chart, rows) ? `<c:min val="0"/>` : ""}</c:scaling><c:delete val="0"/><c:axPos val="b"/><c:majorGridlines/><c:numFmt formatCode="${code}" sourceLinked="0"/><c:majorTickMark val="out"/><c:minorTickMark val="none"/><c:tickLblPos val="nextTo"/><c:crossAx val="1"/><c:crosses val="max"/></c:valAx>`,
    `</c:plotArea><c:legend><c:legendPos val="b"/><c:overlay val="0"/></c:legend><c:plotVisOnly val="1"/><c:dispBlanksAs val="gap"/></c:chart></c:chartSpace>`,
  ].join("");
}
