/**
 * The solver port over HiGHS (MIT), compiled to WebAssembly. Loading is asynchronous; solving
 * blocks, so a page runs it in a worker.
 */
import loadHighs from "highs";
import type { Highs, InitOptions } from "highs";
import type {
  LinearProgramme,
  Solver,
  SolverColumn,
  SolverRow,
  WholeLimits,
} from "../../core/purchasing/cutting/solver";

export type HighsOptions = {
  /** Where the page serves the solver's file from, or the file itself. Node finds it alone. */
  readonly file?: Pick<InitOptions, "locateFile" | "wasmBinary">;
  /** The longest that one whole-number search may run, in seconds. */
  readonly wholeSeconds?: number;
};

/**
 * Loads the solver; `null` where it cannot run: WebAssembly blocked by a content policy, or its
 * file not there. The cut plan then does without it.
 */
export async function loadHighsSolver({
  file = {},
  wholeSeconds = 10,
}: HighsOptions = {}): Promise<Solver | null> {
  try {
    const highs = await loadHighs(file);
    return {
      openLinear: (rows) => openLinear(highs, rows),
      solveWhole: (rows, columns, limits) => solveWhole(highs, wholeSeconds, rows, columns, limits),
    };
  } catch {
    return null;
  }
}

function openLinear(highs: Highs, rows: readonly SolverRow[]): LinearProgramme {
  const model = highs.createModel();
  model.options.set({ output_flag: false });
  for (const row of rows) model.addRow(row.least, row.most, { indices: [], values: [] });
  return {
    addColumns: (columns) => {
      for (const column of columns) {
        const entries = { indices: column.rows, values: column.amounts };
        model.addCol(column.cost, 0, highs.infinity, entries);
      }
    },
    setRow: (row, { least, most }) => {
      model.changeRowBounds(row, least, most);
    },
    solve: () => {
      if (model.run().modelStatus !== highs.constants.modelStatus.optimal) return null;
      const { colValue, rowDual } = model.getSolution();
      return { quantities: colValue, prices: rowDual };
    },
    close: () => model.dispose(),
  };
}

function solveWhole(
  highs: Highs,
  seconds: number,
  rows: readonly SolverRow[],
  columns: readonly SolverColumn[],
  { nodes, shouldStop }: WholeLimits,
): readonly number[] | null {
  return highs.withModel((model) => {
    model.options.set({
      output_flag: false,
      mip_rel_gap: 0,
      mip_max_nodes: nodes,
      time_limit: seconds,
    });
    for (const row of rows) model.addRow(row.least, row.most, { indices: [], values: [] });
    columns.forEach((column, index) => {
      const entries = { indices: column.rows, values: column.amounts };
      model.addCol(column.cost, 0, highs.infinity, entries);
      model.changeColIntegrality(index, highs.constants.variableType.integer);
    });
    model.run({
      [highs.constants.callbackType.mipInterrupt](event) {
        if (shouldStop()) event.interrupt();
        return undefined;
      },
    });
    const feasible = highs.constants.solutionStatus.feasible;
    if (model.info.get("primal_solution_status") !== feasible) return null;
    return Array.from(model.getSolution().colValue, Math.round);
  });
}
