/**
 * Whether a sheet, or the order of sheets, is protected. The grid has the marks of protection and
 * lets a person set and remove them, so they are read from it and nothing is kept beside.
 */
import {
  generateRandomId,
  IPermissionService,
  type Workbook as GridWorkbook,
} from "@univerjs/core";
import {
  AddWorksheetProtectionMutation,
  EditStateEnum,
  UnitObject,
  ViewStateEnum,
  WorkbookCreateSheetPermission,
  WorksheetProtectionRuleModel,
} from "@univerjs/sheets";
import type { Engine } from "./engine";
import type { SheetIds } from "./sheetParts";
import { execute } from "./steps";

export const isSheetProtected = ({ injector }: Engine, { unitId, subUnitId }: SheetIds): boolean =>
  injector.get(WorksheetProtectionRuleModel).getRule(unitId, subUnitId) !== undefined;

export const isStructureProtected = ({ injector }: Engine, book: GridWorkbook): boolean => {
  const { id } = new WorkbookCreateSheetPermission(book.getUnitId());
  return injector.get(IPermissionService).getPermissionPoint(id)?.value === false;
};

/** Protects a sheet as a person would; they can take the protection off at the sheet's tab. */
export function protectSheet({ commands }: Engine, ids: SheetIds): void {
  const rule = {
    ...ids,
    permissionId: generateRandomId(8),
    unitType: UnitObject.Worksheet,
    viewState: ViewStateEnum.OthersCanView,
    editState: EditStateEnum.OnlyMe,
  };
  execute(commands, { id: AddWorksheetProtectionMutation.id, params: { ...ids, rule } });
}
