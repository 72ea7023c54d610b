/** The columns of a packing list, and the box that is ticked on paper. */
import { columnPoints } from "../../workbook/columnSize";
import type { DrawnCell, DrawnRow } from "../../workbook/drawing";
import { number, row, text } from "../cells";
import { wrappedHeight } from "../wrapped";

/** Together as wide as either paper, so that what is read on site is not printed smaller. */
export const packingColumns = [
  { words: "✓", width: 4 },
  { words: "Pieces", width: 7 },
  { words: "Item", width: 16 },
  { words: "Size", width: 16 },
  { words: "Description", width: 53 },
] as const;

export const packingWidths: readonly number[] = packingColumns.map(({ width }) => width);

export const checkBox = "☐";

export type PackedPart = {
  readonly pieces: number;
  readonly item: string;
  readonly size: string;
  readonly description: string;
  /** How the description stands out. */
  readonly style?: Pick<DrawnCell, "look" | "note">;
};

/** A part with its box, as high as the longest of its words need. */
export const partRow = ({ pieces, item, size, description, style }: PackedPart): DrawnRow => ({
  ...row(
    text(checkBox, { align: "center", wrap: true }),
    number(pieces, "count", { align: "center", wrap: true }),
    text(item, { wrap: true }),
    text(size, { wrap: true }),
    text(description, { wrap: true, ...style }),
  ),
  height: Math.max(
    ...[item, size, description].map((words, place) =>
      wrappedHeight(words, columnPoints(packingWidths[place + 2] ?? 0) - 6, 10),
    ),
  ),
});
