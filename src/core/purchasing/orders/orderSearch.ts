/**
 * An order worked out in steps, for a caller that shows how far it is and may stop at any time.
 *
 * What takes long is the cutting, so the cut plans are searched first, item by item, each step with
 * the best plan so far; then the order is planned once with what was found. Whoever stops early goes
 * on from the plans it has seen: they are `given`, and nothing more is searched.
 */
import { writeSize, type LengthStyle } from "../../lengths/writeLength";
import { checkCutPlan } from "../cutting/checkCutPlan";
import { cutPlan, cutPlanSteps, type CutProgress } from "../cutting/cutPlan";
import type { CutPlan, CutProblem } from "../cutting/cutProblem";
import type { Solver } from "../cutting/solver";
import { planOrder } from "./order";
import { orderCuts, type PlanCuts } from "./orderCuts";
import { orderNeeds } from "./orderNeeds";
import { orderInTwo, type OrderInTwo } from "./orderInTwo";
import type { OrderPlan } from "./orderPlan";
import { orderInputOf, type OrderTask } from "./orderTask";
import { compareText, itemKey } from "../sizedItem";
import { timeAllowance } from "./timeAllowance";

/** What is asked for; plain data. */
export type OrderWork = {
  readonly task: OrderTask;
  /** How findings write sizes. */
  readonly lengths: LengthStyle;
  /** The longest that the cuts of all items together are searched. */
  readonly cutSeconds: number;
  /** Plans of before: `null` to search, else what is not among them is cut by first fit. */
  readonly given: readonly CutPlan[] | null;
  /** To split into now and later as well: the serial of the next day on which orders go out. */
  readonly nextOrderDay: number | null;
};

export type WorkedOrder = { readonly whole: OrderPlan; readonly inTwo: OrderInTwo | null };

/** Where the search stands: at the first, second … of the items that are cut, the easy ones first. */
export type OrderNews = {
  readonly at: number;
  readonly of: number;
  /** Of the time allowed for all of them. */
  readonly secondsLeft: number;
  /** The best plan so far, whole and checked. */
  readonly plan: CutPlan;
};

/** A step of the search; its plan is written out only if it is asked for. */
export type OrderStep = Omit<OrderNews, "plan"> & CutProgress;

export type SearchWith = {
  /** `null` where there is none: plans then have a plain bound and may not be proven. */
  readonly solver: Solver | null;
  /** Milliseconds of any clock. */
  readonly now: () => number;
};

export function* searchOrder(
  { task, lengths, cutSeconds, given, nextOrderDay }: OrderWork,
  { solver, now }: SearchWith,
): Generator<OrderStep, WorkedOrder> {
  const input = orderInputOf(task);
  const found = new Map((given ?? []).map((plan) => [itemKey(plan), plan]));
  const allowance = timeAllowance(cutSeconds, now);
  const problems = given === null ? easyFirst(cutProblemsOf(input)) : [];
  for (const [index, problem] of problems.entries()) {
    let last: (() => CutPlan) | null = null;
    const shouldStop = allowance.searchPart(problems.length - index);
    for (const progress of cutPlanSteps(problem, { solver, shouldStop })) {
      last = progress.plan;
      const secondsLeft = allowance.left();
      yield { at: index + 1, of: problems.length, secondsLeft, ...progress };
    }
    if (last !== null) found.set(itemKey(problem), last());
  }
  const planCuts: PlanCuts = (problem, purpose) => {
    const known = purpose === "order" ? found.get(itemKey(problem)) : undefined;
    if (known !== undefined && checkCutPlan(problem, known).length === 0) return known;
    // A plan for one job by itself is only compared with; first fit is always there at once.
    return cutPlan(problem, {
      solver: null,
      shouldStop: given === null ? allowance.isOver : () => true,
    });
  };
  const show = (size: Parameters<typeof writeSize>[0]): string => writeSize(size, lengths);
  const whole = planOrder(input, planCuts, show);
  const inTwo =
    nextOrderDay === null ? null : orderInTwo(input, whole, nextOrderDay, planCuts, show);
  return { whole, inTwo };
}

/** What is to be cut, one problem for each item. */
function cutProblemsOf(input: Parameters<typeof orderNeeds>[0]): readonly CutProblem[] {
  const firstFitOnly: PlanCuts = (problem) =>
    cutPlan(problem, { solver: null, shouldStop: () => true });
  return orderCuts(input, orderNeeds(input), firstFitOnly).map(({ problem }) => problem);
}

/** Few lengths first, then few pieces: such plans are mostly proven at once. */
const easyFirst = (problems: readonly CutProblem[]): readonly CutProblem[] =>
  problems.toSorted(
    (a, b) =>
      lengthsOf(a) - lengthsOf(b) || piecesOf(a) - piecesOf(b) || compareText(a.item, b.item),
  );

const lengthsOf = ({ pieces }: CutProblem): number =>
  new Set(pieces.map(({ length }) => length)).size;
const piecesOf = ({ pieces }: CutProblem): number =>
  pieces.reduce((sum, { count }) => sum + count, 0);
