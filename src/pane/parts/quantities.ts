/** Numbers with their units, and rows of the kit book, as the pane writes them. */
import type { MeasureStyle } from "../../core/measures/measures";
import { measureText, shownAmount } from "../../core/measures/writeMeasure";
import type { RowSource } from "../../core/kitbook/kitBook";

export { counted } from "../../core/base/counted";

/** `1,240`. */
export const countText = (count: number): string => count.toLocaleString("en-US");

/** `1,240 lb` or `562 kg`; below a hundred with one decimal: `42.5 lb`; a bolt with three: `0.014 kg`. */
export function weightText(pounds: number, style: MeasureStyle): string {
  const shown = shownAmount(pounds, "weight", style);
  return measureText(pounds, "weight", style, shown < 0.1 ? 3 : shown < 100 ? 1 : 0);
}

/** `Kit book parts, row 12`. */
export const sourceWords = ({ section, number }: RowSource): string =>
  `Kit book ${section}, row ${number}`;
