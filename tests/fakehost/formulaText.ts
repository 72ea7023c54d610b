/**
 * Formulas as text whose references can be rewritten: what Excel does to formulas when a sheet is
 * renamed, deleted or copied, when rows come and go, and when a cell is pasted elsewhere.
 */
import { columnIndex, columnName, sheetReference } from "../../src/core/base/cell";
import { allColumns, allRows, type Area } from "./areas";

/** One end of a reference. `null` for the part that whole rows or whole columns lack. */
type Corner = {
  readonly row: number | null;
  readonly column: number | null;
  readonly rowFixed: boolean;
  readonly columnFixed: boolean;
};

export type Reference = {
  /** The sheet as written, or `null` for the formula's own. */
  readonly sheet: string | null;
  /** `null` is a broken reference, `#REF!`. */
  readonly from: Corner | null;
  readonly to: Corner | null;
};

export type Token =
  | { readonly kind: "text" | "number" | "word" | "mark"; readonly text: string }
  | { readonly kind: "reference"; readonly text: string; readonly reference: Reference }
  /** `Table[Column]`, or `[@Column]` with an empty `table`. */
  | {
      readonly kind: "structured";
      readonly text: string;
      readonly table: string;
      readonly inside: string;
    };

const cell = String.raw`\$?[A-Za-z]{1,3}\$?\d{1,7}`;
const range = String.raw`#REF!|${cell}(?::${cell})?|\$?[A-Za-z]{1,3}:\$?[A-Za-z]{1,3}|\$?\d{1,7}:\$?\d{1,7}`;
const pattern = new RegExp(
  [
    String.raw`(?<text>"(?:[^"]|"")*")`,
    String.raw`(?<table>[\p{L}_\\][\p{L}\p{N}_.\\]*)?\[(?<inside>(?:[^\[\]']|'.|\[(?:[^\[\]']|'.)*\])*)\]`,
    String.raw`(?:(?:'(?<quoted>(?:[^']|'')+)'|(?<plain>[\p{L}_][\p{L}\p{N}_.]*)|(?<broken>#REF))!)?(?<range>${range})(?![\p{L}\p{N}_.(!])`,
    String.raw`(?<number>\d+(?:\.\d*)?(?:[eE][+-]?\d+)?|\.\d+)`,
    String.raw`(?<word>[\p{L}_\\][\p{L}\p{N}_.\\]*|#[A-Z/0]+[!?A]?)`,
    String.raw`(?<mark><=|>=|<>|.|\n)`,
  ].join("|"),
  "gu",
);

const tokensOf = new Map<string, readonly Token[]>();

/** The formula's parts in order; joined, their texts are the formula again. */
export function tokens(formula: string): readonly Token[] {
  const known = tokensOf.get(formula);
  if (known !== undefined) return known;
  if (tokensOf.size > 20_000) tokensOf.clear();
  const read = readTokens(formula);
  tokensOf.set(formula, read);
  return read;
}

function readTokens(formula: string): readonly Token[] {
  return Array.from(formula.matchAll(pattern), (match): Token => {
    const [text] = match;
    const groups = match.groups ?? {};
    if (groups["text"] !== undefined) return { kind: "text", text };
    if (groups["inside"] !== undefined) {
      return { kind: "structured", text, table: groups["table"] ?? "", inside: groups["inside"] };
    }
    if (groups["range"] !== undefined) {
      const sheet = groups["quoted"]?.replaceAll("''", "'") ?? groups["plain"] ?? null;
      const broken = groups["broken"] !== undefined || groups["range"] === "#REF!";
      const [from = null, to = null] = broken ? [] : groups["range"].split(":").map(corner);
      return { kind: "reference", text, reference: { sheet, from, to } };
    }
    if (groups["number"] !== undefined) return { kind: "number", text };
    return groups["word"] === undefined ? { kind: "mark", text } : { kind: "word", text };
  });
}

function corner(text: string): Corner {
  const [, columnMark = "", letters = "", rowMark = "", digits = ""] =
    /^(\$?)([A-Za-z]*)(\$?)(\d*)$/.exec(text) ?? [];
  return {
    column: letters === "" ? null : columnIndex(letters),
    row: digits === "" ? null : Number(digits) - 1,
    columnFixed: columnMark === "$",
    // In `$3:$5` the first mark belongs to the row.
    rowFixed: rowMark === "$" || (letters === "" && columnMark === "$"),
  };
}

const cornerText = ({ row, column, rowFixed, columnFixed }: Corner): string =>
  (column === null ? "" : `${columnFixed ? "$" : ""}${columnName(column)}`) +
  (row === null ? "" : `${rowFixed ? "$" : ""}${row + 1}`);

