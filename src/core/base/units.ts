/**
 * Numbers that carry their unit in the type. A bare `number` stops at the reader.
 *
 * Each maker throws `RangeError` on a value that cannot be of that unit: by then the value has been
 * checked, so a wrong one is a programmer's fault and not a user's.
 */
declare const unit: unique symbol;
type Unit<Name extends string> = number & { readonly [unit]: Name };

/** A length in inches, as the double nearest to the exact length. May be fractional. */
export type Inches = Unit<"Inches">;
/** Whole single items, zero or more. */
export type Pieces = Unit<"Pieces">;
/** Whole minor currency units (cents), positive or negative. */
export type Cents = Unit<"Cents">;
/** Ten-thousandths of the currency's major unit: the precision of a unit cost. Whole, zero or more. */
export type TenThousandths = Unit<"TenThousandths">;
/** Minutes of one person's work, zero or more; may be fractional. */
export type Minutes = Unit<"Minutes">;
/** Avoirdupois pounds, zero or more; may be fractional. */
export type Pounds = Unit<"Pounds">;

const isWholeFrom = (least: number, value: number): boolean =>
  Number.isSafeInteger(value) && value >= least;

export const isPieces = (value: number): value is Pieces => isWholeFrom(0, value);
export const isCents = (value: number): value is Cents => Number.isSafeInteger(value);
export const isTenThousandths = (value: number): value is TenThousandths => isWholeFrom(0, value);

/** @throws RangeError when `value` is not finite. */
export function inches(value: number): Inches {
  if (Number.isFinite(value)) return value as Inches;
  throw new RangeError(`Not a length in inches: ${value}`);
}

/** @throws RangeError when `value` is not a whole number from zero up. */
export function pieces(value: number): Pieces {
  if (isPieces(value)) return value;
  throw new RangeError(`Not a count of pieces: ${value}`);
}

/** @throws RangeError when `value` is not a whole number that a double holds exactly. */
export function cents(value: number): Cents {
  if (isCents(value)) return value;
  throw new RangeError(`Not an amount in cents: ${value}`);
}

/** @throws RangeError when `value` is not a whole number from zero up. */
export function tenThousandths(value: number): TenThousandths {
  if (isTenThousandths(value)) return value;
  throw new RangeError(`Not a unit cost in ten-thousandths: ${value}`);
}

/** @throws RangeError when `value` is negative or not finite. */
export function minutes(value: number): Minutes {
  if (Number.isFinite(value) && value >= 0) return value as Minutes;
  throw new RangeError(`Not a number of minutes: ${value}`);
}

/** @throws RangeError when `value` is negative or not finite. */
export function pounds(value: number): Pounds {
  if (Number.isFinite(value) && value >= 0) return value as Pounds;
  throw new RangeError(`Not a weight in pounds: ${value}`);
}
