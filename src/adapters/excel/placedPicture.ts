import type { Anchor } from "./corners";

/** A picture that is on its sheet under `name`, and the cell and size that it is to have. */
export type PlacedPicture = Anchor & {
  readonly name: string;
  /** Points. */
  readonly width: number;
  readonly height: number;
};
