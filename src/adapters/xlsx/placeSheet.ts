/** Puts one sheet of ours into a file: the parts it is made of, and what the file says of them. */
import { cellText } from "../../core/base/cell";
import type { ListPlaces } from "../../workbook/choiceLists";
import type { DrawnTable } from "../../workbook/drawing";
import { drawnSheet, styleTable } from "../../workbook/drawnSheet";
import type { PlannedSheet } from "../../workbook/plan";
import { sameSheetName } from "../../workbook/sheetNames";
import type { CellSnapshot, CellStyle, SheetSnapshot } from "../../workbook/snapshot";
import { freeTableName } from "../../workbook/tableNames";
import { emptyFile } from "./emptyFile";
import { noteBoxesXml, notesXml, type CellNote } from "./notes";
import { putCharts } from "./drawnCharts";
import { putPictures } from "./drawnPictures";
import { encode, neededText, type Parts } from "./parts";
import { days1904 } from "./readCells";
import { cutSheet } from "./readSheet";
import {
  addRelationship,
  freePath,
  relationshipsOf,
  removePart,
  removeRelationships,
  setContentType,
  setDefaultContentType,
} from "./relationships";
import { setAside } from "./setAside";
import { tablesOfFile, tableXml } from "./tables";
import { setSheetNames } from "./definedNames";
import { addSheet } from "./sheetList";
import { readWorkbookPart } from "./workbookPart";
import { sheetXml, type SheetLinks } from "./writeSheet";
import { styleWriter } from "./writeStyles";
import { childNamed, isOn, parseXml } from "./xml";

/** Carries out one step of the plan. `parts` is changed as it goes: give it a copy. */
export function placeSheet(
  parts: Map<string, Uint8Array>,
  planned: PlannedSheet,
  lists: ListPlaces,
): void {
  const styles = styleTable();
  const sheet = drawnSheet(planned.drawing, planned.name, styles);
  if (planned.was === "new") {
    appendSheet(parts, sheet, styles.styles, lists);
    return;
  }
  const position = positionOf(parts, planned.name);
  const old = oldSheet(parts, sheetPath(parts, position));
  if (planned.keptAs !== null) setAside(parts, position, planned.keptAs);
  const path = sheetPath(parts, position);
  clearSheet(parts, path);
  const inherited = planned.keptAs === null ? old : shown(old);
  writeParts(parts, path, sheet, styles.styles, { ...inherited, lists });
  nameParts(parts, position, sheet);
}

/**
 * Adds a sheet behind all others; `styles` are those that its cells name by number. The first sheet
 * of a file is the one shown, unless `isShown` says otherwise.
 */
export function appendSheet(
  parts: Map<string, Uint8Array>,
  sheet: SheetSnapshot,
  styles: readonly CellStyle[],
  lists: ListPlaces,
  isShown?: boolean,
): void {
  const workbook = readWorkbookPart(parts);
  const folder = workbook.path.slice(0, workbook.path.lastIndexOf("/") + 1);
  const path = freePath(parts, `${folder}worksheets/sheet`, ".xml");
  writeParts(parts, path, sheet, styles, {
    drawing: null,
    codeName: null,
    isShown: isShown ?? workbook.sheets.length === 0,
    lists,
  });
  setContentType(parts, path, worksheetType);
  addSheet(parts, sheet.name, path, null);
  nameParts(parts, workbook.sheets.length, sheet);
}

const spreadsheetType = "application/vnd.openxmlformats-officedocument.spreadsheetml";
const worksheetType = `${spreadsheetType}.worksheet+xml`;

const nameParts = (
  parts: Map<string, Uint8Array>,
  position: number,
  { name, mark, written, print }: SheetSnapshot,
): void =>
  setSheetNames(parts, {
    position,
    name,
    stamp: mark === null || written === null ? null : { mark, written },
    print,
  });

function positionOf(parts: Parts, name: string): number {
  const { sheets } = readWorkbookPart(parts);
  const position = sheets.findIndex((sheet) => sameSheetName(sheet.name, name));
  if (position < 0) throw new RangeError(`No sheet “${name}”.`);
  return position;
}

function sheetPath(parts: Parts, position: number): string {
  const entry = readWorkbookPart(parts).sheets[position];
  if (entry === undefined) throw new RangeError(`No sheet at ${position}.`);
  return entry.path;
}

/** What a replaced sheet hands on to the one in its place. */
type Inheritance = Pick<SheetLinks, "drawing" | "codeName" | "isShown">;

/** Where the old sheet is kept whole, the new one is only shown if the old one was. */
const shown = ({ isShown }: Inheritance): Inheritance => ({
  drawing: null,
  codeName: null,
  isShown,
});

