/** Margins and gaps of a sheet of labels, as a person types and reads them. */
import { inches } from "../../core/base/units";
import { toInches, type LengthUnit } from "../../core/lengths/length";
import { readLength } from "../../core/lengths/readLength";
import { writeLength } from "../../core/lengths/writeLength";

/** Inches; a nought needs no unit, though it is no length elsewhere. `null` for what is no length. */
export function readLabelLength(text: string, unit: LengthUnit): number | null {
  const trimmed = text.trim();
  if (/^0+(\.0*)?\s*(?:"|in|mm)?$/i.test(trimmed)) return 0;
  const read = readLength(trimmed, unit);
  return read.ok ? toInches(read.value.length) : null;
}

/** `0.5"` or `12.7 mm`, which reads back. */
export const writeLabelLength = (length: number, unit: LengthUnit): string =>
  writeLength(inches(length), { kind: unit === "mm" ? "mm" : "inches" });
