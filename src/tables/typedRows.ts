/** Rows of a table with known headings, as typed: what every plain table is read with. */
import { cellText, isBlank, type Block, type TypedCell } from "../core/base/cell";
import { findHeadingRow, matchHeadings, type ColumnRule } from "./headings";

/** A row as typed; a column is absent where the table does not have it. */
export type TypedRow<Key extends string> = Readonly<Partial<Record<Key, TypedCell>>>;

/** Longer text alone in the first column is a notice, and no row. */
const longestName = 60;

/**
 * The rows below the headings; rows that are all blank are passed over. `null` where the block has
 * not all the columns that are `needed`: it is another table.
 */
export function typedRows<Key extends string>(
  block: Block,
  rules: readonly ColumnRule<Key>[],
  needed: readonly Key[],
): readonly TypedRow<Key>[] | null {
  const headingRow = findHeadingRow(block.rows, rules, needed.length);
  const headings = block.rows[headingRow];
  if (headings === undefined) return null;
  const { matches } = matchHeadings(headings, rules);
  if (!needed.every((key) => matches.some((match) => match.key === key))) return null;
  return block.rows.flatMap((cells, index) => {
    const filled = cells.filter((value) => !isBlank(value));
    const [first] = filled;
    if (index <= headingRow || first === undefined) return [];
    if (filled.length === 1 && cellText(first).length > longestName) return [];
    const typed = matches.map(({ key, column }) => [
      key,
      {
        value: cells[column] ?? null,
        place: { sheet: block.sheet, row: block.row + index, column: block.column + column },
      },
    ]);
    return [Object.fromEntries(typed) as TypedRow<Key>];
  });
}
