/** How much of a sheet goes on a printed page, so that a page ends between two things and not in one. */
import { columnPoints } from "../../workbook/columnSize";
import type { Paper } from "../../workbook/drawing";

/** Width and height in inches, upright (ISO 216 for A4). */
export const paperSizes: Readonly<
  Record<Paper, { readonly width: number; readonly height: number }>
> = {
  letter: { width: 8.5, height: 11 },
  a4: { width: 210 / 25.4, height: 297 / 25.4 },
};

/** Points of the margins that sheets have where they say nothing else. */
const plainMargins = { across: 72, down: 108 } as const;
/** What printers and fonts take more than is worked out here. */
const slack = 0.96;

/**
 * Points of rows that a page surely holds, by the smallest of the papers, once columns of
 * `columnWidths` are scaled to be one page wide.
 */
export function pageHeight(columnWidths: readonly number[]): number {
  const wide = columnWidths.reduce((sum, width) => sum + columnPoints(width), 0);
  const heights = Object.values(paperSizes).map(({ width, height }) => {
    const scale = Math.min(1, (width * 72 - plainMargins.across) / Math.max(1, wide));
    return (height * 72 - plainMargins.down) / scale;
  });
  return Math.min(...heights) * slack;
}

/** Rows that stay together on a page: so many, of so many points. */
export type Together = {
  readonly rows: number;
  readonly points: number;
  /** Whether a page starts with them. */
  readonly startsPage: boolean;
};

/**
 * The rows before which a page starts, from row `first` on. `used` points of the first page are
 * taken already; `repeated` points are on top of every other page. What is higher than a page is
 * left to break where it must.
 */
export function pageBreaks(
  parts: readonly Together[],
  { first, used, repeated, page }: PageRoom,
): readonly number[] {
  const breaks: number[] = [];
  let row = first;
  let filled = used;
  for (const { rows, points, startsPage } of parts) {
    const isFirst = row === first;
    if (!isFirst && (startsPage || filled + points > page)) {
      breaks.push(row);
      filled = repeated;
    }
    row += rows;
    filled += points;
    // Of what is higher than a page, the last page is filled by the rest. What is hardly higher may
    // still be on it, and then nothing else is.
    while (filled > page / slack) filled = repeated + (filled - page);
  }
  return breaks;
}

export type PageRoom = {
  readonly first: number;
  readonly used: number;
  readonly repeated: number;
  readonly page: number;
};
