/** Where the rows of the hardware sheets stand. */
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import type { CellPlace } from "../../core/base/cell";
import { rowKey, type RowName } from "../../core/corrections/rowName";

/** The cell into which a correction of the row is typed; `null` where no sheet has the row. */
export type CorrectionPlaceOf = (name: RowName) => CellPlace | null;

/** Of two sheets with the same row, the first one counts. */
export function correctionPlaces({
  estimate,
}: Pick<WorkbookTakeOff, "estimate">): CorrectionPlaceOf {
  const places = new Map<string, CellPlace>();
  for (const { rows } of estimate.corrections.sheets) {
    for (const { name, place } of rows) {
      if (name !== null && !places.has(rowKey(name))) places.set(rowKey(name), place);
    }
  }
  return (name) => places.get(rowKey(name)) ?? null;
}
