/** What jobs would come to if their figures turned out otherwise, and what moves a margin most. */
import { cents, type Cents } from "../../core/base/units";
import { sumOf } from "../../core/money/amounts";
import { profitOf, type Profit } from "../../core/pricing/margin";
import { rangesOfJob, swingsIn, type OwnerRange } from "../../core/pricing/chances/ownerRanges";
import type { JobPrice } from "../../core/pricing/priceJob";
import { swingEffects, type SwingEffect } from "../../core/pricing/chances/swings";
import {
  answerWhatIf,
  asEstimated,
  type WhatIf,
  type WhatIfAnswer,
} from "../../core/pricing/chances/whatIf";

/** What a what-if asks of a job: it is priced, and has a target. */
export type JobToChange = Pick<JobPrice, "job" | "input" | "rollUp" | "target">;

/**
 * One job with the changes: its roll-up, what that adds, the price that keeps the target, and the
 * discount that loses it.
 */
export const whatIfJob = ({ input, rollUp, target }: JobToChange, changes: WhatIf): WhatIfAnswer =>
  answerWhatIf(input, rollUp, changes, target);

type Amounts = Profit & { readonly cost: Cents; readonly price: Cents };

export type WhatIfRow = {
  readonly job: JobToChange;
  readonly answer: WhatIfAnswer;
};

export type WhatIfTable = {
  /** In the order of the jobs. */
  readonly rows: readonly WhatIfRow[];
  readonly before: Amounts;
  readonly after: Amounts;
  readonly addsProfit: Cents;
};

/** The same changes on every job. A win price is one job's, so it is left out here. */
export function whatIfJobs(jobs: readonly JobToChange[], changes: WhatIf): WhatIfTable {
  const onAll: WhatIf = { ...changes, winPrice: null };
  const rows = jobs.map((job): WhatIfRow => ({ job, answer: whatIfJob(job, onAll) }));
  const before = together(jobs.map(({ rollUp }) => rollUp));
  const after = together(rows.map(({ answer }) => answer.rollUp));
  return { rows, before, after, addsProfit: cents(after.profit - before.profit) };
}

function together(rolled: readonly Pick<Amounts, "cost" | "price">[]): Amounts {
  const cost = sumOf(rolled.map((one) => one.cost));
  const price = sumOf(rolled.map((one) => one.price));
  return { cost, price, ...profitOf(cost, price) };
}

/** Which of its figures moves a job's margin most, each from the low to the high end of its range. */
export const swingsOfJob = (
  job: JobToChange,
  ranges: readonly OwnerRange[],
  from: WhatIf = asEstimated,
): readonly SwingEffect[] =>
  swingEffects(job.input, job.rollUp, swingsIn(rangesOfJob(ranges, job)), from);
