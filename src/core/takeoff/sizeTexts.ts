/** Sizes of a job's lines as text, so that two lines of one item never read alike. */
import { writeSize, type LengthStyle } from "../lengths/writeLength";
import type { Line } from "./takeOff";

/** Answers with a line's size in words; the empty text for one without a size. */
export type SizeText = (line: Sized) => string;

type Sized = Pick<Line, "item" | "size">;

/**
 * The size of each of `lines` in `style`. Where two sizes of one item would read the same (7 ft, and
 * 2134 mm in feet and sixteenths), both are written in inches with decimals instead.
 */
export function sizeTexts(lines: readonly Sized[], style: LengthStyle): SizeText {
  const keyOf = (line: Sized): string =>
    `${line.item.toLowerCase()} ${writeSize(line.size, style)}`;
  const counts = new Map<string, number>();
  for (const line of lines) counts.set(keyOf(line), (counts.get(keyOf(line)) ?? 0) + 1);
  return (line) =>
    writeSize(line.size, (counts.get(keyOf(line)) ?? 0) > 1 ? { kind: "inches" } : style);
}
