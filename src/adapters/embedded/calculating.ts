/** Waiting for the grid's formulas: it works them out behind timers of its own, in slices. */
import type { ICommandService } from "@univerjs/core";
import {
  SetFormulaCalculationNotificationMutation,
  SetFormulaCalculationStartMutation,
  type ISetFormulaCalculationNotificationMutation,
} from "@univerjs/engine-formula";

/** What the grid is calculating. */
export type Calculation = {
  /** The grid is about to calculate, and has not said so yet. */
  readonly expect: () => void;
  /**
   * Resolves once every formula shows the result of what stood in the cells at the call; after a
   * minute in any case, since a formula without end must not keep a person from saving.
   */
  readonly done: () => Promise<void>;
};

/** The grid gathers changes for a tenth of a second before it starts; a timer behind that one. */
const gathering = 150;
const betweenLooks = 30;
const longestWait = 60_000;

/** Follows what the grid calculates from now on. */
export function followCalculation(commands: ICommandService): Calculation {
  let started = 0;
  let finished = 0;
  let expected = 0;
  commands.onCommandExecuted(({ id, params }) => {
    if (id === SetFormulaCalculationStartMutation.id) started += 1;
    if (id !== SetFormulaCalculationNotificationMutation.id) return;
    const { functionsExecutedState } = params as ISetFormulaCalculationNotificationMutation;
    if (functionsExecutedState !== undefined) finished += 1;
  });
  return {
    expect: () => {
      expected = started + 1;
    },
    done: async () => {
      await wait(gathering);
      for (let waited = 0; waited < longestWait; waited += betweenLooks) {
        if (finished >= Math.max(started, expected)) return;
        await wait(betweenLooks);
      }
    },
  };
}

const wait = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
