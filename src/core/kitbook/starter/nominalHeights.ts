/**
 * Heights as trade sizes. A drawing in millimetres rounds 7 ft to 2134 mm, which is 84.016 in: compared as
 * it is, a 7 ft door would be taller than its 7 ft post and have no track plate.
 */
import { bases, type StarterSize } from "./starterRows";

const nominal = (name: string, field: string, what: string): StarterSize => ({
  name,
  formula: `ROUND(${field} * 16, 0) / 16`,
  unit: "length",
  note: `${what} to the nearest 1/16 in, so that 2134 mm is 7 ft`,
  basis: bases.assumed,
});

/** `door_nominal` and `post_nominal`; the second has no value where no post height is given. */
export const nominalHeights: readonly StarterSize[] = [
  nominal("door_nominal", "height", "door height"),
  nominal("post_nominal", "post_height", "post height"),
];
