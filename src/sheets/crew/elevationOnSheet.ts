/** The picture of an opening at a place of a sheet. */
import type { PackedOpening } from "../../core/bags/bags";
import type { Picture } from "../../core/base/picture";
import type { Inches } from "../../core/base/units";
import { drawElevation } from "../../core/elevation/drawElevation";
import { elevationPicture, paperFrame } from "../../core/elevation/elevationPicture";
import { handWords } from "../../core/elevation/elevationWords";

export type OpeningPicture = {
  readonly picture: Picture;
  /** What stands below it: from where it is seen and which hand it shows. */
  readonly words: string;
};

/** As large as a packing list has room for; `less` is how many points it is to be lower than that. */
export function openingPicture(
  opening: PackedOpening,
  show: (length: Inches) => string,
  less = 0,
): OpeningPicture {
  const elevation = drawElevation(opening);
  return {
    picture: elevationPicture(elevation, show, { ...paperFrame, height: paperFrame.height - less }),
    words: `Drawn to scale, closed, seen from the side where the crew stands. ${handWords(elevation)}.`,
  };
}