export function referenceText({ sheet, from, to }: Reference): string {
  const before = sheet === null ? "" : `${sheetReference(sheet)}!`;
  if (from === null) return `${before}#REF!`;
  return `${before}${cornerText(from)}${to === null ? "" : `:${cornerText(to)}`}`;
}

/** The area that a sound reference covers. */
export function referenceArea({ from, to }: Reference): Area | null {
  if (from === null) return null;
  const last = to ?? from;
  const [row, column] = [from.row ?? 0, from.column ?? 0];
  const [lastRow, lastColumn] = [last.row ?? allRows - 1, last.column ?? allColumns - 1];
  return {
    row: Math.min(row, lastRow),
    column: Math.min(column, lastColumn),
    rows: Math.abs(lastRow - row) + 1,
    columns: Math.abs(lastColumn - column) + 1,
  };
}

/** Rewrites each reference; a token that `change` leaves alone keeps its text to the letter. */
export const mapReferences = (
  formula: string,
  change: (reference: Reference) => Reference | null,
): string =>
  tokens(formula)
    .map((token) => {
      if (token.kind !== "reference") return token.text;
      const changed = change(token.reference);
      return changed === null ? token.text : referenceText(changed);
    })
    .join("");

const sameSheet = (one: string | null, other: string): boolean =>
  one !== null && one.toLowerCase() === other.toLowerCase();

/** As after the sheet `old` is renamed. */
export const withSheetRenamed = (formula: string, old: string, name: string): string =>
  mapReferences(formula, (reference) =>
    sameSheet(reference.sheet, old) ? { ...reference, sheet: name } : null,
  );

/** As after the sheet `gone` is deleted: Excel writes `#REF!` for the sheet and keeps the cell. */
export const withSheetGone = (formula: string, gone: string): string =>
  tokens(formula)
    .map((token) =>
      token.kind === "reference" && sameSheet(token.reference.sheet, gone)
        ? `#REF!${referenceText({ ...token.reference, sheet: null }).replace(/^#REF!/, "")}`
        : token.text,
    )
    .join("");

/** As pasted `rows` down and `columns` right: what is not fixed moves along. */
export const pasted = (formula: string, rows: number, columns: number): string =>
  rows === 0 && columns === 0
    ? formula
    : mapReferences(formula, (reference) => {
        const from = reference.from === null ? null : moved(reference.from, rows, columns);
        const to = reference.to === null ? null : moved(reference.to, rows, columns);
        const lost = from === "off" || to === "off";
        return lost ? { ...reference, from: null, to: null } : { ...reference, from, to };
      });

function moved(from: Corner, rows: number, columns: number): Corner | "off" {
  const row = from.row === null || from.rowFixed ? from.row : from.row + rows;
  const column = from.column === null || from.columnFixed ? from.column : from.column + columns;
  const off =
    (row !== null && (row < 0 || row >= allRows)) ||
    (column !== null && (column < 0 || column >= allColumns));
  return off ? "off" : { ...from, row, column };
}

/**
 * As after rows of the sheet `sheet` came (`count` above zero, before row `at`) or went (below
 * zero, from row `at`), within the columns of `span`. `own` is the sheet that holds the formula.
 */
export function withRowsMoved(
  formula: string,
  own: string,
  sheet: string,
  at: number,
  count: number,
  span: Pick<Area, "column" | "columns">,
): string {
  return mapReferences(formula, (reference) => {
    if (!sameSheet(reference.sheet ?? own, sheet)) return null;
    const area = referenceArea(reference);
    const { from, to } = reference;
    if (area === null || from?.row === undefined || from.row === null) return null;
    const whole = area.rows === allRows;
    const inside =
      area.column >= span.column && area.column + area.columns <= span.column + span.columns;
    if (whole || !inside) return null;
    const first = count > 0 ? grown(area.row, at, count) : shrunkStart(area.row, at, -count);
    const end = area.row + area.rows - 1;
    const last = count > 0 ? grown(end, at, count) : shrunkEnd(end, at, -count);
    if (last < first) return { ...reference, from: null, to: null };
    if (first === area.row && last === end) return null;
    return { ...reference, from: { ...from, row: first }, to: to && { ...to, row: last } };
  });
}

const grown = (row: number, at: number, count: number): number => (row >= at ? row + count : row);
const shrunkStart = (row: number, at: number, count: number): number =>
  row < at ? row : row < at + count ? at : row - count;
const shrunkEnd = (row: number, at: number, count: number): number =>
  row < at ? row : row < at + count ? at - 1 : row - count;

/** As after the table `old` is renamed; with `name` as `null`, after it is gone. */
export const withTableRenamed = (formula: string, old: string, name: string | null): string =>
  tokens(formula)
    .map((token) =>
      token.kind === "structured" && sameSheet(token.table, old)
        ? name === null
          ? "#REF!"
          : `${name}[${token.inside}]`
        : token.text,
    )
    .join("");
