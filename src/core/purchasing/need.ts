/**
 * The net need of one item in one size over the chosen jobs, with every step that led to it.
 *
 * Counted, and spares; less what earlier orders cover for these jobs; less what is free on hand and
 * free on order; never below zero. Whatever is free is shared over the jobs in proportion to what
 * they still need, so the order of the jobs changes nothing.
 */
import { shareWhole } from "../base/shareWhole";
import { pieces, type Pieces } from "../base/units";
import { compareText, type SizedItem } from "./sizedItem";
import { sparesFor, type SparesRule } from "./spares";

/** What one job counts, after corrections, and what earlier orders already cover of it. */
export type JobCount = {
  readonly job: string;
  readonly counted: Pieces;
  /** Received for this job, or taken off the shelf for it. */
  readonly supplied: Pieces;
  /** On sent orders for this job and not received yet. */
  readonly onOrder: Pieces;
  /** Spares that a person typed for it; they take the place of the rule. */
  readonly ownSpares?: Pieces;
};

/** Pieces that belong to no job. */
export type FreeStock = { readonly onHand: Pieces; readonly onOrder: Pieces };

export const needStepKinds = [
  "counted",
  "spares",
  "supplied",
  "job-on-order",
  "on-hand",
  "on-order",
] as const;
export type NeedStepKind = (typeof needStepKinds)[number];

/** One step from the count to what is bought: `pieces` is added, or taken off where below zero. */
export type NeedStep = {
  readonly kind: NeedStepKind;
  /** `null` where the step is about all jobs together. */
  readonly job: string | null;
  readonly pieces: number;
  readonly because: string;
};

export type JobNeed = {
  readonly job: string;
  readonly counted: Pieces;
  readonly spares: Pieces;
  /** From what is free on hand. */
  readonly fromHand: Pieces;
  /** From what is free on order. */
  readonly fromOrder: Pieces;
  readonly buy: Pieces;
};

export type Need = SizedItem & {
  readonly counted: Pieces;
  readonly spares: Pieces;
  /** What earlier orders cover for these jobs. */
  readonly covered: Pieces;
  readonly fromHand: Pieces;
  readonly fromOrder: Pieces;
  /** Counted and spares, less all that covers them. */
  readonly buy: Pieces;
  /** By name. A job with no count is not there. */
  readonly jobs: readonly JobNeed[];
  /** Adds up to `buy`. */
  readonly steps: readonly NeedStep[];
};

/** Works out the need. Counts of the same job add up. */
export function needOf(
  sized: SizedItem,
  counts: readonly JobCount[],
  spares: SparesRule,
  free: FreeStock,
): Need {
  const jobs = byJob(counts);
  const names = jobs.map(({ job }) => job);
  const counted = jobs.map((job) => job.counted);
  const extra = sparesOver(jobs, spares);
  const wanted = counted.map((count, index) => count + (extra[index] ?? 0));
  const supplied = jobs.map((job, index) => Math.min(job.supplied, wanted[index] ?? 0));
  const onOrder = jobs.map((job, index) =>
    Math.min(job.onOrder, (wanted[index] ?? 0) - (supplied[index] ?? 0)),
  );
  const open = wanted.map((count, index) => count - (supplied[index] ?? 0) - (onOrder[index] ?? 0));
  const fromHand = shareFree(free.onHand, open, names);
  const stillOpen = open.map((count, index) => count - (fromHand[index] ?? 0));
  const fromOrder = shareFree(free.onOrder, stillOpen, names);
  const buy = stillOpen.map((count, index) => count - (fromOrder[index] ?? 0));

  const steps: NeedStep[] = [
    ...jobs.map(({ job }, index) => ({
      kind: "counted" as const,
      job,
      pieces: counted[index] ?? 0,
      because: `${job} counts ${counted[index] ?? 0}`,
    })),
    ...spareSteps(jobs, spares, extra),
    ...jobSteps("supplied", names, supplied, "already has"),
    ...jobSteps("job-on-order", names, onOrder, "already has on order"),
    ...freeStep("on-hand", sum(fromHand), free.onHand, "free on hand"),
    ...freeStep("on-order", sum(fromOrder), free.onOrder, "free on order"),
  ];
  return {
    item: sized.item,
    size: sized.size,
    counted: pieces(sum(counted)),
    spares: pieces(sum(extra)),
    covered: pieces(sum(supplied) + sum(onOrder)),
    fromHand: pieces(sum(fromHand)),
    fromOrder: pieces(sum(fromOrder)),
    buy: pieces(sum(buy)),
    jobs: names.map((job, index) => ({
      job,
      counted: pieces(counted[index] ?? 0),
      spares: pieces(extra[index] ?? 0),
      fromHand: pieces(fromHand[index] ?? 0),
      fromOrder: pieces(fromOrder[index] ?? 0),
      buy: pieces(buy[index] ?? 0),
    })),
    steps,
  };
}

