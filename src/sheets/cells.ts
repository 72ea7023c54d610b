/** Short words for the cells and rows that every sheet is drawn from. */
import type { DateValue } from "../core/base/cell";
import type { CellDress, DrawnCell, DrawnRow, Look, NumberFormat } from "../workbook/drawing";

/** What a cell's dress may add to the word's own; `look` is `body` unless it says otherwise. */
export type Dress = Partial<CellDress>;

const body = { look: "body" } as const;

/** Text as it is; empty text is a blank cell that keeps its look. */
export const text = (words: string, dress: Dress = {}): DrawnCell =>
  words === "" ? blank(dress) : { ...body, ...dress, kind: "text", text: words };

/** @throws RangeError when `value` is not finite: a sheet has no cell for it. */
export function number(value: number, format: NumberFormat, dress: Dress = {}): DrawnCell {
  if (!Number.isFinite(value)) throw new RangeError(`Not a number for a cell: ${value}`);
  return { ...body, format, ...dress, kind: "number", number: value };
}

/** A live formula, with or without `=` in front, that comes to `result` now. */
export const formula = (
  words: string,
  result: number | string | boolean,
  format: NumberFormat,
  dress: Dress = {},
): DrawnCell => ({
  ...body,
  format,
  ...dress,
  kind: "formula",
  formula: words.startsWith("=") ? words : `=${words}`,
  result,
});

export const date = (value: DateValue, dress: Dress = {}): DrawnCell => ({
  ...body,
  format: "date",
  ...dress,
  kind: "date",
  date: value,
});

export const yesNo = (yes: boolean, dress: Dress = {}): DrawnCell => ({
  ...body,
  ...dress,
  kind: "yesNo",
  yes,
});

export const blank = (dress: Dress = {}): DrawnCell => ({ ...body, ...dress, kind: "blank" });

export const row = (...cells: readonly (DrawnCell | null)[]): DrawnRow => ({ cells });

export const blankRow: DrawnRow = { cells: [] };

/** One line of words joined over the first `columns` columns: a title, a subtitle, a caution. */
export const wordsRow = (
  words: string,
  look: Look,
  columns: number,
  more: Dress & { readonly height?: number } = {},
): DrawnRow => {
  const { height, ...dress } = more;
  const cell = text(words, { look, span: Math.max(0, columns - 1), ...dress });
  return { cells: [cell], ...(height === undefined ? {} : { height }) };
};

/**
 * A column's heading: its words, and whether its cells are numbers (its words then go right) or stand
 * in the middle.
 */
export type Heading = {
  readonly words: string;
  readonly numbers?: boolean;
  readonly middle?: boolean;
  readonly note?: string;
};

export const headingRow = (headings: readonly Heading[]): DrawnRow => ({
  cells: headings.map(({ words, numbers = false, middle = false, note }) =>
    text(words, {
      look: "heading",
      wrap: true,
      ...(numbers ? { align: "right" } : middle ? { align: "center" } : {}),
      ...(note === undefined ? {} : { note }),
    }),
  ),
});

/** A row of one look over `columns` columns: `cells` by column, the gaps blank in the same look. */
export const bandRow = (
  look: Look,
  columns: number,
  cells: Readonly<Record<number, DrawnCell>>,
): DrawnRow => ({
  cells: Array.from({ length: columns }, (_, column) => {
    const cell = cells[column];
    return cell === undefined ? blank({ look }) : { ...cell, look };
  }),
});
