/** One worksheet as a snapshot, and what of it a snapshot cannot hold. */
import { columnIndex } from "../../core/base/cell";
import type { DrawnTable, PrintSetup } from "../../workbook/drawing";
import { printTextOf } from "../../workbook/printText";
import type { SheetStamp } from "../../workbook/sheetStamp";
import type { Merge, SheetSnapshot } from "../../workbook/snapshot";
import { readRange } from "./cellRange";
import { readChoices, type LinkedChoice } from "./readChoices";
import { readCells, type CellContext } from "./readCells";
import { readNotes } from "./notes";
import { neededText, type Parts } from "./parts";
import { readPaper } from "./paper";
import { readDrawing } from "./readDrawing";
import { relationshipsOf, type Relationship } from "./relationships";
import { readTable } from "./tables";
import type { SheetEntry } from "./workbookPart";
import { childNamed, childrenNamed, isOn, parseXml, type XmlElement } from "./xml";

export type ReadSheet = {
  /** With the drop-downs whose lists are written out. */
  readonly sheet: SheetSnapshot;
  readonly linkedChoices: readonly LinkedChoice[];
  /** In plain words, such as `2 charts or pictures on “Plan”`. */
  readonly leftOut: readonly string[];
};

/** What is known of a sheet from outside its part. */
export type SheetAround = {
  readonly stamp: SheetStamp | null;
  /** The formula of its print titles, or the empty text. */
  readonly printTitles: string;
  /** The formula of what is printed of it, or the empty text. */
  readonly printArea: string;
};

/** Reads the worksheet at its path. @throws DamagedFile */
export function readSheet(
  parts: Parts,
  entry: SheetEntry,
  { stamp, ...printed }: SheetAround,
  context: CellContext,
): ReadSheet {
  const { before, sheetData, after } = cutSheet(neededText(parts, entry.path));
  const root = parseXml(before + after);
  const { rows, rowHeights, hasHiddenRows } = readCells(sheetData, context);
  const linked = relationshipsOf(parts, entry.path).filter(({ isExternal }) => !isExternal);
  const notes = linked
    .filter(({ type }) => type === "comments")
    .flatMap(({ target }) => readNotes(parts, target));
  const { choices, linkedChoices, others } = readChoices(root);
  const columns = childrenNamed(childNamed(root, "cols"), "col");
  const sizes = { name: entry.name, columnWidths: columnWidths(columns), rowHeights };
  const drawn = linked
    .filter(({ type }) => type === "drawing")
    .map(({ target }) => readDrawing(parts, target, sizes));
  const pictures = drawn.flatMap((each) => each.pictures);
  const charts = drawn.flatMap((each) => each.charts);
  return {
    sheet: {
      name: entry.name,
      visible: entry.isVisible,
      isProtected: isOn(childNamed(root, "sheetProtection")?.attributes["sheet"]),
      mark: stamp?.mark ?? null,
      written: stamp?.written ?? null,
      rows: withNotes(rows, notes),
      columnWidths: sizes.columnWidths,
      rowHeights,
      ...frozenPanes(root),
      merges: readMerges(root),
      tables: tablesOf(parts, linked),
      choices,
      ...(pictures.length === 0 ? {} : { pictures }),
      ...(charts.length === 0 ? {} : { charts }),
      print: readPrint(root, printed),
    },
    linkedChoices,
    leftOut: [
      ...leftOutOf(root, linked, drawn.filter((each) => each.others > 0).length),
      ...(hasHiddenRows || columns.some(({ attributes }) => isOn(attributes["hidden"]))
        ? ["hidden rows or columns"]
        : []),
      ...(others > 0 ? ["rules for what may be typed"] : []),
    ].map((what) => `${what} on “${entry.name}”`),
  };
}

/** The part in three pieces, so that the cells, which are nearly all of it, are read in one pass. */
export function cutSheet(source: string): {
  readonly before: string;
  readonly sheetData: string;
  readonly after: string;
} {
  const start = source.search(/<(?:[\w.-]+:)?sheetData[\s/>]/);
  const end = /<\/(?:[\w.-]+:)?sheetData\s*>(?![\s\S]*<\/(?:[\w.-]+:)?sheetData\s*>)/.exec(
    start < 0 ? "" : source.slice(start),
  );
  if (start < 0 || end === null) return { before: source, sheetData: "", after: "" };
  const stop = start + end.index + end[0].length;
  return {
    before: source.slice(0, start),
    sheetData: source.slice(start, stop),
    after: source.slice(stop),
  };
}

/** The tables that belong to the sheet with these relationships. */
export const tablesOf = (parts: Parts, linked: readonly Relationship[]): readonly DrawnTable[] =>
  linked.filter(({ type }) => type === "table").map(({ target }) => readTable(parts, target));

