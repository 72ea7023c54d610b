/**
 * Minutes for the kit book and spares for the items table that would have fitted what jobs really
 * took. Suggestions only: a person accepts them one by one.
 */
import { bagDifferences, type JobActuals } from "./actuals";
import { figureText } from "../rollup/figureText";

/** A kit-book row whose minutes may be suggested anew. */
export type TimedRow = {
  /** Names the row in the book, such as `parts 12`. */
  readonly row: string;
  /** The same as a number: 12. */
  readonly number: number;
  readonly bag: string;
  readonly item: string;
  /** The minutes as they stand in the book: a number, or a formula. */
  readonly minutes: string;
};

/** An item's spares as they stand in the items table. */
export type SparedItem = { readonly item: string; readonly sparesPercent: number };

/** One change that can be accepted: in the row named, from one text to the other. */
export type Suggestion = {
  readonly kind: "minutes" | "spares";
  /** The kit-book row's name, or the item's code. */
  readonly row: string;
  readonly item: string;
  readonly from: string;
  readonly to: string;
  readonly because: string;
};

/** How far off an estimate must be before anything is suggested: a twentieth. */
export const leastDifference = 0.05;

const jobsText = (count: number): string => (count === 1 ? "1 job" : `${count} jobs`);

/**
 * New minutes for every row of each bag that took longer or shorter than estimated, in proportion:
 * what the crew tells is the time of a bag, and each of its rows is taken to be as far off. A row
 * with a plain number gets a new number, to a tenth of a minute; a formula is multiplied. A row of the
 * bag that none of these jobs has, such as of another opening type, is left alone.
 */
export function suggestMinutes(
  jobs: readonly JobActuals[],
  rows: readonly TimedRow[],
): readonly Suggestion[] {
  return bagDifferences(jobs).flatMap(({ name, estimated, actual, share, jobs: from }) => {
    if (share === null || Math.abs(share) < leastDifference) return [];
    const times = actual / estimated;
    const because =
      `${name} took ${figureText(actual, 0)} min where ${figureText(estimated, 0)} min were estimated, ` +
      `in ${jobsText(from.length)}: times ${figureText(times, 2)}`;
    const inJobs = new Set(
      jobs.flatMap(({ bags }) =>
        bags.flatMap((pair) => (pair.bag === name && pair.actual !== null ? pair.rows : [])),
      ),
    );
    return rows
      .filter(({ bag, number }) => bag === name && inJobs.has(number))
      .map(({ row, item, minutes }): Suggestion => {
        const to = timesText(minutes, times);
        return { kind: "minutes", row, item, from: minutes, to, because };
      })
      .filter(({ from: before, to }) => before.trim() !== to);
  });
}

function timesText(minutes: string, times: number): string {
  const text = minutes.trim();
  const number = text === "" ? NaN : Number(text);
  if (Number.isFinite(number)) return figureText(number * times, 1);
  return `(${text}) * ${figureText(times, 2)}`;
}

/**
 * The spares that would have covered every one of the jobs: the largest share by which a job used
 * more of an item than was counted, as a whole percentage, rounded up. Less than the spares that
 * stand is suggested too. An item that no job counted gets no suggestion.
 */
export function suggestSpares(
  jobs: readonly JobActuals[],
  items: readonly SparedItem[],
): readonly Suggestion[] {
  return items.flatMap(({ item, sparesPercent }): readonly Suggestion[] => {
    const used = jobs.flatMap(({ pieces }) =>
      pieces.flatMap((pair) =>
        pair.item === item && pair.used !== null && pair.counted > 0
          ? [{ counted: pair.counted, used: pair.used }]
          : [],
      ),
    );
    if (used.length === 0) return [];
    // Whole numbers divide once: 7 of 140 is 5 % and not a hair more.
    const most = Math.max(...used.map((pair) => (100 * (pair.used - pair.counted)) / pair.counted));
    const percent = Math.max(0, Math.ceil(most));
    if (percent === sparesPercent) return [];
    const [counted, all] = [
      used.reduce((sum, pair) => sum + pair.counted, 0),
      used.reduce((sum, pair) => sum + pair.used, 0),
    ];
    const because =
      `${all} used where ${counted} were counted, in ${jobsText(used.length)}; ` +
      `the most in one was ${figureText(most, 1)} % more`;
    const [from, to] = [String(sparesPercent), String(percent)];
    return [{ kind: "spares", row: item, item, from, to, because }];
  });
}