function oldSheet(parts: Parts, path: string): Inheritance {
  const { before, after } = cutSheet(neededText(parts, path));
  const root = parseXml(before + after);
  const view = childNamed(childNamed(root, "sheetViews"), "sheetView");
  return {
    drawing: childNamed(root, "drawing")?.attributes["id"] ?? null,
    codeName: childNamed(root, "sheetPr")?.attributes["codeName"] ?? null,
    isShown: isOn(view?.attributes["tabSelected"]),
  };
}

/** Takes away what a sheet has of ours beside its own part; charts and pictures stay. */
function clearSheet(parts: Map<string, Uint8Array>, path: string): void {
  const gone = ["comments", "vmlDrawing", "table"];
  for (const { type, target, isExternal } of relationshipsOf(parts, path)) {
    if (!isExternal && gone.includes(type)) removePart(parts, target);
  }
  removeRelationships(parts, path, ({ type }) => gone.includes(type));
}

function writeParts(
  parts: Map<string, Uint8Array>,
  path: string,
  sheet: SheetSnapshot,
  styles: readonly CellStyle[],
  more: Inheritance & Pick<SheetLinks, "lists">,
): void {
  const writer = styleWriter(parts, stylesPath(parts));
  const styleNumber = ({ style, value, formula }: CellSnapshot): number => {
    const isQuoted = formula === undefined && typeof value === "string" && /^[=+\-@']/.test(value);
    const wanted = style === undefined ? {} : (styles[style] ?? {});
    return style === undefined && !isQuoted ? 0 : writer.numberOf(wanted, isQuoted);
  };
  const tables = addTables(parts, path, sheet);
  const noteBoxes = addNotes(parts, path, sheet);
  const pictured = putPictures(parts, path, more.drawing, sheet.pictures ?? []);
  const drawing = putCharts(parts, path, pictured, sheet);
  const firstDay = readWorkbookPart(parts).startsIn1904 ? days1904 : 0;
  const links = { ...more, tables, noteBoxes, drawing, firstDay };
  const xml = sheetXml(sheet, links, styleNumber);
  writer.finish();
  parts.set(path, encode(xml));
}

/** Some programs write files without styles; they get the plainest. */
function stylesPath(parts: Map<string, Uint8Array>): string {
  const { path } = readWorkbookPart(parts);
  const styles = relationshipsOf(parts, path).find(({ type }) => type === "styles");
  if (styles !== undefined) return styles.target;
  const added = freePath(parts, "xl/styles", ".xml");
  parts.set(added, encode(neededText(emptyFile(), "xl/styles.xml")));
  setContentType(parts, added, `${spreadsheetType}.styles+xml`);
  addRelationship(parts, path, "styles", added);
  return added;
}

/** Writes the sheet's tables under free names. A table without a row below its headings is left out. */
function addTables(
  parts: Map<string, Uint8Array>,
  path: string,
  { tables, rows }: SheetSnapshot,
): string[] {
  const { names, lastId } = tablesOfFile(parts);
  const used = [...names];
  let id = lastId;
  return tables
    .filter(({ headingRow, lastRow }) => lastRow > headingRow)
    .map((table) => {
      id += 1;
      const name = freeTableName(table.name, used);
      used.push(name);
      const tablePath = freePath(parts, "xl/tables/table", ".xml");
      parts.set(tablePath, encode(tableXml({ ...table, name }, id, headingsOf(table, rows))));
      setContentType(parts, tablePath, `${spreadsheetType}.table+xml`);
      return addRelationship(parts, path, "table", tablePath);
    });
}

const headingsOf = (
  { headingRow, firstColumn, lastColumn }: DrawnTable,
  rows: SheetSnapshot["rows"],
): string[] =>
  Array.from({ length: lastColumn - firstColumn + 1 }, (_, column) =>
    cellText(rows[headingRow]?.[firstColumn + column]?.value ?? null),
  );

function addNotes(
  parts: Map<string, Uint8Array>,
  path: string,
  { rows }: SheetSnapshot,
): string | null {
  const notes = rows.flatMap((cells, row) =>
    cells.flatMap((cell, column): CellNote[] =>
      cell?.note === undefined || cell.note === "" ? [] : [{ row, column, text: cell.note }],
    ),
  );
  if (notes.length === 0) return null;
  const notesPath = freePath(parts, "xl/comments", ".xml");
  parts.set(notesPath, encode(notesXml(notes)));
  setContentType(parts, notesPath, `${spreadsheetType}.comments+xml`);
  addRelationship(parts, path, "comments", notesPath);
  const boxesPath = freePath(parts, "xl/drawings/vmlDrawing", ".vml");
  parts.set(boxesPath, encode(noteBoxesXml(notes, Number(/(\d+)\.vml$/.exec(boxesPath)?.[1]))));
  setDefaultContentType(parts, "vml", "application/vnd.openxmlformats-officedocument.vmlDrawing");
  return addRelationship(parts, path, "vmlDrawing", boxesPath);
}
