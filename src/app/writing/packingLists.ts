/** Writes what the crew works from: packing lists, labels for the bags, loading lists; as one act. */
import type { Result } from "../../core/base/result";
import { between, finish, type Steps } from "../../core/base/steps";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { labelSheet } from "../../sheets/crew/labelSheet";
import { loadingSheet } from "../../sheets/crew/loadingSheet";
import { drawPacking } from "../../sheets/crew/packingSheet";
import type { Drawing } from "../../workbook/drawing";
import type { Workbook, WorkbookFault, WriteOptions, WrittenSheet } from "../../workbook/workbook";
import { lengthStyleOf, type Settings } from "../settings";
import type { WorkbookTakeOff } from "../reading/workbookTakeOff";
import type { IsIn } from "./writeSheets";

/** The kinds of lists, which are also the kinds of their sheets' marks. */
export const packingKinds = ["packing", "labels", "loading"] as const;
export type PackingKind = (typeof packingKinds)[number];

export type PackingChoice = {
  readonly kinds?: readonly PackingKind[];
  readonly isIn?: IsIn;
};

/** The drawings, for all jobs and of all kinds unless told otherwise; an opening or a sheet a step. */
export function* drawPackingLists(
  { estimate }: WorkbookTakeOff,
  settings: Settings,
  { kinds = packingKinds, isIn = () => true }: PackingChoice = {},
): Steps<readonly Drawing[]> {
  const jobs = estimate.jobs.filter(isIn);
  const lengths = lengthStyleOf(settings);
  const groups: readonly (readonly JobEstimate[])[] = settings.sheetPerJob
    ? jobs.map((job) => [job])
    : [jobs];
  const drawings: Drawing[] = [];
  const { items } = estimate;
  for (const [index, group] of groups.entries()) {
    yield index / groups.length;
    const wish = { jobs: group, items, lengths };
    if (kinds.includes("packing")) {
      const [from, to] = [index / groups.length, (index + 1) / groups.length];
      drawings.push(yield* between(from, to, drawPacking(wish)));
    }
    if (kinds.includes("labels")) drawings.push(labelSheet({ ...wish, grid: settings.labels }));
    if (kinds.includes("loading")) drawings.push(loadingSheet(wish));
  }
  return drawings;
}

/** All of them at once. */
export const packingDrawings = (
  takeOff: WorkbookTakeOff,
  settings: Settings,
  choice?: PackingChoice,
): readonly Drawing[] => finish(drawPackingLists(takeOff, settings, choice));

/** Writes them. Error: the host refused, and the workbook is as it was. */
export const writePackingLists = (
  workbook: Workbook,
  takeOff: WorkbookTakeOff,
  settings: Settings,
  choice: PackingChoice = {},
  options: WriteOptions = {},
): Promise<Result<readonly WrittenSheet[], WorkbookFault>> =>
  workbook.write(packingDrawings(takeOff, settings, choice), options);
