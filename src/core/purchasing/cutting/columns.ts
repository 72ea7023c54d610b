/**
 * Column generation (Gilmore and Gomory 1961): the linear programme over ways to fill a bar, which
 * are too many to list, so only those are made that the programme's prices say would help.
 */
import { canBuyFor, type CutModel } from "./cutModel";
import { priceOf, wholeRest, type Column, type Rest } from "./cuts";
import { bestFillings } from "./knapsack";
import { lowerBound, type LowerBound } from "./lowerBound";
import type { LinearAnswer, Solver, SolverColumn, SolverRow, WholeLimits } from "./solver";

export type Priced = {
  /** Columns that would make the answer cheaper; none when it cannot be. */
  readonly columns: readonly Column[];
  /** What the prices prove for the model as a whole. */
  readonly bound: LowerBound;
};

export type ColumnPool = {
  /** All columns so far. */
  readonly columns: readonly Column[];
  /** Adds what is not there yet; says how many were new. */
  readonly add: (columns: readonly Column[]) => number;
  /** The cheapest fractions of `columns` that cut the rest; `null` when the solver has no answer. */
  readonly solve: (
    rest: Rest,
  ) => { readonly quantities: readonly number[]; readonly answer: LinearAnswer } | null;
  readonly price: (answer: LinearAnswer, rest: Rest) => Priced;
  /** Whole quantities of `columns` that cut the rest; `null` when none were found. */
  readonly solveWhole: (rest: Rest, limits: WholeLimits) => readonly number[] | null;
  readonly close: () => void;
};

/** The programme's prices become whole numbers up to this, so that sums stay exact. */
const finest = 1e9;

/**
 * Opens a pool for the model. A length that only bars on hand can hold gets a column of its own
 * that leaves one piece uncut, so dear that it is the last resort; it never shows among `columns`.
 */
export function openColumns(model: CutModel, solver: Solver): ColumnPool {
  const columns: Column[] = [];
  const known = new Set<string>();
  const shelf = model.kinds.flatMap((kind, index) => (kind.from === "onHand" ? [index] : []));
  const rowOfKind = (kind: number): number => model.lengths.length + shelf.indexOf(kind);
  const dearest = model.kinds.reduce((most, kind) => Math.max(most, kind.price), 1);
  const lastResort: readonly SolverColumn[] = model.lengths.flatMap((_, index) =>
    canBuyFor(model, index) ? [] : [{ cost: dearest * 1000, rows: [index], amounts: [1] }],
  );

  const rowsOf = (rest: Rest): readonly SolverRow[] => [
    ...rest.demands.map((demand) => ({ least: demand, most: Infinity })),
    ...shelf.map((kind) => ({ least: 0, most: rest.bars[kind] ?? 0 })),
  ];
  const asSolverColumn = (column: Column): SolverColumn => {
    const { kind, counts } = column;
    const held = counts.flatMap((count, index) => (count > 0 ? [index] : []));
    const onHand = model.kinds[kind]?.from === "onHand";
    return {
      cost: priceOf(model, column),
      rows: onHand ? [...held, rowOfKind(kind)] : held,
      amounts: [...held.map((index) => counts[index] ?? 0), ...(onHand ? [1] : [])],
    };
  };

  const programme = solver.openLinear(rowsOf(wholeRest(model)));
  programme.addColumns(lastResort);

  return {
    columns,
    add: (more) => {
      const fresh = more.filter(({ kind, counts }) => {
        const key = `${kind}:${counts.join()}`;
        if (known.has(key)) return false;
        known.add(key);
        return true;
      });
      columns.push(...fresh);
      programme.addColumns(fresh.map(asSolverColumn));
      return fresh.length;
    },
    solve: (rest) => {
      rowsOf(rest).forEach((row, index) => programme.setRow(index, row));
      const answer = programme.solve();
      if (answer === null) return null;
      return { quantities: Array.from(answer.quantities).slice(lastResort.length), answer };
    },
    price: (answer, rest) => {
      const { values, scale } = wholeValues(model, answer);
      const { sizes, rooms } = model.safeGrid;
      const fillings = bestFillings(sizes, values, rest.demands, Math.max(0, ...rooms));
      const found = model.kinds.flatMap((kind, index) => {
        const room = rooms[index] ?? 0;
        const rent = kind.from === "onHand" ? -(answer.prices[rowOfKind(index)] ?? 0) : 0;
        const gain = fillings.value(room) / scale - kind.price - Math.max(0, rent);
        return gain > dearest * 1e-7 ? [{ kind: index, counts: fillings.counts(room) }] : [];
      });
      // The same table proves the bound where nothing was rounded and nothing is cut yet.
      const serves = model.safeGrid === model.boundGrid && rest.demands === model.demands;
      const bound = lowerBound(model, model.demands, values, serves ? fillings : undefined);
      return { columns: found, bound };
    },
    solveWhole: (rest, limits) => {
      const all = [...lastResort, ...columns.map(asSolverColumn)];
      return solver.solveWhole(rowsOf(rest), all, limits)?.slice(lastResort.length) ?? null;
    },
    close: () => programme.close(),
  };
}

/** The lengths' prices as whole numbers, rounded down, the highest near `finest`. */
function wholeValues(
  model: CutModel,
  answer: LinearAnswer,
): { readonly values: readonly number[]; readonly scale: number } {
  const prices = model.lengths.map((_, index) => Math.max(0, answer.prices[index] ?? 0));
  const scale = finest / Math.max(...prices, 1e-9);
  return { values: prices.map((price) => Math.floor(price * scale)), scale };
}
