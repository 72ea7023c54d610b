/** Parts that go in no bag: panels, track and other long pieces that are carried one by one. */
import { inches, type Inches } from "../base/units";

/** A piece with a side of this length or more goes beside the bag. Common practice, no source. */
export const bigPartFrom = inches(36);

/** Whether a piece of that size is carried by itself. One without a size never is. */
export const isBigPart = (size: readonly Inches[]): boolean =>
  size.some((length) => length >= bigPartFrom);
