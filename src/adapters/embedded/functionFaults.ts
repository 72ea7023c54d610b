/**
 * Why cells show the errors of our functions. The grid itself keeps no more than `#VALUE!` and
 * `#N/A`; the message is kept here, by the cell that asked.
 */
import { SetFormulaCalculationStartMutation } from "@univerjs/engine-formula";
import type { Engine } from "./engine";
import { movesCells } from "./watching";

export type FunctionFault = { readonly code: "value" | "na"; readonly message: string };

/** A cell by the grid's own ids; rows and columns from 0. */
export type GridCell = {
  readonly unitId: string;
  readonly sheetId: string;
  readonly row: number;
  readonly column: number;
};

export type FunctionFaults = {
  /** A function in `cell` answered (`null`), or could not. */
  readonly heard: (cell: GridCell, fault: FunctionFault | null) => void;
  /** Why `cell` shows the error `shown`; `null` for an error that no function of ours made. */
  readonly reason: (cell: GridCell, shown: string) => string | null;
};

/** As cells show them. */
const shownAs: Readonly<Record<FunctionFault["code"], string>> = { value: "#VALUE!", na: "#N/A" };

/** Nothing is heard yet. */
export function functionFaults({ commands }: Engine): FunctionFaults {
  const faults = new Map<string, { readonly fault: FunctionFault; readonly run: number }>();
  let run = 0;
  commands.onCommandExecuted(({ id }) => {
    if (id === SetFormulaCalculationStartMutation.id) run += 1;
    // Formulas go elsewhere without being worked out again: whoever looks has to ask anew.
    else if (movesCells(id)) faults.clear();
  });
  return {
    heard: (cell, fault) => {
      const key = keyOf(cell);
      const known = faults.get(key);
      if (fault !== null) {
        // Of several functions in one cell the first fault is the one that it shows.
        if (known?.run !== run) faults.set(key, { fault, run });
      } else if (known !== undefined && known.run !== run) faults.delete(key);
    },
    reason: (cell, shown) => {
      const fault = faults.get(keyOf(cell))?.fault;
      return fault !== undefined && shownAs[fault.code] === shown ? fault.message : null;
    },
  };
}

const keyOf = ({ unitId, sheetId, row, column }: GridCell): string =>
  `${unitId} ${sheetId} ${row} ${column}`;
