/** Which job of the schedule a job that is gone may be now. */
import { textLikeness } from "../base/typingDistance";
import { jobKey, type Line } from "../takeoff/takeOff";
import { pieceKey } from "../takeoff/partColumn";
import { isLineCorrection, type Correction } from "./correction";

export type JobLines = {
  readonly job: string;
  readonly lines: readonly Pick<Line, "item" | "size">[];
};

/** Half is what the names have in common, half whether the job counts what was corrected. */
const least = 0.4;

/**
 * The likeliest of `jobs`, the first on a tie; `null` where none is likely. A job that was in the
 * schedule together with the one that is gone (`before`) is another job.
 */
export function guessJob(
  gone: string,
  corrections: readonly Correction[],
  jobs: readonly JobLines[],
  before: readonly string[],
): string | null {
  const known = new Set(before.map(jobKey));
  let best: string | null = null;
  let most = least;
  for (const { job, lines } of jobs) {
    if (known.has(jobKey(job))) continue;
    const counted = new Set(lines.map(({ item, size }) => pieceKey(item, size)));
    const ofLines = corrections.filter(isLineCorrection);
    const found = ofLines.filter(({ name }) => counted.has(pieceKey(name.item.trim(), name.size)));
    const shared = ofLines.length === 0 ? 0.5 : found.length / ofLines.length;
    const likeness = (textLikeness(gone, job) + shared) / 2;
    if (likeness > most) [best, most] = [job, likeness];
  }
  return best;
}
