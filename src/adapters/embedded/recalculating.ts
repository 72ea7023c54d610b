/** Working formulas out anew because of something that the grid does not know they hang on. */
import type { ICommandService, IUnitRange } from "@univerjs/core";
import {
  FormulaDataModel,
  SetTriggerFormulaCalculationStartMutation,
} from "@univerjs/engine-formula";
import { places } from "./cellRows";
import type { Engine } from "./engine";
import { execute } from "./steps";
import type { GridFunction } from "./worksheetFunctions";

/** Works every cell out anew that uses one of `functions`, because something they look up changed. */
export function recalculateFunctions(
  { injector, commands }: Engine,
  functions: readonly GridFunction[],
): void {
  const calls = functions.map(({ name }) => `${name.toUpperCase()}(`);
  const uses = (formula: string): boolean => calls.some((call) => formula.includes(call));
  const dirtyRanges: IUnitRange[] = [];
  for (const [unitId, sheets] of Object.entries(injector.get(FormulaDataModel).getFormulaData())) {
    for (const [sheetId, cells] of Object.entries(sheets ?? {})) {
      for (const [row, column] of places(cells ?? {})) {
        const formula = cells?.[row]?.[column]?.f;
        if (formula === undefined || !uses(formula.toUpperCase())) continue;
        const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
        dirtyRanges.push({ unitId, sheetId, range });
      }
    }
  }
  if (dirtyRanges.length > 0) recalculate(commands, dirtyRanges);
}

/** Works the formulas in these ranges out anew, though nothing that they point at has changed. */
export function recalculate(commands: ICommandService, dirtyRanges: IUnitRange[]): void {
  execute(commands, {
    id: SetTriggerFormulaCalculationStartMutation.id,
    params: {
      forceCalculation: false,
      dirtyRanges,
      dirtyNameMap: {},
      dirtyDefinedNameMap: {},
      dirtyUnitFeatureMap: {},
      dirtyUnitOtherFormulaMap: {},
      clearDependencyTreeCache: {},
    },
  });
}
