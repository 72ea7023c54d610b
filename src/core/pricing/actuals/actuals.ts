/** What jobs really cost and took against what was estimated, by family and by bag. */
import { cents, type Cents, type Minutes, type Pieces } from "../../base/units";
import { sumOf } from "../../money/amounts";

/** A cost by its name: a material family, labour, freight. `actual` is `null` until somebody types it. */
export type CostPair = {
  readonly name: string;
  readonly estimated: Cents;
  readonly actual: Cents | null;
};

/** The work of one bag in one job, all factors in it. */
export type BagPair = {
  readonly bag: string;
  readonly estimated: Minutes;
  readonly actual: Minutes | null;
  /** The kit book's parts whose minutes were estimated, by number. */
  readonly rows: readonly number[];
};

/** Pieces of one item in one job, spares not among the counted. */
export type PiecesPair = {
  readonly item: string;
  readonly counted: Pieces;
  readonly used: Pieces | null;
};

/** One job as estimated and as it turned out. */
export type JobActuals = {
  readonly job: string;
  readonly costs: readonly CostPair[];
  readonly bags: readonly BagPair[];
  readonly pieces: readonly PiecesPair[];
};

/** Actual less estimated, over every job in which the actual was typed. */
export type Difference = {
  readonly name: string;
  readonly estimated: number;
  readonly actual: number;
  /** Above zero: more than estimated. */
  readonly over: number;
  /** `over / estimated`; `null` where nothing was estimated. */
  readonly share: number | null;
  /** The jobs it is from. */
  readonly jobs: readonly string[];
};

type Pair = {
  readonly job: string;
  readonly name: string;
  readonly estimated: number;
  readonly actual: number;
};

/** Gathers pairs by name, in the order in which names first come. */
function differences(pairs: readonly Pair[]): readonly Difference[] {
  return [...new Set(pairs.map(({ name }) => name))].map((name) => {
    const own = pairs.filter((pair) => pair.name === name);
    const estimated = own.reduce((sum, pair) => sum + pair.estimated, 0);
    const actual = own.reduce((sum, pair) => sum + pair.actual, 0);
    const over = actual - estimated;
    return {
      name,
      estimated,
      actual,
      over,
      share: estimated === 0 ? null : over / estimated,
      jobs: [...new Set(own.map(({ job }) => job))],
    };
  });
}

/** Costs in cents, by name. */
export const costDifferences = (jobs: readonly JobActuals[]): readonly Difference[] =>
  differences(
    jobs.flatMap(({ job, costs }) =>
      costs.flatMap(({ name, estimated, actual }) =>
        actual === null ? [] : [{ job, name, estimated, actual }],
      ),
    ),
  );

/** Minutes, by bag. */
export const bagDifferences = (jobs: readonly JobActuals[]): readonly Difference[] =>
  differences(
    jobs.flatMap(({ job, bags }) =>
      bags.flatMap(({ bag, estimated, actual }) =>
        actual === null ? [] : [{ job, name: bag, estimated, actual }],
      ),
    ),
  );

/** What a job cost against its estimate, with what was not typed yet. */
export type JobOutcome = {
  readonly job: string;
  readonly estimated: Cents;
  /** Of what was typed, and the estimate for what was not. */
  readonly actual: Cents;
  readonly over: Cents;
  readonly notTyped: readonly string[];
};

export const jobOutcome = ({ job, costs }: JobActuals): JobOutcome => {
  const estimated = sumOf(costs.map((cost) => cost.estimated));
  const actual = sumOf(costs.map((cost) => cost.actual ?? cost.estimated));
  return {
    job,
    estimated,
    actual,
    over: cents(actual - estimated),
    notTyped: costs.filter((cost) => cost.actual === null).map(({ name }) => name),
  };
};
