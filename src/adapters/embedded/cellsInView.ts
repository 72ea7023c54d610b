/** Which cells of the sheet in front are in sight, and bringing others there. */
import type { IRange } from "@univerjs/core";
import { IRenderManagerService, SHEET_VIEWPORT_KEY, type Viewport } from "@univerjs/engine-render";
import {
  SetSelectionsOperation,
  SheetsSelectionsService,
  type ISetSelectionsOperationParams,
} from "@univerjs/sheets";
import {
  ScrollCommand,
  ScrollToRangeOperation,
  SheetSkeletonManagerService,
} from "@univerjs/sheets-ui";
import { openGridWorkbook, type Engine } from "./engine";

/** The cells in sight beside and below the frozen ones, those at the edge in part; `null` where nothing is drawn. */
export function cellsInView(engine: Engine): IRange | null {
  return skeletonOf(engine)?.getVisibleRangeByViewport(SHEET_VIEWPORT_KEY.VIEW_MAIN) ?? null;
}

/**
 * The grid's own way to a cell counts on columns that are as wide as the frozen ones, and stops short
 * of it where they are wider. Goes the rest of the way wherever a cell is selected or typed into.
 * Once an engine.
 */
export function keepInView(engine: Engine): void {
  const selection = engine.injector.get(SheetsSelectionsService);
  engine.commands.onCommandExecuted(({ id, params }) => {
    if (id === ScrollToRangeOperation.id) {
      const { range } = params as { readonly range: IRange };
      bringIntoView(engine, range.startRow, range.startColumn);
    }
    if (id !== SetSelectionsOperation.id) return;
    const { reveal } = params as ISetSelectionsOperationParams;
    // The grid scrolls in the same turn, after us or before.
    if (reveal === true) {
      queueMicrotask(() => {
        const cell = selection.getCurrentLastSelection()?.primary;
        if (cell) bringIntoView(engine, cell.actualRow, cell.actualColumn);
      });
    }
  });
}

/** Scrolls no further than it must. */
export function bringIntoView(engine: Engine, row: number, column: number): void {
  const skeleton = skeletonOf(engine);
  const view = mainView(engine);
  const sheet = openGridWorkbook(engine).getActiveSheet(true);
  if (!skeleton || !view || !sheet) return;
  const { startX, endX, startY, endY } = skeleton.getCellWithCoordByIndex(row, column).mergeInfo;
  const { left, right, top, bottom } = view.calcViewportInfo().viewBound;
  const { startRow, startColumn } = sheet.getFreeze();
  const across = column < startColumn ? 0 : way([startX, endX], [left, right]);
  const down = row < startRow ? 0 : way([startY, endY], [top, bottom]);
  if (across === 0 && down === 0) return;
  engine.commands.syncExecuteCommand(ScrollCommand.id, {
    sheetViewStartRow: 0,
    sheetViewStartColumn: 0,
    offsetX: view.viewportScrollX + across,
    offsetY: view.viewportScrollY + down,
  });
}

type Span = readonly [from: number, to: number];

/** How far to go until `seen` has all of `wanted`, or begins with it where there is not room enough. */
function way(wanted: Span, seen: Span): number {
  if (wanted[0] < seen[0]) return wanted[0] - seen[0];
  return Math.max(0, Math.min(wanted[1] - seen[1], wanted[0] - seen[0]));
}

const renderOf = ({ injector }: Engine, unitId: string) =>
  injector.get(IRenderManagerService).getRenderById(unitId);

const skeletonOf = (engine: Engine) =>
  renderOf(engine, openGridWorkbook(engine).getUnitId())
    ?.with(SheetSkeletonManagerService)
    .getCurrentSkeleton();

const mainView = (engine: Engine): Viewport | undefined =>
  renderOf(engine, openGridWorkbook(engine).getUnitId())?.scene.getViewport(
    SHEET_VIEWPORT_KEY.VIEW_MAIN,
  );
