/** Writes what was counted into the workbook: hardware by job, reasons, findings, as one act. */
import type { Result } from "../core/base/result";
import { between, finish, type Steps } from "../core/base/steps";
import type { JobEstimate } from "../core/estimate/estimate";
import { findingsSheet } from "../sheets/findingsSheet";
import { hardwareSheet } from "../sheets/hardwareSheet";
import { drawReasons } from "../sheets/reasonsSheet";
import type { LookUpTable } from "../sheets/reference";
import type { Drawing } from "../workbook/drawing";
import type { Workbook, WorkbookFault, WriteOptions, WrittenSheet } from "../workbook/workbook";
import type { Inputs } from "./inputs";
import { currencyIn, lengthStyleOf, type Settings } from "./settings";
import type { WorkbookTakeOff } from "./takeOffWorkbook";

/** Which of the jobs are drawn. */
export type IsIn = (job: JobEstimate) => boolean;

/** The drawings of a take-off, for all jobs or for those named, a sheet or a piece of one a step. */
export function* drawTakeOff(
  takeOff: WorkbookTakeOff,
  settings: Settings,
  isIn: IsIn = () => true,
): Steps<readonly Drawing[]> {
  const jobs = takeOff.estimate.jobs.filter(isIn);
  const lengths = lengthStyleOf(settings);
  const common = {
    lengths,
    withCosts: settings.withCosts,
    currencySign: currencyIn(settings).sign,
    items: itemsLookUp(takeOff.inputs),
    basis: basisWords(takeOff.inputs),
  };
  const hardware: Drawing[] = [];
  for (const together of settings.sheetPerJob ? jobs.map((job) => [job]) : [jobs]) {
    yield (hardware.length / Math.max(1, jobs.length)) * 0.5;
    hardware.push(hardwareSheet({ jobs: together, ...common }));
  }
  const reasons = yield* between(0.5, 1, drawReasons(jobs, lengths));
  return [...hardware, reasons, findingsSheet(takeOff.findings)];
}

/** The drawings of a take-off at once. */
export const takeOffDrawings = (
  takeOff: WorkbookTakeOff,
  settings: Settings,
  isIn?: IsIn,
): readonly Drawing[] => finish(drawTakeOff(takeOff, settings, isIn));

/** Writes them. Error: the host refused, and the workbook is as it was. */
export const writeTakeOff = (
  workbook: Workbook,
  takeOff: WorkbookTakeOff,
  settings: Settings,
  options: WriteOptions = {},
): Promise<Result<readonly WrittenSheet[], WorkbookFault>> =>
  workbook.write(takeOffDrawings(takeOff, settings), options);

/** Where the workbook's own items sheet has codes and costs, for live prices; `null` for the starter's. */
function itemsLookUp({ items, hasItemsSheet }: Inputs): LookUpTable | null {
  const [first] = items;
  const code = first?.code.place;
  const cost = first?.unitCost?.place;
  if (!hasItemsSheet || code === undefined || code === null || cost === undefined || cost === null)
    return null;
  return { sheet: code.sheet, keyColumn: code.column, valueColumn: cost.column };
}

const basisWords = ({ hasOwnKitBook, hasOwnItems }: Inputs): string =>
  [
    hasOwnKitBook ? "Counted by the workbook's own kit book" : "Counted by the starter kit book",
    hasOwnItems ? "priced by the workbook's own items" : "priced by invented starter prices",
  ].join(", ");
