/** Headings of a block in which no heading is known, for a person to say what they are. */
import { cellText, type Block } from "../core/base/cell";

/** A row further down is hardly the one with the headings. */
const rowsToLookAt = 40;

/**
 * The texts of the row that has the most of them, the upper one on a tie, with their columns counted
 * from the block's first. None where no row has two.
 */
export function likelyHeadings(
  block: Block,
): readonly { readonly column: number; readonly heading: string }[] {
  const rows = block.rows.slice(0, rowsToLookAt).map((row) =>
    row.flatMap((value, column) => {
      const heading = cellText(value).trim();
      return typeof value === "string" && heading !== "" ? [{ column, heading }] : [];
    }),
  );
  const most = rows.reduce((count, row) => Math.max(count, row.length), 0);
  return most < 2 ? [] : (rows.find((row) => row.length === most) ?? []);
}
