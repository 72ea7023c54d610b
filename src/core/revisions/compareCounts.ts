/** Two counts compared: openings, hardware and money. Turned round, every difference is its opposite. */
import { between, finish, type Steps } from "../base/steps";
import { compareLines, type LineDifferences } from "./compareLines";
import { compareOpenings, type OpeningDifferences } from "./compareOpenings";
import type { Count } from "./issue";
import type { MarkAnswer } from "./markPairs";

export type Comparison = {
  readonly openings: OpeningDifferences;
  readonly hardware: LineDifferences;
  /** Whether each of the two counted all that it should. */
  readonly isComplete: { readonly from: boolean; readonly to: boolean };
  readonly currency: { readonly from: string; readonly to: string };
};

/** What changed from the older count to the newer one. `answers`: what a person said of marks. */
export const compareCounts = (
  from: Count,
  to: Count,
  answers: readonly MarkAnswer[] = [],
): Comparison => finish(compareInSteps(from, to, answers));

/** The same, a step at a time. */
export function* compareInSteps(
  from: Count,
  to: Count,
  answers: readonly MarkAnswer[],
): Steps<Comparison> {
  return {
    openings: yield* between(0, 0.9, compareOpenings(from, to, answers)),
    hardware: yield* between(0.9, 1, compareLines(from, to)),
    isComplete: { from: from.isComplete, to: to.isComplete },
    currency: { from: from.currency, to: to.currency },
  };
}

/** Whether nothing at all differs. */
export const isEmpty = ({ openings, hardware, currency }: Comparison): boolean =>
  currency.from === currency.to &&
  hardware.lines.length === 0 &&
  Object.values(openings).every((list) => list.length === 0);
