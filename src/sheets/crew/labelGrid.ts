/** A plain grid of labels on a sheet of paper: what a person measures on the paper that they have. */
import { papers, type Margins, type Paper } from "../../workbook/drawing";
import { paperSizes } from "./printedPages";

/** Lengths in inches. */
export type LabelGrid = {
  readonly paper: Paper;
  readonly columns: number;
  readonly rows: number;
  /** From the edge of the paper to the labels. */
  readonly margins: Margins;
  /** Between two labels. */
  readonly gapAcross: number;
  readonly gapDown: number;
};

export const plainLabelGrid: LabelGrid = {
  paper: "letter",
  columns: 2,
  rows: 5,
  margins: { top: 0.5, bottom: 0.5, left: 0.5, right: 0.5 },
  gapAcross: 0,
  gapDown: 0,
};

/** The size of one label, in inches. */
export function labelSize({ paper, columns, rows, margins, gapAcross, gapDown }: LabelGrid): {
  readonly width: number;
  readonly height: number;
} {
  const { width, height } = paperSizes[paper];
  return {
    width: (width - margins.left - margins.right - gapAcross * (columns - 1)) / columns,
    height: (height - margins.top - margins.bottom - gapDown * (rows - 1)) / rows,
  };
}

/** What a label must hold at least: a mark, a bag and a few parts. */
const smallest = { width: 1.25, height: 0.75 } as const;
const most = { columns: 10, rows: 30 } as const;

/** Why no labels can be made on this grid, with what to do; `null` where they can. */
export function labelGridFault(grid: LabelGrid): string | null {
  const { columns, rows, margins, gapAcross, gapDown } = grid;
  const isCount = (count: number, limit: number): boolean =>
    Number.isInteger(count) && count >= 1 && count <= limit;
  if (!isCount(columns, most.columns) || !isCount(rows, most.rows)) {
    return `A sheet of labels has 1 to ${most.columns} columns and 1 to ${most.rows} rows, and not ${columns} x ${rows}.`;
  }
  const lengths = [...Object.values(margins), gapAcross, gapDown];
  if (!lengths.every((length) => Number.isFinite(length) && length >= 0)) {
    return "The margins and gaps of a sheet of labels are lengths from zero up.";
  }
  const { width, height } = labelSize(grid);
  if (width < smallest.width || height < smallest.height) {
    return `The labels would be ${shown(width)} in wide and ${shown(height)} in high; make them at least ${smallest.width} in by ${smallest.height} in, with fewer columns or rows or smaller margins.`;
  }
  return null;
}

const shown = (inches: number): string => String(Math.round(Math.max(0, inches) * 100) / 100);

/** Whether a value, such as one that a workbook has kept, is a grid that labels can be made on. */
export function isLabelGrid(value: unknown): value is LabelGrid {
  if (!isRecord(value)) return false;
  const { paper, columns, rows, margins, gapAcross, gapDown } = value;
  if (!isRecord(margins) || !papers.some((each) => each === paper)) return false;
  const { top, bottom, left, right } = margins;
  const numbers = [columns, rows, gapAcross, gapDown, top, bottom, left, right];
  return (
    numbers.every((each) => typeof each === "number") && labelGridFault(value as LabelGrid) === null
  );
}

const isRecord = (value: unknown): value is Readonly<Partial<Record<string, unknown>>> =>
  typeof value === "object" && value !== null;