function byJob(counts: readonly JobCount[]): readonly JobCount[] {
  const merged = new Map<string, JobCount>();
  for (const count of counts) {
    const before = merged.get(count.job);
    merged.set(count.job, {
      job: count.job,
      counted: pieces(count.counted + (before?.counted ?? 0)),
      supplied: pieces(count.supplied + (before?.supplied ?? 0)),
      onOrder: pieces(count.onOrder + (before?.onOrder ?? 0)),
      ...ownOf(count, before),
    });
  }
  return [...merged.values()]
    .filter((job) => job.counted > 0)
    .sort((a, b) => compareText(a.job, b.job));
}

/** Typed spares add up too. */
function ownOf(one: JobCount, other: JobCount | undefined): Pick<JobCount, "ownSpares"> {
  const own = [one.ownSpares, other?.ownSpares].filter((spares) => spares !== undefined);
  return own.length === 0 ? {} : { ownSpares: pieces(sum(own)) };
}

/** By job, typed ones as they are. Spares per order are shared over the jobs in proportion to their counts. */
function sparesOver(jobs: readonly JobCount[], rule: SparesRule): readonly number[] {
  if (rule.per === "job") {
    return jobs.map(({ counted, ownSpares }) => ownSpares ?? sparesFor(counted, rule));
  }
  const counts = jobs.map(({ counted, ownSpares }) => (ownSpares === undefined ? counted : 0));
  const all = sparesFor(pieces(sum(counts)), rule);
  if (all === 0) return jobs.map(({ ownSpares }) => ownSpares ?? 0);
  const shares = shareWhole(
    all,
    counts,
    jobs.map(({ job }) => job),
  );
  return jobs.map(({ ownSpares }, index) => ownSpares ?? shares[index] ?? 0);
}

/** What is free goes to the jobs in proportion to what they need, never more than they need. */
function shareFree(
  free: number,
  open: readonly number[],
  names: readonly string[],
): readonly number[] {
  const used = Math.min(free, sum(open));
  return used === 0 ? open.map(() => 0) : shareWhole(used, open, names);
}

function spareSteps(
  jobs: readonly JobCount[],
  rule: SparesRule,
  extra: readonly number[],
): readonly NeedStep[] {
  const because = (count: number, got: number): string =>
    `${rule.percent} % of ${count}, rounded up, and at least ${rule.least}, per ${rule.per}: ${got}`;
  const step = (job: string | null, got: number, says: string): readonly NeedStep[] =>
    got === 0 ? [] : [{ kind: "spares", job, pieces: got, because: says }];
  const isTyped = jobs.map(({ ownSpares }) => ownSpares !== undefined);
  const typed = jobs.flatMap(({ job }, index) => {
    const got = extra[index] ?? 0;
    return isTyped[index] === true ? step(job, got, `typed for ${job}: ${got}`) : [];
  });
  const byRule = (list: readonly number[]): number =>
    sum(list.filter((_, index) => isTyped[index] !== true));
  if (rule.per === "order") {
    const got = byRule(extra);
    return [...typed, ...step(null, got, because(byRule(jobs.map((job) => job.counted)), got))];
  }
  return [
    ...typed,
    ...jobs.flatMap(({ job, counted }, index) => {
      const got = extra[index] ?? 0;
      return isTyped[index] === true ? [] : step(job, got, because(counted, got));
    }),
  ];
}

const jobSteps = (
  kind: NeedStepKind,
  names: readonly string[],
  amounts: readonly number[],
  words: string,
): readonly NeedStep[] =>
  names.flatMap((job, index) => {
    const amount = amounts[index] ?? 0;
    return amount === 0
      ? []
      : [{ kind, job, pieces: -amount, because: `${job} ${words} ${amount}` }];
  });

const freeStep = (
  kind: NeedStepKind,
  used: number,
  free: number,
  words: string,
): readonly NeedStep[] =>
  used === 0 ? [] : [{ kind, job: null, pieces: -used, because: `${used} of ${free} ${words}` }];

const sum = (numbers: readonly number[]): number =>
  numbers.reduce((total, number) => total + number, 0);
