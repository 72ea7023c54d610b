/** One time allowed for a whole order, shared over what is searched within it. */

/** Seconds of it that are left; and when one of so many searches still to be done has had its part. */
export type TimeAllowance = {
  readonly left: () => number;
  readonly searchPart: (waiting: number) => () => boolean;
  /** Whether all of it has gone. */
  readonly isOver: () => boolean;
};

/** The searches' part of the time; the rest is for what is worked out of what they found. */
const forSearches = 0.9;

/**
 * What a search leaves of its part the later ones share, so the easy ones are best done first.
 * `now`: milliseconds of any clock.
 */
export function timeAllowance(seconds: number, now: () => number): TimeAllowance {
  const begin = now();
  const searchEnd = begin + seconds * 1000 * forSearches;
  const end = begin + seconds * 1000;
  return {
    left: () => Math.max(0, (end - now()) / 1000),
    searchPart: (waiting) => {
      const from = now();
      const until = from + Math.max(0, searchEnd - from) / Math.max(1, waiting);
      return () => now() > until;
    },
    isOver: () => now() > end,
  };
}
