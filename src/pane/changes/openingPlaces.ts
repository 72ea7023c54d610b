/** Where the openings that are counted now stand in the workbook. */
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import type { CellPlace } from "../../core/base/cell";
import type { IssuedOpening } from "../../core/revisions/issue";
import { jobKey } from "../../core/takeoff/takeOff";

/** The cell of a field, or the row's first where the field has none; `null` where there is no such opening now. */
export type PlaceOf = (
  opening: Pick<IssuedOpening, "job" | "mark">,
  field?: string,
) => CellPlace | null;

/** Of two openings with one mark the first counts. */
export function openingPlaces({ estimate }: WorkbookTakeOff): PlaceOf {
  const key = (job: string, mark: string): string => `${jobKey(job)}\n${jobKey(mark)}`;
  const places = new Map<string, (field: string) => CellPlace>();
  for (const { job, takeOff, uncounted } of estimate.jobs) {
    const all = [
      ...takeOff.openings.map(({ mark, place, places: fields }) => ({
        mark,
        placeOf: (field: string) => fields[field] ?? place,
      })),
      ...uncounted.map(({ mark, place }) => ({ mark, placeOf: () => place })),
    ];
    for (const { mark, placeOf } of all) {
      if (!places.has(key(job, mark))) places.set(key(job, mark), placeOf);
    }
  }
  return ({ job, mark }, field = "") => places.get(key(job, mark))?.(field) ?? null;
}
