/** One cell in our words and in the grid's. */
import { CellValueType, type ICellData, type Nullable } from "@univerjs/core";
import type { CellValue } from "../../core/base/cell";

/** The errors a cell can show. A text that reads the same counts as one, as it does in Excel. */
const errors: ReadonlySet<string> = new Set([
  "#NULL!",
  "#DIV/0!",
  "#VALUE!",
  "#REF!",
  "#NAME?",
  "#NUM!",
  "#N/A",
  "#SPILL!",
  "#CALC!",
  "#CONNECT!",
  "#BLOCKED!",
  "#CYCLE!",
]);

export const isErrorText = (text: string): boolean => errors.has(text);

/**
 * What a cell holds. `isDate` tells whether its number format shows a date.
 *
 * Text with fonts of its own has no plain value: it is read from its paragraphs.
 */
export function cellValue(cell: Nullable<ICellData>, isDate: boolean): CellValue {
  if (!cell) return null;
  const raw = cell.v ?? richText(cell);
  if (raw === null || raw === "") return null;
  if (cell.t === CellValueType.BOOLEAN) return raw === true || raw === 1 || raw === "TRUE";
  if (typeof raw === "boolean") return raw;
  if (typeof raw === "number") return numberValue(raw, isDate);
  if (cell.t === CellValueType.NUMBER && Number.isFinite(Number(raw))) {
    return numberValue(Number(raw), isDate);
  }
  return cell.t !== CellValueType.FORCE_STRING && isErrorText(raw)
    ? { kind: "error", error: raw }
    : raw;
}

const numberValue = (number: number, isDate: boolean): CellValue =>
  isDate ? { kind: "date", serial: number } : number;

/** The paragraphs of a cell whose text has fonts of its own, or `null`. */
function richText(cell: ICellData): string | null {
  const stream = cell.p?.body?.dataStream;
  // The stream ends with a paragraph mark and a section mark.
  return stream === undefined ? null : stream.replace(/\r\n$/, "").replaceAll("\r", "\n");
}

/** A grid cell that holds `value`; text stays text even where it looks like something else. */
export function gridValue(value: CellValue): Pick<ICellData, "v" | "t"> {
  if (value === null) return {};
  if (typeof value === "string") return { v: value, t: textType(value) };
  if (typeof value === "number") return { v: value, t: CellValueType.NUMBER };
  if (typeof value === "boolean") return { v: value ? 1 : 0, t: CellValueType.BOOLEAN };
  return value.kind === "date"
    ? { v: value.serial, t: CellValueType.NUMBER }
    : { v: value.error, t: CellValueType.STRING };
}

/** Text that a person's edit would turn into a formula, a number or an error is held to being text. */
const textType = (text: string): CellValueType =>
  /^[=+\-@]/.test(text) || isErrorText(text) || looksLikeNumber(text)
    ? CellValueType.FORCE_STRING
    : CellValueType.STRING;

const looksLikeNumber = (text: string): boolean =>
  text.trim() !== "" && Number.isFinite(Number(text.replaceAll(",", "")));
