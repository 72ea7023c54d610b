/** Where the pipeline leaves out what would hang too heavy: the check itself comes from outside. */
import type { Steps } from "../base/steps";
import type { Items } from "../pricing/item";
import type { JobLoads } from "../pricing/loads/openingLoads";
import type { TakeOff } from "../takeoff/takeOff";

/** Leaves out the openings whose hanging loads are over what is entered for their jobs. */
export type OverloadStop = (taken: TakeOff, items: Items) => Steps<StoppedTakeOff>;

export type StoppedTakeOff = {
  /** With the stops of hanging loads among its findings. */
  readonly taken: TakeOff;
  /** By `jobKey`, of the jobs for which a capacity is entered. */
  readonly loads: ReadonlyMap<string, JobLoads>;
};

/** All of it where nothing is entered of any load. */
export function* withoutOverloaded(
  taken: TakeOff,
  items: Items,
  stop: OverloadStop | undefined,
): Steps<StoppedTakeOff> {
  return stop === undefined ? { taken, loads: new Map() } : yield* stop(taken, items);
}
