/** Subtotals and totals of a job on the hardware sheet, as sums of the rows above. */
import type { DrawnRow, Look } from "../../workbook/drawing";
import { formula, text } from "../cells";
import type { HardwareColumnKey } from "./hardwareColumns";
import { band, type HardwareLayout } from "./hardwareLayout";
import { sumOf } from "../reference";

/** A row of sums over the cost and the weight of `rows`, which come to `cost` and `weight` now. */
export function totalRow(
  layout: HardwareLayout,
  look: Look,
  words: string,
  rows: readonly number[],
  { cost, weight }: { readonly cost: number; readonly weight: number },
): DrawnRow {
  const sum = (key: HardwareColumnKey): string => {
    const column = layout.columnOf(key);
    return column === null ? "0" : sumOf(column, rows);
  };
  return band(layout, look, {
    description: text(words),
    cost: formula(sum("cost"), cost / 100, "money"),
    weight: formula(sum("weight"), weight, "weight"),
  });
}
