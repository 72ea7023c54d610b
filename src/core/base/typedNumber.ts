/** A number as people type it into a cell that holds no length and no price. */
import type { CellValue } from "./cell";
import { asThousands, powerOfTen, scanDecimal } from "./decimal";
import { plainCharacters } from "./plainCharacters";

const places = 6;

/**
 * The number of a cell, or of text such as `12.5`, `12,5`, `-3` or `1,234.5`, kept to six decimal
 * places. One comma with three digits behind it parts thousands (`1,200`), one point does not. Not a
 * number for everything else, a blank too.
 */
export function typedNumber(value: CellValue): number {
  if (typeof value === "number") return value;
  if (typeof value !== "string") return NaN;
  const [, sign = "", digits = ""] = /^([+-]?)(.*)$/s.exec(plainCharacters(value).trim()) ?? [];
  const scanned = scanDecimal(digits, 0, places);
  if (!scanned.ok || scanned.value.end !== digits.length) return NaN;
  const isParted = scanned.value.unsureMark === ",";
  const { coefficient, places: kept } = isParted ? asThousands(scanned.value) : scanned.value;
  const size = coefficient / powerOfTen(kept);
  return sign === "-" && size > 0 ? -size : size;
}
