/**
 * The port to a solver of linear and whole-number programmes. Types only; an adapter holds the
 * solver, and where there is none the cut plan does without.
 *
 * A programme: choose a quantity, zero or more, for each column so that every row's sum stays
 * between its `least` and `most` and the cost is smallest. Answers are doubles and are taken as
 * hints only: whatever is built on them is checked in whole numbers.
 */

/** What one unit of a column costs and adds to rows. `rows` and `amounts` run side by side. */
export type SolverColumn = {
  readonly cost: number;
  readonly rows: readonly number[];
  readonly amounts: readonly number[];
};

/** Limits of a row's sum; `Infinity` for none. */
export type SolverRow = { readonly least: number; readonly most: number };

/** The quantity of each column, and the price the last unit of each row's limit is worth. */
export type LinearAnswer = {
  readonly quantities: ArrayLike<number>;
  readonly prices: ArrayLike<number>;
};

/** A linear programme that grows and changes, solved again from where it stood. */
export type LinearProgramme = {
  addColumns(columns: readonly SolverColumn[]): void;
  setRow(row: number, limits: SolverRow): void;
  /** `null` when there is no answer. */
  solve(): LinearAnswer | null;
  /** Gives the memory back; nothing may be called afterwards. */
  close(): void;
};

export type WholeLimits = {
  /** How many nodes the search may open, so that the same input gives the same plan. */
  readonly nodes: number;
  /** Asked now and then; the best so far counts when it says true. */
  readonly shouldStop: () => boolean;
};

export type Solver = {
  openLinear(rows: readonly SolverRow[]): LinearProgramme;
  /**
   * Whole quantities that keep every row, the best found within the limits; `null` when none was.
   * It is solved afresh, with no start handed over: given one, the solver behind this port was
   * seen to call a plan optimal that was not.
   */
  solveWhole(
    rows: readonly SolverRow[],
    columns: readonly SolverColumn[],
    limits: WholeLimits,
  ): readonly number[] | null;
};
