/** A bar to scale with the pieces that are cut from it, each with its mark where there is room. */
import type { Mark, Picture } from "../../core/base/picture";
import { textWidth } from "../../core/base/textWidth";
import type { Bar } from "../../core/purchasing/cutting/cutProblem";

/** Points. */
const words = 7;
const flatHeight = 18;
const margin = 2;
/** Narrower than this, not even words that stand upright fit. */
const narrowest = 8;

export type BarWords = Pick<Picture, "title" | "description">;

/** In points; `perStep` is how many a step of the bar's length has. */
export function barPicture(bar: Bar, perStep: number, said: BarWords): Picture {
  const long = (mark: string): number => textWidth(mark, words) + 2;
  const standing = bar.pieces
    .filter(({ mark, length }) => long(mark) > length * perStep && length * perStep >= narrowest)
    .map(({ mark }) => long(mark));
  const height = Math.max(flatHeight, ...standing.map((each) => Math.ceil(each) + 2 * margin));
  const box = { kind: "box", group: null, y: margin, height: height - 2 * margin } as const;
  const marks: Mark[] = [];
  let left = 0;
  for (const { length, mark } of bar.pieces) {
    const width = length * perStep;
    marks.push({ ...box, stroke: "part", fill: "solid", x: left, width });
    const upright = long(mark) > width;
    if (mark !== "" && (!upright || width >= narrowest)) {
      const center = { x: left + width / 2, y: height / 2 };
      marks.push({ kind: "words", group: null, center, words: mark, size: words, upright });
    }
    left += width;
  }
  marks.push({ ...box, stroke: "thin", fill: "none", x: 0, width: bar.length * perStep });
  return { width: Math.max(1, bar.length * perStep), height, marks, ...said };
}
