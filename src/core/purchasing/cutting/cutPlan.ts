/** The cut plan of one item: pieces of all jobs cut from the bars that cost least. */
import { cents, pieces, type Cents } from "../../base/units";
import { checkCutPlan } from "./checkCutPlan";
import { cutLength, type CutLength } from "./cutLength";
import { cutModel, type CutModel } from "./cutModel";
import type { Bar, CutPieces, CutPlan, CutProblem, PlacedPiece } from "./cutProblem";
import { costOf, restAfter, wholeRest, type Cut } from "./cuts";
import { lowerBound } from "./lowerBound";
import { search, type Found, type SearchStep } from "./search";
import type { Solver } from "./solver";

/** Where the search stands. */
export type CutProgress = {
  readonly step: SearchStep;
  /** What the best plan so far costs, and what none can cost less than. */
  readonly cost: Cents;
  readonly lowerBound: Cents;
  /** The best plan so far, written out. It is a whole, checked plan at every step. */
  readonly plan: () => CutPlan;
};

export type CutOptions = {
  /** `null` where there is none: the plan is then first-fit's or better, with a plain bound. */
  readonly solver: Solver | null;
  /** Asked between steps and inside the solver's longest one; the best so far is kept. */
  readonly shouldStop?: () => boolean;
  readonly onProgress?: (progress: CutProgress) => void;
};

/**
 * Plans step by step, for a caller that lets other work through between steps. The first step is
 * first-fit decreasing and takes no time; the last one yielded is the result.
 */
export function* cutPlanSteps(
  problem: CutProblem,
  { solver, shouldStop = () => false }: CutOptions,
): Generator<CutProgress, void> {
  const model = cutModel(problem);
  for (const found of search(model, solver, shouldStop)) {
    yield {
      step: found.step,
      cost: cents(found.cost),
      lowerBound: found.bound.cost,
      plan: () => writtenPlan(problem, model, found),
    };
    if (shouldStop()) return;
  }
}

/**
 * The best plan found until proven, stopped or out of steps. The order of the pieces and of the
 * jobs makes no difference. Stopped or with no solver at all it is still a whole plan.
 */
export function cutPlan(problem: CutProblem, options: CutOptions): CutPlan {
  let best: CutProgress | null = null;
  for (const progress of cutPlanSteps(problem, options)) {
    best = progress;
    options.onProgress?.(progress);
  }
  if (best === null) throw new Error("The search yields first-fit before anything can stop it.");
  return best.plan();
}

/** @throws Error when separate code finds the plan wrong, piece by piece: a programmer's fault. */
function writtenPlan(problem: CutProblem, model: CutModel, found: Found): CutPlan {
  const left = restAfter(wholeRest(model), found.cuts).demands;
  const placed = model.demands.map((demand, index) => demand - (left[index] ?? 0));
  const isWhole = left.every((count) => count === 0);
  const bound = isWhole ? found.bound : lowerBound(model, placed, found.bound.values);
  const { bars, unplaced } = placePieces(problem, model, found.cuts);
  const plan: CutPlan = {
    item: problem.item,
    bars,
    cost: cents(costOf(model, found.cuts)),
    lowerBound: bound.cost,
    boundProof: model.lengths.map((length, index) => ({
      length,
      value: bound.values[index] ?? 0,
    })),
    proven: unplaced.length === 0 && found.cost === bound.cost,
    unplaced,
  };
  const [fault] = checkCutPlan(problem, plan);
  if (fault !== undefined) throw new Error(`The cut plan of ${problem.item} is wrong: ${fault}`);
  return plan;
}

/** Gives every cut its pieces by name: jobs and marks in their own order, bars on hand first. */
function placePieces(
  problem: CutProblem,
  model: CutModel,
  cuts: readonly Cut[],
): Pick<CutPlan, "bars" | "unplaced"> {
  const waiting = model.lengths.map((length) => queueOf(problem.pieces, length));
  const bars = inOrder(cuts).flatMap((cut) =>
    Array.from({ length: cut.times }, () => {
      const placed = cut.counts.flatMap((count, index) => waiting[index]?.splice(0, count) ?? []);
      return barOf(problem, model, cut.kind, placed);
    }),
  );
  const left = [...model.tooLong, ...waiting.flat().map((piece) => ({ ...piece, count: 1 }))];
  return { bars, unplaced: together(left) };
}

const queueOf = (all: readonly CutPieces[], length: CutLength): PlacedPiece[] =>
  inNameOrder(all.filter((piece) => piece.length === length)).flatMap(({ job, mark, count }) =>
    Array.from({ length: count }, () => ({ job, mark, length })),
  );

function barOf(
  { saw }: CutProblem,
  model: CutModel,
  kind: number,
  placed: readonly PlacedPiece[],
): Bar {
  const bar = model.kinds[kind];
  if (bar === undefined) throw new RangeError(`No bar of kind ${kind}`);
  const usable = bar.length - (bar.from === "stock" ? saw.endTrim : 0);
  const used = placed.reduce((sum, piece) => sum + piece.length + saw.kerf, 0);
  const offcut = cutLength(Math.max(0, usable - used));
  return {
    from: bar.from,
    length: bar.length,
    price: cents(bar.price),
    pieces: placed,
    offcut,
    kept: offcut > 0 && offcut >= saw.shortestOffcut,
  };
}

/** By kind, then the bar with the longest pieces first. */
const inOrder = (cuts: readonly Cut[]): readonly Cut[] =>
  cuts.toSorted((a, b) => a.kind - b.kind || compareCounts(b.counts, a.counts));

function compareCounts(a: readonly number[], b: readonly number[]): number {
  const index = a.findIndex((count, at) => count !== b[at]);
  return index < 0 ? 0 : (a[index] ?? 0) - (b[index] ?? 0);
}

const inNameOrder = (all: readonly CutPieces[]): readonly CutPieces[] =>
  all.toSorted(
    (a, b) => compareText(a.job, b.job) || compareText(a.mark, b.mark) || b.length - a.length,
  );

/** Alike pieces of one mark as one entry. */
function together(
  all: readonly (PlacedPiece & { readonly count: number })[],
): readonly CutPieces[] {
  const merged = new Map<string, CutPieces>();
  for (const { job, mark, length, count } of all) {
    const key = JSON.stringify([job, mark, length]);
    const before = merged.get(key)?.count ?? 0;
    merged.set(key, { job, mark, length, count: pieces(before + count) });
  }
  return inNameOrder([...merged.values()]);
}

/** By code units, so that every machine agrees. */
const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
