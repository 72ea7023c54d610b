/**
 * Our own charts read back from a file, so that they go on with the sheet into another host. Only
 * what we make is read, be it as we write it or as a spreadsheet saved it; one that a person made
 * something else of is not ours to understand.
 */
import { sheetReference } from "../../core/base/cell";
import { columnPoints } from "../../workbook/columnSize";
import type { DrawnChart, NumberFormat } from "../../workbook/drawing";
import { numberFormatCodes } from "../../workbook/looks";
import { readRange } from "./cellRange";
import { unitsPerPoint } from "./drawnPictures";
import { partText, type Parts } from "./parts";
import { relationshipsOf } from "./relationships";
import { childNamed, childrenNamed, parseXml, type XmlElement } from "./xml";

/** What has to be known of the sheet that the chart lies on. */
export type SheetSizes = {
  readonly name: string;
  /** Characters, and points; `null` where it has no size of its own. */
  readonly columnWidths: readonly (number | null)[];
  readonly rowHeights: readonly (number | null)[];
};

/** The chart in an anchor of the drawing at `drawing`; `null` when it is not one that we know. */
export function readChart(
  parts: Parts,
  drawing: string,
  anchor: XmlElement,
  sheet: SheetSizes,
): DrawnChart | null {
  const id = linkIn(anchor);
  const link = relationshipsOf(parts, drawing).find((each) => each.id === id);
  const source = link === undefined ? null : partText(parts, link.target);
  const from = childNamed(anchor, "from");
  if (source === null || from === undefined) return null;
  const chart = childNamed(parseXml(source), "chart");
  const bars = childNamed(childNamed(chart, "plotArea"), "barChart");
  const series = childrenNamed(bars, "ser").map((each) => readSeries(each, sheet.name));
  const [first] = series;
  if (first === undefined || first === null) return null;
  const isOne = series.every(
    (each) =>
      each !== null &&
      each.nameColumn === first.nameColumn &&
      each.firstRow === first.firstRow &&
      each.lastRow === first.lastRow,
  );
  if (!isOne) return null;
  return {
    row: numberIn(from, "row"),
    column: numberIn(from, "col"),
    ...sizeOf(anchor, sheet),
    title: textIn(childNamed(chart, "title")),
    firstRow: first.firstRow,
    lastRow: first.lastRow,
    nameColumn: first.nameColumn,
    valueColumns: series.flatMap((each) => (each === null ? [] : [each.column])),
    headingRow: first.headingRow,
    format: first.format,
  };
}

type Series = Pick<DrawnChart, "firstRow" | "lastRow" | "nameColumn" | "headingRow" | "format"> & {
  readonly column: number;
};

function readSeries(series: XmlElement, sheet: string): Series | null {
  const numbers = childNamed(childNamed(series, "val"), "numRef");
  const names = childNamed(series, "cat");
  const values = rangeOn(sheet, formulaIn(numbers));
  const words = rangeOn(
    sheet,
    formulaIn(childNamed(names, "strRef") ?? childNamed(names, "numRef")),
  );
  if (values === null || words === null || values.columns > 1) return null;
  const heading = rangeOn(sheet, formulaIn(childNamed(childNamed(series, "tx"), "strRef")));
  return {
    firstRow: values.row,
    lastRow: values.row + values.rows - 1,
    column: values.column,
    nameColumn: words.column,
    // Where the words are no reference, they stand right above the numbers.
    headingRow: heading?.row ?? Math.max(0, values.row - 1),
    format: formatOf(childNamed(childNamed(numbers, "numCache"), "formatCode")?.text),
  };
}

const formulaIn = (reference: XmlElement | undefined): string =>
  childNamed(reference, "f")?.text.trim() ?? "";

/** The cells that a reference names, if it names some of this sheet. */
function rangeOn(sheet: string, formula: string): ReturnType<typeof readRange> | null {
  const [, of = "", cells = ""] =
    /^(.*)!(\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?)$/.exec(formula) ?? [];
  const isHere = of === sheet || of.toLowerCase() === sheetReference(sheet).toLowerCase();
  return isHere ? readRange(cells) : null;
}

const formatOf = (code = ""): NumberFormat =>
  (Object.keys(numberFormatCodes) as NumberFormat[]).find(
    (name) => numberFormatCodes[name] === code,
  ) ?? "general";

const linkIn = (element: XmlElement): string | undefined => {
  if (element.name === "chart") return element.attributes["id"];
  for (const child of element.children) {
    const found = linkIn(child);
    if (found !== undefined) return found;
  }
  return undefined;
};

const textIn = (element: XmlElement | undefined): string =>
  element === undefined
    ? ""
    : [
        element.name === "t" ? element.text : "",
        ...element.children.map((child) => textIn(child)),
      ].join("");

const numberIn = (element: XmlElement | undefined, name: string): number =>
  Number(childNamed(element, name)?.text ?? 0) || 0;

/** Points of a column and of a row without a size of their own. */
const usualWidth = 48;
const usualHeight = 15;

/** As the anchor says it; where it names two corners, what lies between these. */
function sizeOf(
  anchor: XmlElement,
  { columnWidths, rowHeights }: SheetSizes,
): Pick<DrawnChart, "width" | "height"> {
  const { cx, cy } = childNamed(anchor, "ext")?.attributes ?? {};
  if (cx !== undefined && cy !== undefined) {
    return { width: points(Number(cx)), height: points(Number(cy)) };
  }
  const across = (column: number): number => {
    const characters = columnWidths[column] ?? null;
    return characters === null ? usualWidth : columnPoints(characters);
  };
  const down = (row: number): number => rowHeights[row] ?? usualHeight;
  return {
    width: between(anchor, "col", across),
    height: between(anchor, "row", down),
  };
}

function between(anchor: XmlElement, name: "col" | "row", sizeAt: (index: number) => number) {
  const [from, to] = [childNamed(anchor, "from"), childNamed(anchor, "to")];
  let size = points(numberIn(to, `${name}Off`) - numberIn(from, `${name}Off`));
  const last = Math.min(numberIn(to, name), numberIn(from, name) + 2000);
  for (let index = numberIn(from, name); index < last; index++) size += sizeAt(index);
  return Math.max(1, Math.round(size * 100) / 100);
}

const points = (units: number): number => Math.round((units / unitsPerPoint) * 100) / 100;
