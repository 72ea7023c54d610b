/** Which cells of the sheet in front are in sight, and bringing others there. */
import type { IRange } from "@univerjs/core";
import { IRenderManagerService, SHEET_VIEWPORT_KEY } from "@univerjs/engine-render";
import { ScrollToCellOperation } from "@univerjs/sheets";
import { SheetSkeletonManagerService } from "@univerjs/sheets-ui";
import { openGridWorkbook, type Engine } from "./engine";

/** The cells in sight beside and below the frozen ones, those at the edge in part; `null` where nothing is drawn. */
export function cellsInView(engine: Engine): IRange | null {
  const range = engine.injector
    .get(IRenderManagerService)
    .getRenderById(openGridWorkbook(engine).getUnitId())
    ?.with(SheetSkeletonManagerService)
    .getCurrentSkeleton()
    ?.getVisibleRangeByViewport(SHEET_VIEWPORT_KEY.VIEW_MAIN);
  return range ?? null;
}

/** Scrolls no further than it must. */
export function bringIntoView(engine: Engine, row: number, column: number): void {
  const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
  const unitId = openGridWorkbook(engine).getUnitId();
  engine.commands.syncExecuteCommand(ScrollToCellOperation.id, { unitId, range });
}
