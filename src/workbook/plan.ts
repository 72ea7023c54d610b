/** Where each drawing goes, decided before anything is written and alike in every host. */
import { err, ok, type Result } from "../core/base/result";
import type { Drawing } from "./drawing";
import { sheetProtected, workbookProtected } from "./faults";
import { freeSheetName, keptSheetName, sameSheetName } from "./sheetNames";
import { sameMark } from "./sheetStamp";
import type { SheetSummary, WorkbookFault } from "./workbook";

/** A sheet that is there now. `isTouched`: it is ours, and its fingerprint is not what we wrote. */
export type StandingSheet = Pick<SheetSummary, "name" | "mark"> & {
  readonly isProtected: boolean;
  readonly isTouched: boolean;
};

/** One drawing and its place. `name` is the sheet's name afterwards, and before where it is replaced. */
export type PlannedSheet = {
  readonly drawing: Drawing;
  readonly name: string;
  readonly was: "new" | "replaced";
  /** The name under which the old sheet is to be kept, beside the new one, without its mark. */
  readonly keptAs: string | null;
};

/**
 * Plans in the order of `drawings`. New sheets go behind all others, a kept one right behind ours.
 * Of several sheets with one mark (a person copied ours) the one with the name wanted is ours, else
 * the first.
 *
 * @throws RangeError when two drawings have the same mark.
 */
export function planWriting(
  drawings: readonly Drawing[],
  standing: readonly StandingSheet[],
  structureProtected: boolean,
): Result<readonly PlannedSheet[], WorkbookFault> {
  const names = standing.map(({ name }) => name);
  const planned: PlannedSheet[] = [];
  for (const drawing of drawings) {
    if (planned.some((other) => isSameSheet(other.drawing, drawing))) {
      throw new RangeError(`Two drawings for one sheet: ${drawing.name}`);
    }
    const ours = sheetToReplace(drawing, standing);
    if (ours?.isProtected === true) return err(sheetProtected(ours.name));
    const name = ours?.name ?? freeSheetName(drawing.name, names);
    const keptAs = ours?.isTouched === true ? keptSheetName(name, names) : null;
    if (structureProtected && (ours === null || keptAs !== null)) return err(workbookProtected);
    if (ours === null) names.push(name);
    if (keptAs !== null) names.push(keptAs);
    planned.push({ drawing, name, was: ours === null ? "new" : "replaced", keptAs });
  }
  return ok(planned);
}

const isSameSheet = (one: Drawing, other: Drawing): boolean =>
  one.mark !== null && other.mark !== null && sameMark(one.mark, other.mark);

function sheetToReplace(
  { mark, name }: Drawing,
  standing: readonly StandingSheet[],
): StandingSheet | null {
  if (mark === null) return null;
  const ours = standing.filter((sheet) => sheet.mark !== null && sameMark(sheet.mark, mark));
  return ours.find((sheet) => sameSheetName(sheet.name, name)) ?? ours[0] ?? null;
}
