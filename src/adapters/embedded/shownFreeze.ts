/**
 * Frozen columns on a narrow screen. Where they would leave no room to scroll to the others, fewer
 * of them stand still there; what the workbook says, and what is saved, stays as it was.
 */
import {
  IUniverInstanceService,
  UniverInstanceType,
  type IFreeze,
  type IWorksheetData,
  type Worksheet,
} from "@univerjs/core";
import { SetFrozenMutation, SetWorksheetActiveOperation } from "@univerjs/sheets";
import { openGridWorkbook, type Engine } from "./engine";
import { sheetIds } from "./sheetParts";

/** The most of the width that may stand still, the rows' numbers included. */
const mostOfWidth = 2 / 3;

/** Sheets whose freeze on the screen is another one than the workbook's. */
const kept = new WeakMap<IWorksheetData, { readonly own: IFreeze; readonly shown: IFreeze }>();

/** The freeze that the workbook says for a sheet, given the grid's live data of it. */
export function ownFreeze(config: IWorksheetData): IFreeze {
  const known = kept.get(config);
  // Who has frozen something else in the meantime meant that.
  return known !== undefined && isSame(known.shown, config.freeze) ? known.own : config.freeze;
}

/** Fits the sheet in front to `container`, now and when its size or the sheet changes. Once an engine. */
export function fitFreeze(engine: Engine, container: HTMLElement): void {
  const fit = (): void => {
    const sheet = openGridWorkbook(engine).getActiveSheet(true);
    if (sheet && container.clientWidth > 0) showFreeze(engine, sheet, container.clientWidth);
  };
  engine.commands.onCommandExecuted(({ id }) => {
    if (id === SetWorksheetActiveOperation.id) fit();
  });
  const instances = engine.injector.get(IUniverInstanceService);
  instances.getCurrentTypeOfUnit$(UniverInstanceType.UNIVER_SHEET).subscribe((book) => {
    if (book !== null) fit();
  });
  new ResizeObserver(fit).observe(container);
}

/** Freezes what there is room for in `width` pixels. */
export function showFreeze({ commands }: Engine, sheet: Worksheet, width: number): void {
  const config = sheet.getConfig();
  const own = ownFreeze(config);
  const shown = narrowed(own, roomFor(sheet, own, width * mostOfWidth));
  if (isSame(shown, own)) kept.delete(config);
  else kept.set(config, { own, shown });
  if (isSame(shown, config.freeze)) return;
  commands.syncExecuteCommand(SetFrozenMutation.id, { ...sheetIds(sheet), ...shown });
}

/** How many of the frozen columns fit into `room`. */
function roomFor(sheet: Worksheet, { startColumn, xSplit }: IFreeze, room: number): number {
  let left = room - sheet.getConfig().rowHeader.width;
  for (let fitting = 0; fitting < xSplit; fitting += 1) {
    const column = startColumn - xSplit + fitting;
    if (sheet.getColVisible(column)) left -= sheet.getColumnWidth(column) * sheet.getZoomRatio();
    if (left < 0) return fitting;
  }
  return xSplit;
}

const narrowed = (own: IFreeze, columns: number): IFreeze =>
  columns === own.xSplit
    ? own
    : {
        ...own,
        xSplit: columns,
        startColumn: columns === 0 ? -1 : own.startColumn - own.xSplit + columns,
      };

const isSame = (one: IFreeze, other: IFreeze): boolean =>
  one.xSplit === other.xSplit &&
  one.ySplit === other.ySplit &&
  one.startRow === other.startRow &&
  one.startColumn === other.startColumn;
