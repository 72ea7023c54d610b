/**
 * References and look-ups for live formulas. Rows and columns count from zero.
 *
 * A look-up names whole columns (`Items!$A:$A`), so that a row inserted there changes nothing here.
 */
import { columnName, sheetReference } from "../core/base/cell";

/** `B3`; with `fixed`, `$B$3`. */
export const at = (row: number, column: number, fixed = false): string =>
  fixed ? `$${columnName(column)}$${row + 1}` : `${columnName(column)}${row + 1}`;

/** `B3:B9`, both ends counted. */
export const down = (column: number, first: number, last: number): string =>
  `${at(first, column)}:${at(last, column)}`;

/** `Items!$B$3`. */
export const onSheet = (sheet: string, row: number, column: number): string =>
  `${sheetReference(sheet)}!${at(row, column, true)}`;

/** `Items!$B:$B`. */
export const wholeColumn = (sheet: string, column: number): string =>
  `${sheetReference(sheet)}!$${columnName(column)}:$${columnName(column)}`;

/** Text as a formula writes it. A constant holds 255 characters, so longer text is joined from parts. */
export function quoted(words: string): string {
  const parts = words.match(/[\s\S]{1,255}/g) ?? [""];
  return parts.map((part) => `"${part.replaceAll('"', '""')}"`).join("&");
}

/**
 * `key` as MATCH must be given it to find just that text: there `*`, `?` and `~` are wildcards.
 * `words` is what the key's cell holds now; without a wildcard in it the key stays plain.
 */
export const exactKey = (key: string, words: string): string =>
  /[*?~]/.test(words)
    ? ["~", "*", "?"].reduce((made, mark) => `SUBSTITUTE(${made},"${mark}","~${mark}")`, key)
    : key;

/** Where a look-up finds its keys and values. */
export type LookUpTable = {
  readonly sheet: string;
  readonly keyColumn: number;
  readonly valueColumn: number;
};

/** `INDEX(Items!$D:$D,MATCH(A5,Items!$A:$A,0))`; `#N/A` where the key is not there. */
export const lookUp = (key: string, { sheet, keyColumn, valueColumn }: LookUpTable): string =>
  `INDEX(${wholeColumn(sheet, valueColumn)},MATCH(${key},${wholeColumn(sheet, keyColumn)},0))`;

/**
 * `ROUND(…,2)`. The spreadsheet rounds each line as the core does, so that a column of cents adds
 * up on the sheet to the core's total.
 */
export const rounded = (formula: string, decimals: number): string =>
  `ROUND(${formula.replace(/^=/, "")},${decimals})`;

/** `SUM(…)` of the cells named, runs of a column together; `0` for none. */
export function sumOf(column: number, rows: readonly number[]): string {
  const runs: { first: number; last: number }[] = [];
  for (const row of [...rows].sort((one, other) => one - other)) {
    const run = runs.at(-1);
    if (run?.last === row - 1) run.last = row;
    else runs.push({ first: row, last: row });
  }
  if (runs.length === 0) return "0";
  const ranges = runs.map(({ first, last }) =>
    first === last ? at(first, column) : down(column, first, last),
  );
  return `SUM(${ranges.join(",")})`;
}
