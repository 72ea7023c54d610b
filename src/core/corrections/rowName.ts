/**
 * The names by which rows of a hardware sheet are known again after sorting, filtering and inserting:
 * `Crib | JAMB | 84` for a line, `Crib | #2` for a row that was added by hand.
 *
 * The text stands in the row itself. Sizes are in inches and exact, unlike those that people read.
 */
import { inches, type Inches } from "../base/units";
import { pieceKey } from "../takeoff/partColumn";
import { jobKey } from "../takeoff/takeOff";

/** A line of a job. `copy` is 1; a further correction of the same line has the next number. */
export type LineName = {
  readonly kind: "line";
  readonly job: string;
  readonly item: string;
  readonly size: readonly Inches[];
  readonly copy: number;
};

/** A row for a line that a person adds; `number` tells a job's rows apart, from 1. */
export type AddedName = { readonly kind: "added"; readonly job: string; readonly number: number };

/** The question whether the job `from`, which is not in the schedule any more, is called `to` now. */
export type MoveName = { readonly kind: "move"; readonly from: string; readonly to: string };

export type RowName = LineName | AddedName | MoveName;

export const lineName = (
  job: string,
  { item, size }: Pick<LineName, "item" | "size">,
  copy = 1,
): LineName => ({ kind: "line", job, item, size, copy });

/** The same for names of the same row, whatever the case of their letters. */
export function rowKey(name: RowName): string {
  switch (name.kind) {
    case "line":
      return `line\n${jobKey(name.job)}\n${pieceKey(name.item.trim(), name.size)}\n${name.copy}`;
    case "added":
      return `added\n${jobKey(name.job)}\n${name.number}`;
    case "move":
      return `move\n${jobKey(name.from)}\n${jobKey(name.to)}`;
  }
}

/** The name itself where it is free, else with the first number that is. */
export function freeName(
  name: LineName | AddedName,
  isTaken: (key: string) => boolean,
): LineName | AddedName {
  for (let free = name; ;) {
    if (!isTaken(rowKey(free))) return free;
    free =
      free.kind === "line"
        ? { ...free, copy: free.copy + 1 }
        : { ...free, number: free.number + 1 };
  }
}

/** The job that a row belongs to. */
export const jobOf = (name: RowName): string => (name.kind === "move" ? name.from : name.job);

const mark = " | ";

/** Stands in place of a name in rows that are no lines: titles of families and totals. */
export const bandMark = "\u00B7";

/** The name as the row's cell holds it. */
export function writeRowName(name: RowName): string {
  switch (name.kind) {
    case "line": {
      const copy = name.copy === 1 ? [] : [`#${name.copy}`];
      return [escaped(name.job), escaped(name.item), name.size.join(" x "), ...copy].join(mark);
    }
    case "added":
      return [escaped(name.job), `#${name.number}`].join(mark);
    case "move":
      return [">", escaped(name.from), escaped(name.to)].join(mark);
  }
}

/** Reads what `writeRowName` made; `null` for any other text. */
export function readRowName(text: string): RowName | null {
  // A name may begin or end in a mark, whose space a host may cut off.
  const [job = "", second, third, fourth, ...more] = ` ${text} `.split(mark);
  if (second === undefined || more.length > 0) return null;
  if (job.trim() === ">") {
    if (third === undefined || fourth !== undefined) return null;
    return { kind: "move", from: plain(second), to: plain(third) };
  }
  if (third === undefined) {
    const number = numberIn(second);
    return number === null ? null : { kind: "added", job: plain(job), number };
  }
  const copy = fourth === undefined ? 1 : numberIn(fourth);
  const size = readSize(third);
  if (copy === null || size === null) return null;
  return { kind: "line", job: plain(job), item: plain(second), size, copy };
}

const escaped = (text: string): string => text.trim().replace(/[\\|#>]/g, "\\$&");
const plain = (text: string): string => text.trim().replace(/\\([\\|#>])/g, "$1");

function numberIn(text: string): number | null {
  const number = /^#(\d{1,9})$/.exec(text.trim())?.[1];
  return number === undefined || Number(number) < 1 ? null : Number(number);
}

function readSize(text: string): readonly Inches[] | null {
  if (text.trim() === "") return [];
  const lengths = text.split(" x ").map(Number);
  return lengths.every((length) => Number.isFinite(length) && length > 0)
    ? lengths.map(inches)
    : null;
}
