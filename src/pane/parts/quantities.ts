/** Numbers with their units, and rows of the kit book, as the pane writes them. */
import type { RowSource } from "../../core/kitbook/kitBook";

export { counted } from "../../core/base/counted";

/** `1,240`. */
export const countText = (count: number): string => count.toLocaleString("en-US");

/** `1,240 lb`; below a hundred with one decimal: `42.5 lb`. */
export const weightText = (pounds: number): string =>
  `${pounds.toLocaleString("en-US", { maximumFractionDigits: pounds < 100 ? 1 : 0 })} lb`;

/** `Kit book parts, row 12`. */
export const sourceWords = ({ section, number }: RowSource): string =>
  `Kit book ${section}, row ${number}`;
