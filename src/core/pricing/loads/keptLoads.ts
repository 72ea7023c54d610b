/**
 * What is made of each opening of a job kept from one count to the next: a part of the schedule that
 * did not change has the same takes as before, and so the same loads.
 */
import type { Opening } from "../../openings/opening";
import type { Take } from "../../takeoff/take";
import { jobKey, type JobTakeOff } from "../../takeoff/takeOff";
import type { Items } from "../item";

type Made<Loads> = ReadonlyMap<Opening, Loads>;

type Kept<Loads> = {
  readonly items: Items;
  readonly rules: string;
  readonly made: Made<Loads>;
};

export type KnownLoads<Loads> = {
  readonly known: Made<Loads>;
  /** The job's take-off without the takes whose openings are known. */
  readonly rest: JobTakeOff;
  /** Keeps what was made of the rest: once, all of it. */
  readonly keep: (made: ReadonlyMap<Take, Made<Loads>>) => void;
};

/**
 * Asks for what is known of a job as it was counted, with every opening that hangs: of a take either
 * all of them are known or none. `rules` is all else that loads depend on, as text.
 */
export type LoadsKeeper<Loads> = (
  takeOff: JobTakeOff,
  items: Items,
  rules: string,
) => KnownLoads<Loads>;

export function loadsKeeper<Loads>(): LoadsKeeper<Loads> {
  /** By take and job: the openings of one take may be of several jobs. */
  const keptOfTake = new WeakMap<Take, Map<string, Kept<Loads>>>();
  return (takeOff, items, rules) => {
    const job = jobKey(takeOff.job);
    const takes = new Set(takeOff.lines.flatMap(({ counts }) => counts.map(({ take }) => take)));
    const known = new Map<Opening, Loads>();
    const unknown = new Set<Take>();
    for (const take of takes) {
      const kept = keptOfTake.get(take)?.get(job);
      if (kept?.items === items && kept.rules === rules) {
        for (const [opening, loads] of kept.made) known.set(opening, loads);
      } else unknown.add(take);
    }
    const lines = takeOff.lines.flatMap((line) => {
      const counts = line.counts.filter(({ take }) => unknown.has(take));
      return counts.length === 0 ? [] : [{ ...line, counts }];
    });
    return {
      known,
      rest: { ...takeOff, lines },
      keep: (made) => {
        for (const take of unknown) {
          const ofTake = keptOfTake.get(take) ?? new Map<string, Kept<Loads>>();
          const all = made.get(take) ?? new Map<Opening, Loads>();
          keptOfTake.set(take, ofTake.set(job, { items, rules, made: all }));
        }
      },
    };
  };
}
