/** The cells of one worksheet. */
import type { CellValue } from "../../core/base/cell";
import type { CellSnapshot } from "../../workbook/snapshot";
import { readCell, readRange, type Corner } from "./cellRange";
import { formulaFromFile } from "./fileFormula";
import type { FileStyle } from "./readStyles";
import { movedFormula } from "./sharedFormula";
import { textReader } from "./sharedStrings";
import { DamagedFile, readEscapes, scanXml, type Attributes } from "./xml";

/** What cells refer to by number. */
export type CellContext = {
  readonly strings: readonly string[];
  readonly styles: readonly FileStyle[];
  readonly startsIn1904: boolean;
};

export type SheetCells = {
  /** `null` is a cell that is not in the file; rows may differ in length. */
  readonly rows: readonly (readonly (CellSnapshot | null)[])[];
  readonly rowHeights: readonly (number | null)[];
  readonly hasHiddenRows: boolean;
};

/** Places without a cell before one in its row, of a whole sheet: each takes memory. */
const mostGaps = 20_000_000;

const noCells: readonly (CellSnapshot | null)[] = [];

/**
 * Reads the `<sheetData>` of a worksheet. A cell or row that does not say where it is follows the
 * one before.
 *
 * @throws DamagedFile when a cell is outside the sheet, or the gaps are more than can be held.
 */
export function readCells(sheetData: string, context: CellContext): SheetCells {
  const rows: (CellSnapshot | null)[][] = [];
  const rowHeights: (number | null)[] = [];
  const shared = new Map<string, { readonly formula: string; readonly at: Corner }>();
  const inline = textReader();
  let hasHiddenRows = false;
  let gaps = 0;
  let row = -1;
  let column = -1;
  let cell: Attributes = {};
  let formulaKind: Attributes = {};
  let formula: string | null = null;
  let value = "";
  let inside = "";

  const openRow = (attributes: Attributes): void => {
    const { r, ht, customHeight, hidden } = attributes;
    row = r === undefined ? row + 1 : readCell(`A${r}`).row;
    column = -1;
    if (ht !== undefined && customHeight !== undefined) rowHeights[row] = Number(ht);
    hasHiddenRows ||= hidden === "1" || hidden === "true";
  };
  const openCell = (attributes: Attributes): void => {
    cell = attributes;
    const { r } = attributes;
    column = r === undefined ? column + 1 : readCell(r).column;
    if (r === undefined) readCell(`A${row + 1}`);
    formula = null;
    formulaKind = {};
    value = "";
    inline.start();
  };
  const closeCell = (): void => {
    const made = snapshotOf();
    if (made === null) return;
    while (rows.length <= row) rows.push([]);
    const cells = rows[row] ?? [];
    gaps += Math.max(0, column - cells.length);
    if (gaps > mostGaps) throw new DamagedFile("A sheet has cells too far apart.");
    while (cells.length < column) cells.push(null);
    cells[column] = made;
  };
  const snapshotOf = (): CellSnapshot | null => {
    const style = Number(cell["s"] ?? 0);
    const shown = cellValue(cell["t"] ?? "n", value, inline.text, style, context);
    const typed = ownFormula();
    if (shown === null && typed === null && style === 0) return null;
    const spilled = formulaKind["t"] === "array" ? formulaKind["ref"] : undefined;
    const spill = spilled === undefined ? null : readRange(spilled);
    return {
      value: shown,
      ...(typed === null ? {} : { formula: formulaFromFile(typed) }),
      ...(spill === null || spill.rows * spill.columns === 1
        ? {}
        : { spill: { rows: spill.rows, columns: spill.columns } }),
      ...(style === 0 ? {} : { style }),
    };
  };
  /** A shared formula is written out at its first cell only. */
  const ownFormula = (): string | null => {
    if (formula === null || formulaKind["t"] === "dataTable") return null;
    const group = formulaKind["t"] === "shared" ? formulaKind["si"] : undefined;
    if (group === undefined) return formula === "" ? null : formula;
    const first = shared.get(group);
    if (formula !== "" || first === undefined) {
      shared.set(group, { formula, at: { row, column } });
      return formula === "" ? null : formula;
    }
    return movedFormula(first.formula, row - first.at.row, column - first.at.column);
  };

  scanXml(sheetData, {
    open: (name, attributes) => {
      inside = name;
      if (name === "row") openRow(attributes);
      else if (name === "c") openCell(attributes);
      else if (name === "f") {
        formulaKind = attributes;
        formula = "";
      } else inline.open(name);
    },
    close: (name) => {
      inside = "";
      if (name === "c") closeCell();
      else inline.close(name);
    },
    text: (text) => {
      if (inside === "v") value += text;
      else if (inside === "f") formula = (formula ?? "") + text;
      else inline.add(text);
    },
  });
  return {
    rows: rows.map((cells) => (cells.length === 0 ? noCells : cells)),
    rowHeights: Array.from({ length: rowHeights.length }, (_, at) => rowHeights[at] ?? null),
    hasHiddenRows,
  };
}

function cellValue(
  type: string,
  value: string,
  inlineText: () => string,
  style: number,
  { strings, styles, startsIn1904 }: CellContext,
): CellValue {
  if (type === "inlineStr") return inlineText();
  if (value === "") return type === "str" ? "" : null;
  switch (type) {
    case "s":
      return strings[Number(value)] ?? "";
    case "str":
      return readEscapes(value);
    case "b":
      return value === "1" || value === "true";
    case "e":
      return { kind: "error", error: value };
    case "d":
      return isoDate(value);
    default: {
      const number = Number(value);
      if (!Number.isFinite(number)) return value;
      if (styles[style]?.isDate !== true) return number;
      return { kind: "date", serial: startsIn1904 ? number + days1904 : number };
    }
  }
}

/** Days from 1899-12-30 to 1904-01-01. */
export const days1904 = 1462;

/** `2026-07-31` or `2026-07-31T08:30:00`; what is no such date stays text. */
function isoDate(text: string): CellValue {
  const milliseconds = Date.parse(text.includes("T") && !text.endsWith("Z") ? `${text}Z` : text);
  if (Number.isNaN(milliseconds)) return text;
  return { kind: "date", serial: milliseconds / 86_400_000 + 25_569 };
}
