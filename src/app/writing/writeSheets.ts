/** Writes what was counted into the workbook: hardware by job, reasons, findings, as one act. */
import type { CellPlace } from "../../core/base/cell";
import type { Finding } from "../../core/base/finding";
import type { Result } from "../../core/base/result";
import { between, finish, type Steps } from "../../core/base/steps";
import type { LostJob } from "../../core/corrections/corrections";
import { rowKey } from "../../core/corrections/rowName";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { findingsSheet } from "../../sheets/hardware/findingsSheet";
import { hardwareSheet } from "../../sheets/hardware/hardwareSheet";
import { drawReasons } from "../../sheets/hardware/reasonsSheet";
import type { LookUpTable } from "../../sheets/reference";
import type { Drawing } from "../../workbook/drawing";
import type { Workbook, WorkbookFault, WriteOptions, WrittenSheet } from "../../workbook/workbook";
import type { Inputs } from "../reading/inputs";
import { keepCorrections, readDrawnHardware } from "../corrections/keepCorrections";
import { currencyIn, lengthStyleOf, type Settings } from "../settings";
import type { WorkbookTakeOff } from "../reading/workbookTakeOff";

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
    const wish = { jobs: together, ...common, lost: lostOn(together, takeOff) };
    hardware.push(withCarried(hardwareSheet(wish), takeOff));
  }
  const reasons = yield* between(0.5, 1, drawReasons(jobs, lengths));
  return [...hardware, reasons, findingsSheet(findingsOn(hardware, takeOff))];
}

/** What was typed for jobs that are gone stands with the job that it may be now, else with the first. */
function lostOn(jobs: readonly JobEstimate[], { estimate }: WorkbookTakeOff): readonly LostJob[] {
  const first = estimate.jobs[0]?.job;
  return estimate.corrections.lost.filter(({ guess }) =>
    jobs.some(({ job }) => job === (guess ?? first)),
  );
}

function withCarried(drawing: Drawing, { corrections }: WorkbookTakeOff): Drawing {
  const carried = corrections.carried.get(drawing.mark?.subject ?? "");
  return carried === undefined ? drawing : { ...drawing, carried };
}

/** The findings, those about corrections with the cell that they will have on the new sheets. */
function findingsOn(
  hardware: readonly Drawing[],
  { estimate, corrections, findings }: WorkbookTakeOff,
): readonly Finding[] {
  const about = new Map(estimate.corrections.findings.map(({ key, finding }) => [finding, key]));
  if (about.size === 0) return findings;
  const places = new Map<string, CellPlace>();
  for (const drawing of hardware) {
    const sheet = corrections.names.get(drawing.mark?.subject ?? "") ?? drawing.name;
    for (const { name, place } of readDrawnHardware(drawing, {})?.rows ?? []) {
      if (name !== null) places.set(rowKey(name), { ...place, sheet });
    }
  }
  return findings.map((finding) => {
    const place = places.get(about.get(finding) ?? "");
    return place === undefined ? finding : { ...finding, place };
  });
}

/** The drawings of a take-off at once. */
export const takeOffDrawings = (
  takeOff: WorkbookTakeOff,
  settings: Settings,
  isIn?: IsIn,
): readonly Drawing[] => finish(drawTakeOff(takeOff, settings, isIn));

/** Draws and writes them. Error: as in `writeDrawings`. */
export const writeTakeOff = (
  workbook: Workbook,
  takeOff: WorkbookTakeOff,
  settings: Settings,
  options: WriteOptions = {},
): Promise<Result<readonly WrittenSheet[], WorkbookFault>> =>
  writeDrawings(workbook, takeOff, takeOffDrawings(takeOff, settings), options);

/**
 * Writes the drawings of a take-off, and keeps what was typed on the hardware sheets.
 *
 * Error: the host refused, and the workbook is as it was; or the sheets stand, and it refused to keep
 * the record of corrections, which the next writing does.
 */
export async function writeDrawings(
  workbook: Workbook,
  { corrections, estimate }: WorkbookTakeOff,
  drawings: readonly Drawing[],
  options: WriteOptions = {},
): Promise<Result<readonly WrittenSheet[], WorkbookFault>> {
  const written = await workbook.write(drawings, options);
  if (!written.ok) return written;
  const kept = await keepCorrections(workbook, corrections, estimate, drawings, written.value);
  return kept.ok ? written : kept;
}

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
