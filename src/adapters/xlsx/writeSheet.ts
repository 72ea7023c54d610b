/** A worksheet part from a snapshot. */
import { cellName, columnName, type CellValue } from "../../core/base/cell";
import { isShortList, listReference, type List, type ListPlaces } from "../../workbook/choiceLists";
import type { Choice, PrintSetup } from "../../workbook/drawing";
import { printCodes, printCodesText } from "../../workbook/printText";
import type { CellSnapshot, SheetSnapshot } from "../../workbook/snapshot";
import { rangeName } from "./cellRange";
import { formulaForFile } from "./fileFormula";
import { marginsXml, paperAttribute } from "./paper";
import { columnPadding } from "./readSheet";
import { relationshipNamespace, xmlStart } from "./relationships";
import { lastColumn, rowCount } from "./sharedFormula";
import { escapeXml } from "./xml";

/** What the part refers to: relationships by id, and what must stay from the part it replaces. */
export type SheetLinks = {
  readonly tables: readonly string[];
  /** The boxes of the notes. */
  readonly noteBoxes: string | null;
  /** The charts and pictures that a person put on the sheet. */
  readonly drawing: string | null;
  /** The sheet's name in the file's macros. */
  readonly codeName: string | null;
  /** The sheet is the one shown when the file opens. */
  readonly isShown: boolean;
  /** Where drop-downs find the lists that are too long for their rules. */
  readonly lists: ListPlaces;
  /** What the file's first day is later than 1899-12-30, in days: see `days1904`. */
  readonly firstDay: number;
};

/** `styleNumber` gives the file's number for a cell's style. */
export function sheetXml(
  sheet: SheetSnapshot,
  links: SheetLinks,
  styleNumber: (cell: CellSnapshot) => number,
): string {
  const { print } = sheet;
  const codeName = links.codeName === null ? "" : ` codeName="${escapeXml(links.codeName)}"`;
  const fitted = print?.fitToOnePageWide === true ? `<pageSetUpPr fitToPage="1"/>` : "";
  return [
    `${xmlStart}<worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="${relationshipNamespace}">`,
    codeName === "" && fitted === "" ? "" : `<sheetPr${codeName}>${fitted}</sheetPr>`,
    viewXml(sheet, links.isShown),
    `<sheetFormatPr defaultRowHeight="15"/>`,
    columnsXml(sheet.columnWidths),
    "<sheetData>",
    ...rowsXml(sheet, links.firstDay, styleNumber),
    "</sheetData>",
    sheet.isProtected ? `<sheetProtection sheet="1" objects="1" scenarios="1"/>` : "",
    listXml("mergeCells", sheet.merges, (merge) => `<mergeCell ref="${rangeName(merge)}"/>`),
    choicesXml(sheet.choices, links.lists),
    print === null ? "" : printXml(print),
    links.drawing === null ? "" : `<drawing r:id="${escapeXml(links.drawing)}"/>`,
    links.noteBoxes === null ? "" : `<legacyDrawing r:id="${escapeXml(links.noteBoxes)}"/>`,
    listXml("tableParts", links.tables, (id) => `<tablePart r:id="${escapeXml(id)}"/>`),
    "</worksheet>",
  ].join("");
}

const listXml = <T>(name: string, rows: readonly T[], xml: (row: T) => string): string =>
  rows.length === 0 ? "" : `<${name} count="${rows.length}">${rows.map(xml).join("")}</${name}>`;

function viewXml({ frozenRows, frozenColumns }: SheetSnapshot, isShown: boolean): string {
  const shown = isShown ? ` tabSelected="1"` : "";
  const view = (inside: string): string =>
    `<sheetViews><sheetView showGridLines="1"${shown} workbookViewId="0">${inside}</sheetView></sheetViews>`;
  if (frozenRows === 0 && frozenColumns === 0) return view("");
  const pane = frozenColumns === 0 ? "bottomLeft" : frozenRows === 0 ? "topRight" : "bottomRight";
  const split = [
    frozenColumns === 0 ? "" : ` xSplit="${frozenColumns}"`,
    frozenRows === 0 ? "" : ` ySplit="${frozenRows}"`,
  ].join("");
  const corner = `${columnName(frozenColumns)}${frozenRows + 1}`;
  return view(
    `<pane${split} topLeftCell="${corner}" activePane="${pane}" state="frozen"/><selection pane="${pane}" activeCell="${corner}" sqref="${corner}"/>`,
  );
}

function columnsXml(widths: SheetSnapshot["columnWidths"]): string {
  const columns = widths.map((width, column) =>
    width === null
      ? ""
      : `<col min="${column + 1}" max="${column + 1}" width="${width + columnPadding}" customWidth="1"/>`,
  );
  const text = columns.join("");
  return text === "" ? "" : `<cols>${text}</cols>`;
}

