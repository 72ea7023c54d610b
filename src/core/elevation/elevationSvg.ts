/** An elevation as SVG text, each place a group that a pointer can find. */
import { pictureSvg } from "../base/pictureSvg";
import type { ShowLength } from "../takeoff/describe";
import { pieceKey } from "../takeoff/partColumn";
import type { Inches } from "../base/units";
import type { Elevation, Place } from "./elevation";
import { elevationPicture, type Frame } from "./elevationPicture";

/** The picture of an opening. `data-place` of a group is the id of a place. */
export function elevationSvg(elevation: Elevation, show: ShowLength, frame?: Frame): string {
  const groupNames = new Map(elevation.places.map(({ id, name }) => [id, name]));
  return pictureSvg(elevationPicture(elevation, show, frame), { groupNames });
}

/** The places that hold an item in that size: what a line of the list lights up. */
export function placesOf(
  { places }: Elevation,
  item: string,
  size: readonly Inches[],
): readonly Place[] {
  const key = pieceKey(item, size);
  return places.filter(({ contents }) =>
    contents.some((each) => pieceKey(each.item, each.size) === key),
  );
}
