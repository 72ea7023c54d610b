/** Our worksheet functions as the grid takes them in, and kept up with the workbook. */
import type { GridFunction } from "../../adapters/embedded/worksheetFunctions";
import { functionTable } from "../../functions/functionTable";
import { namespace } from "../../functions/worksheetFunction";
import { err } from "../../core/base/result";
import type { OpeningCounter } from "../../app/openings/oneOpening";
import type { Workbook } from "../../workbook/workbook";
import { liveCounter } from "../liveCounter";

export type GridFunctions = {
  readonly functions: readonly GridFunction[];
  /** Lets the functions look up what `workbook` holds from now on. */
  readonly connect: (workbook: Workbook, recalculate: () => void) => Promise<void>;
};

/** The functions; until they are connected they have no answer. */
export function gridFunctions(): GridFunctions {
  let counter: () => OpeningCounter | null = () => null;
  const functions = functionTable.map((each): GridFunction => ({
    ...each,
    name: `${namespace}.${each.name}`,
    run: (inputs) => {
      const now = counter();
      return now === null ? err(notYet) : each.run(inputs, now);
    },
  }));
  return {
    functions,
    connect: async (workbook, recalculate) => {
      const live = await liveCounter(workbook, recalculate);
      counter = live.counter;
      recalculate();
    },
  };
}

const notYet = { code: "na", message: "The workbook is still being read." } as const;
