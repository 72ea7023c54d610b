/** What is bought, kept and counted: an item in one size. */
import { inches, type Inches } from "../base/units";
import { pieceKey } from "../takeoff/partColumn";

export type SizedItem = {
  readonly item: string;
  /** None; one length for what is cut or sold by length; width and height for what has both. */
  readonly size: readonly Inches[];
};

/** A length as sizes hold it: to twelve digits, so that two ways to the same size make one. */
export const sizeLength = (length: Inches): Inches => inches(Number(length.toPrecision(12)));

/** The same for the same item, in any case, in the same size. */
export const sizedKey = ({ item, size }: SizedItem): string => pieceKey(item.trim(), size);

/** Whether both are of one item, in whatever size. */
export const isSameItem = (a: Pick<SizedItem, "item">, b: Pick<SizedItem, "item">): boolean =>
  itemKey(a) === itemKey(b);

/** The same for the same item, in any case. */
export const itemKey = ({ item }: Pick<SizedItem, "item">): string => sizedKey({ item, size: [] });

/** How a size is written in what people read; the empty text for none. */
export type ShowSize = (size: readonly Inches[]) => string;

/** `TRACK 20'-0"`, or the item alone. */
export const sizedName = ({ item, size }: SizedItem, show: ShowSize): string =>
  size.length === 0 ? item : `${item} ${show(size)}`;

/** By item, then by size, so that lists do not depend on the order in which jobs came. */
export const compareSized = (a: SizedItem, b: SizedItem): number =>
  compareText(a.item, b.item) ||
  a.size.length - b.size.length ||
  a.size.reduce((order, length, index) => order || length - (b.size[index] ?? 0), 0);

/** By code units, so that every machine agrees. */
export const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
