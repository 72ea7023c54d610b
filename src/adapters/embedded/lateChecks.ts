/** Drop-downs are checked when the browser is idle: by then their workbook may have been closed. */
import { IUniverInstanceService, type Workbook as GridWorkbook } from "@univerjs/core";
import { SheetsDataValidationValidatorService } from "@univerjs/sheets-data-validation";
import type { Engine } from "./engine";

/** Leaves out the checks of a workbook or a sheet that is gone. Once an engine. */
export function skipChecksOfWhatIsGone({ injector }: Engine): void {
  const instances = injector.get(IUniverInstanceService);
  const checks = injector.get(SheetsDataValidationValidatorService);
  const check = checks.validatorRanges.bind(checks);
  checks.validatorRanges = (unitId, sheetId, ranges) =>
    instances.getUnit<GridWorkbook>(unitId)?.getSheetBySheetId(sheetId)
      ? check(unitId, sheetId, ranges)
      : Promise.resolve([]);
}
