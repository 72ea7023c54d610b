/** What is alike of a chart in every host that makes one. */
import type { DrawnChart } from "./drawing";
import type { SheetSnapshot } from "./snapshot";

/** What the names of our charts start with, in files and so in every host that opens them. */
export const chartName = "Cribsheet chart ";

/** The colours of the series, `RRGGBB`: dark and light, so that they differ without their hue too. */
export const chartFills = ["2B4F4F", "D5E0DE"] as const;

/** The colour of series number `index`, from zero. */
export const chartFill = (index: number): string => chartFills[index % chartFills.length] ?? "";

/** Bars start at zero; where one goes below it the spreadsheet finds the ends of the axis itself. */
export const startsAtZero = (
  { firstRow, lastRow, valueColumns }: DrawnChart,
  rows: SheetSnapshot["rows"],
): boolean =>
  !rows
    .slice(firstRow, lastRow + 1)
    .some((cells) => valueColumns.some((column) => Number(cells[column]?.value ?? 0) < 0));
