/** The places of an item: what a line of a list lights up. */
import type { Inches } from "../base/units";
import { pieceKey } from "../takeoff/partColumn";
import type { Elevation, Place } from "./elevation";

/** The places that hold an item in that size, of one bag where `bag` names it. */
export function placesOf(
  { places }: Elevation,
  item: string,
  size: readonly Inches[],
  bag?: string,
): readonly Place[] {
  const key = pieceKey(item, size);
  return places.filter(
    (place) =>
      (bag === undefined || place.bag.toLowerCase() === bag.toLowerCase()) &&
      place.contents.some((each) => pieceKey(each.item, each.size) === key),
  );
}