const readMerges = (root: XmlElement): readonly Merge[] =>
  childrenNamed(childNamed(root, "mergeCells"), "mergeCell").map(({ attributes }) =>
    readRange(attributes["ref"] ?? ""),
  );

function withNotes(
  rows: SheetSnapshot["rows"],
  notes: ReturnType<typeof readNotes>,
): SheetSnapshot["rows"] {
  if (notes.length === 0) return rows;
  const noted = rows.map((cells) => [...cells]);
  for (const { row, column, text } of notes) {
    while (noted.length <= row) noted.push([]);
    const cells = noted[row] ?? [];
    while (cells.length <= column) cells.push(null);
    cells[column] = { ...(cells[column] ?? { value: null }), note: text };
  }
  return noted;
}

/** A column of a file is wider than its characters by the room at both sides of them. */
export const columnPadding = 0.7109375;

/** A width may be said for all columns to the last; beyond the hundredth of one run none is kept. */
function columnWidths(columns: readonly XmlElement[]): readonly (number | null)[] {
  const widths: (number | null)[] = [];
  for (const { attributes } of columns) {
    const { min = "1", max = "1", width } = attributes;
    const first = Number(min) - 1;
    const last = Math.min(Number(max), first + 100);
    if (width === undefined || first > 1000) continue;
    for (let column = first; column < last; column++) {
      while (widths.length < column) widths.push(null);
      widths[column] = Math.max(0, Math.round((Number(width) - columnPadding) * 100) / 100);
    }
  }
  return widths;
}

function frozenPanes(root: XmlElement): Pick<SheetSnapshot, "frozenRows" | "frozenColumns"> {
  const view = childNamed(childNamed(root, "sheetViews"), "sheetView");
  const { state, xSplit = "0", ySplit = "0" } = childNamed(view, "pane")?.attributes ?? {};
  if (state !== "frozen" && state !== "frozenSplit") return { frozenRows: 0, frozenColumns: 0 };
  return { frozenRows: Number(ySplit), frozenColumns: Number(xSplit) };
}

function readPrint(
  root: XmlElement,
  { printTitles, printArea }: Omit<SheetAround, "stamp">,
): PrintSetup | null {
  const page = childNamed(root, "pageSetup");
  const texts = childNamed(root, "headerFooter");
  const rows = /\$(\d+):\$(\d+)(?=,|$)/.exec(printTitles);
  // Whole columns; some programs write them with their first and last rows.
  const columns = /!\$([A-Z]+)(?:\$1)?:\$([A-Z]+)(?:\$1048576)?$/.exec(printArea);
  const isSet = [page, texts].some((each) => each !== undefined);
  if (!isSet && rows === null && columns === null) return null;
  const { orientation, fitToWidth = "1", fitToHeight = "1" } = page?.attributes ?? {};
  const isFitted = isOn(
    childNamed(childNamed(root, "sheetPr"), "pageSetUpPr")?.attributes["fitToPage"],
  );
  return {
    orientation: orientation === "landscape" ? "landscape" : "portrait",
    ...(rows === null
      ? {}
      : { titleRows: { first: Number(rows[1]) - 1, last: Number(rows[2]) - 1 } }),
    ...(columns === null
      ? {}
      : { columns: { first: columnIndex(columns[1] ?? ""), last: columnIndex(columns[2] ?? "") } }),
    fitToOnePageWide: isFitted && fitToWidth === "1" && fitToHeight === "0",
    ...readPaper(root),
    breaksBefore: childrenNamed(childNamed(root, "rowBreaks"), "brk").map(({ attributes }) =>
      Number(attributes["id"]),
    ),
    header: printTextOf(childNamed(texts, "oddHeader")?.text ?? ""),
    footer: printTextOf(childNamed(texts, "oddFooter")?.text ?? ""),
  };
}

/** What a snapshot has no room for. */
function leftOutOf(root: XmlElement, linked: readonly Relationship[], drawn: number): string[] {
  const count = (what: string, number: number): string[] =>
    number === 0 ? [] : [number === 1 ? what : `${number} × ${what}`];
  const of = (...types: readonly string[]): number =>
    linked.filter(({ type }) => types.includes(type)).length;
  return [
    ...count("charts or pictures", drawn),
    ...count("pivot table", of("pivotTable")),
    ...count("slicer", of("slicer", "timeline")),
    ...count("threaded comments", of("threadedComment")),
    ...count("form controls", of("ctrlProp", "oleObject", "package")),
    ...count("conditional format", childrenNamed(root, "conditionalFormatting").length),
    ...count("link", childrenNamed(childNamed(root, "hyperlinks"), "hyperlink").length),
    ...count("filter", childrenNamed(root, "autoFilter").length),
  ];
}
