/** A size as a person types it: nothing, a length, or a width and a height. */
import { ok, type Result } from "../base/result";
import { inches, type Inches } from "../base/units";
import { toInches, type LengthUnit } from "./length";
import type { LengthFault } from "./lengthFindings";
import { readLength } from "./readLength";

/**
 * Lengths with an `x` between them, as `writeSize` writes them; the empty text is no size. Each is
 * kept to twelve digits, so that two ways to the same size make one. A length of any size is taken:
 * a part may be smaller than a door.
 *
 * Error: what is wrong with the first length that cannot be read.
 */
export function readSize(text: string, unit: LengthUnit): Result<readonly Inches[], LengthFault> {
  if (text.trim() === "") return ok([]);
  const size: Inches[] = [];
  for (const part of text.split(/\s*[x×]\s*/i)) {
    const read = readLength(part, unit);
    if (!read.ok) return read;
    size.push(inches(Number(toInches(read.value.length).toPrecision(12))));
  }
  return ok(size);
}