function rowsXml(
  { name, rows, rowHeights }: SheetSnapshot,
  firstDay: number,
  styleNumber: (cell: CellSnapshot) => number,
): string[] {
  const count = Math.max(rows.length, rowHeights.length);
  if (count > rowCount || rows.some((cells) => cells.length > lastColumn + 1)) {
    throw new RangeError(`“${name}” is larger than a sheet.`);
  }
  const made: string[] = [];
  for (let row = 0; row < count; row++) {
    const cells = rows[row] ?? [];
    const height = rowHeights[row] ?? null;
    if (cells.length === 0 && height === null) continue;
    const size = height === null ? "" : ` ht="${height}" customHeight="1"`;
    made.push(`<row r="${row + 1}"${size}>`);
    for (const [column, cell] of cells.entries()) {
      if (cell === null) continue;
      made.push(cellXml(inFile(cell, firstDay), { row, column }, styleNumber(cell)));
    }
    made.push("</row>");
  }
  return made;
}

const inFile = (cell: CellSnapshot, firstDay: number): CellSnapshot =>
  firstDay !== 0 && typeof cell.value === "object" && cell.value?.kind === "date"
    ? { ...cell, value: { kind: "date", serial: cell.value.serial - firstDay } }
    : cell;

function cellXml(
  { value, formula, spill }: CellSnapshot,
  at: { readonly row: number; readonly column: number },
  style: number,
): string {
  const name = cellName(at);
  const place = style === 0 ? `r="${name}"` : `r="${name}" s="${style}"`;
  if (formula === undefined) {
    if (typeof value !== "string") return valueXml(place, value, "");
    return value === ""
      ? `<c ${place}/>`
      : `<c ${place} t="inlineStr"><is>${textXml(value)}</is></c>`;
  }
  const array = spill === undefined ? "" : ` t="array" ref="${rangeName({ ...at, ...spill })}"`;
  const text = `<f${array}>${escapeXml(formulaForFile(formula))}</f>`;
  return typeof value === "string"
    ? `<c ${place} t="str">${text}<v>${escapeXml(value)}</v></c>`
    : valueXml(place, value, text);
}

function valueXml(place: string, value: Exclude<CellValue, string>, formula: string): string {
  if (value === null) return formula === "" ? `<c ${place}/>` : `<c ${place}>${formula}</c>`;
  if (typeof value === "boolean") return `<c ${place} t="b">${formula}<v>${value ? 1 : 0}</v></c>`;
  if (typeof value === "object" && value.kind === "error") {
    return `<c ${place} t="e">${formula}<v>${escapeXml(value.error)}</v></c>`;
  }
  const number = typeof value === "object" ? value.serial : value;
  if (!Number.isFinite(number)) throw new RangeError(`A cell cannot hold ${number}.`);
  return `<c ${place}>${formula}<v>${number}</v></c>`;
}

/** A cell holds this many characters; more would make the file one that needs repair. */
const longestText = 32_767;

const textXml = (text: string): string => {
  const fitting = text.length <= longestText ? text : `${text.slice(0, longestText - 1)}…`;
  return `<t xml:space="preserve">${escapeXml(fitting)}</t>`;
};

/** A drop-down whose list stands nowhere is left out. */
const choicesXml = (choices: readonly Choice[], lists: ListPlaces): string =>
  listXml(
    "dataValidations",
    choices.flatMap((choice) => {
      const source = listSource(choice.list, lists);
      return source === null ? [] : [{ ...choice, source }];
    }),
    ({ column, firstRow, lastRow, source, othersToo }) => {
      const ref = rangeName({ row: firstRow, column, rows: lastRow - firstRow + 1, columns: 1 });
      const refusal = othersToo
        ? ""
        : ` showErrorMessage="1" errorTitle="Not on the list" error="Choose one of the list. Press Esc to leave the cell as it was."`;
      return `<dataValidation type="list" allowBlank="1"${refusal} sqref="${ref}"><formula1>${escapeXml(source)}</formula1></dataValidation>`;
    },
  );

const listSource = (list: List, lists: ListPlaces): string | null =>
  isShortList(list) ? `"${list.join(",").replaceAll('"', '""')}"` : listReference(list, lists);

function printXml(print: PrintSetup): string {
  const fit = print.fitToOnePageWide ? ` fitToWidth="1" fitToHeight="0"` : "";
  const [header, footer] = [print.header, print.footer].map((text) =>
    escapeXml(printCodesText(printCodes(text))),
  );
  const texts = [
    header === "" ? "" : `<oddHeader>${header}</oddHeader>`,
    footer === "" ? "" : `<oddFooter>${footer}</oddFooter>`,
  ].join("");
  const count = print.breaksBefore.length;
  const breaks = print.breaksBefore.map((row) => `<brk id="${row}" max="${lastColumn}" man="1"/>`);
  return [
    marginsXml(print),
    `<pageSetup${paperAttribute(print)} orientation="${print.orientation}"${fit}/>`,
    texts === "" ? "" : `<headerFooter>${texts}</headerFooter>`,
    count === 0
      ? ""
      : `<rowBreaks count="${count}" manualBreakCount="${count}">${breaks.join("")}</rowBreaks>`,
  ].join("");
}
