/**
 * What belongs to a job as a whole and to no opening of it: corrections that a person typed, and
 * lines added by hand. With the openings' bags they are what is ordered and shipped, spares aside.
 */
import type { Inches } from "../base/units";
import { correctionWords, type CorrectedLine } from "../corrections/correctedLine";

export type JobContent = {
  readonly item: string;
  /** Inches: none, a cut length, or width and height. */
  readonly size: readonly Inches[];
  /** Whole; below zero for what is to be taken out of the openings' bags. Never zero. */
  readonly pieces: number;
  /** What was typed, by whom and why. */
  readonly why: string;
};

/** The difference between what is counted and what stands, line by line. */
export const correctedContents = (lines: readonly CorrectedLine[]): readonly JobContent[] =>
  lines.flatMap((line): JobContent[] => {
    const more = line.quantity - line.counted;
    if (more === 0) return [];
    return [{ item: line.item, size: line.size, pieces: more, why: correctionWords(line) }];
  });
