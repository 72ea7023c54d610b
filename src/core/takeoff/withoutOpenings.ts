/** A job's count with some of its openings taken out of it. */
import { pieces } from "../base/units";
import type { Opening } from "../openings/opening";
import { openingAt, type CountColumn } from "./take";
import type { JobTakeOff, Line } from "./takeOff";

/**
 * The same job with the openings `out` among those that gave no count: no line has a piece of theirs,
 * and a line that was theirs alone is gone. An opening that was not counted before stays as it was.
 */
export function withoutOpenings(job: JobTakeOff, out: ReadonlySet<Opening>): JobTakeOff {
  if (out.size === 0) return job;
  const stopped = new Set([...job.stopped, ...out]);
  return {
    ...job,
    stopped: job.openings.filter((opening) => stopped.has(opening)),
    lines: job.lines.flatMap((line) => lineWithout(line, out)),
  };
}

function lineWithout(line: Line, out: ReadonlySet<Opening>): readonly Line[] {
  const counts = line.counts.flatMap((column) => columnWithout(column, out));
  const quantity = counts.reduce((sum, column) => sum + piecesIn(column), 0);
  return quantity === 0 ? [] : [{ ...line, counts, quantity: pieces(quantity) }];
}

function columnWithout(column: CountColumn, out: ReadonlySet<Opening>): readonly CountColumn[] {
  const { take, rows, each } = column;
  const stays = rows.map((row) => !out.has(openingAt(take, row)));
  if (stays.every(Boolean)) return [column];
  if (!stays.includes(true)) return [];
  const isIn = (_: unknown, index: number): boolean => stays[index] === true;
  return [
    {
      ...column,
      rows: rows.filter(isIn),
      each: typeof each === "number" ? each : each.filter(isIn),
    },
  ];
}

const piecesIn = ({ take, rows, each }: CountColumn): number =>
  rows.reduce(
    (sum, row, index) =>
      sum + (typeof each === "number" ? each : (each[index] ?? 0)) * openingAt(take, row).quantity,
    0,
  );
