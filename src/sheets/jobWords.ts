/** What the hardware sheet says of a job in a line: what was counted, corrected and left out. */
import { isAdded } from "../core/corrections/correctedLine";
import type { JobEstimate, PartlyCounted } from "../core/estimate/jobEstimate";

/** `13 of 14 openings counted, 20 with those alike; 2 lines corrected, 1 added by hand`. */
export function countedWords({ rows, uncounted, takeOff, corrections }: JobEstimate): string {
  const counted = rows - uncounted.length;
  const stopped = new Set(takeOff.stopped);
  const doors = takeOff.openings
    .filter((opening) => !stopped.has(opening))
    .reduce((sum, opening) => sum + opening.quantity, 0);
  const alike = doors === counted ? "" : `, ${doors} with those alike`;
  const corrected = corrections.lines.filter((line) => line.change !== null && !isAdded(line));
  const added = corrections.lines.filter(isAdded);
  const lines = corrected.length === 1 ? "line" : "lines";
  const changes = [
    ...(corrected.length === 0 ? [] : [`${corrected.length} ${lines} corrected`]),
    ...(added.length === 0 ? [] : [`${added.length} added by hand`]),
  ].join(", ");
  return `${counted} of ${rows} openings counted${alike}${changes === "" ? "" : `; ${changes}`}`;
}

export const uncountedWords = (job: JobEstimate): string =>
  `NOT COMPLETE. Not counted here: ${marksText(job.uncounted)}. The findings say why.`;

export function partlyWords({ type, badRows, openings }: PartlyCounted): string {
  const rows = badRows === 1 ? "A row" : `${badRows} rows`;
  const work = badRows === 1 ? "does" : "do";
  return `NOT COMPLETE. ${rows} of the kit book for ${type} ${work} not work, so parts of these may be missing: ${marksText(openings)}. The findings say why.`;
}

/** Rows added by hand that could not be counted; the empty text where all were. */
export function uncountedAddedWords({ corrections }: JobEstimate): string {
  const bad = corrections.added.filter(({ line }) => line === null);
  if (bad.length === 0) return "";
  const rows = bad.length === 1 ? "A row" : `${bad.length} rows`;
  return `NOT COMPLETE. ${rows} added by hand could not be counted. The findings say why.`;
}

/** Why what a list shows of a job is not all that the job needs; nothing where it is. */
export const notCompleteWords = (job: JobEstimate): readonly string[] =>
  [
    job.uncounted.length > 0 ? uncountedWords(job) : "",
    ...job.partly.map(partlyWords),
    uncountedAddedWords(job),
  ].filter((words) => words !== "");

function marksText(rows: readonly { readonly mark: string }[]): string {
  const shown = rows.slice(0, 12).map(({ mark }) => mark);
  const more = rows.length > 12 ? ` and ${rows.length - 12} more` : "";
  return shown.join(", ") + more;
}
