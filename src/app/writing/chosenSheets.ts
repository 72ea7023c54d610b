/** The sheets that a person chose to write, as one act: hardware, and what the crew works from. */
import type { Result } from "../../core/base/result";
import { between, type Steps } from "../../core/base/steps";
import type { Drawing } from "../../workbook/drawing";
import type { Workbook, WorkbookFault, WriteOptions, WrittenSheet } from "../../workbook/workbook";
import { drawPackingLists, type PackingKind } from "./packingLists";
import type { Settings } from "../settings";
import type { WorkbookTakeOff } from "../reading/workbookTakeOff";
import { drawTakeOff, writeDrawings, type IsIn } from "./writeSheets";

export type ChosenSheets = {
  /** With their reasons and findings. */
  readonly hardware: boolean;
  readonly kinds: readonly PackingKind[];
  readonly isIn: IsIn;
};

/** Their drawings, a sheet or a piece of one a step; hardware first. */
export function* drawChosen(
  takeOff: WorkbookTakeOff,
  settings: Settings,
  { hardware, kinds, isIn }: ChosenSheets,
): Steps<readonly Drawing[]> {
  const half = !hardware ? 0 : kinds.length === 0 ? 1 : 0.5;
  const first = hardware ? yield* between(0, half, drawTakeOff(takeOff, settings, isIn)) : [];
  if (kinds.length === 0) return first;
  const more = yield* between(half, 1, drawPackingLists(takeOff, settings, { kinds, isIn }));
  return [...first, ...more];
}

/** Writes them. Error: as in `writeDrawings`. */
export const writeChosen = (
  workbook: Workbook,
  takeOff: WorkbookTakeOff,
  { hardware }: Pick<ChosenSheets, "hardware">,
  drawings: readonly Drawing[],
  options: WriteOptions,
): Promise<Result<readonly WrittenSheet[], WorkbookFault>> =>
  hardware
    ? writeDrawings(workbook, takeOff, drawings, options)
    : workbook.write(drawings, options);
