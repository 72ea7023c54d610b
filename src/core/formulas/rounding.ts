/**
 * Rounding as a spreadsheet shows it: a number counts as its nearest decimal of 15 significant digits,
 * so `2.1/0.7` is 3 and 1.005 has a half to round up, although no double is 1.005.
 */

/** Two numbers farther apart than this, relative to the larger, differ in their first 15 digits. */
const nearness = 1e-14;

/** The double nearest to the first 15 significant digits of `value`. Whole numbers stay as they are. */
export const snapped = (value: number): number =>
  Number.isInteger(value) ? value : Number(value.toPrecision(15));

/** Whether two finite numbers show the same 15 digits. */
export function showSame(left: number, right: number): boolean {
  if (left === right) return true;
  const size = Math.max(Math.abs(left), Math.abs(right));
  // Most numbers are far apart, and toPrecision is slow.
  if (Math.abs(left - right) > size * nearness) return false;
  return Number(left.toPrecision(15)) === Number(right.toPrecision(15));
}

/** The next whole number at or below what `value` shows: 2.9999999999999996 shows 3. */
export function showFloor(value: number): number {
  const nearest = Math.round(value);
  const near = Math.abs(value - nearest) <= Math.abs(value) * nearness;
  return near && snapped(value) === nearest ? nearest : Math.floor(value);
}

/** The next whole number at or above what `value` shows: 3.0000000000000004 shows 3. */
const showCeiling = (value: number): number => -showFloor(-value);

/** The nearest whole number to what `value`, zero or more, shows; a half goes up. */
function showRound(value: number): number {
  const below = Math.floor(value);
  const half = below + 0.5;
  if (Math.abs(value - half) <= value * nearness) return snapped(value) < half ? below : below + 1;
  return Math.round(value);
}

/** Rounds whole numbers from zero up; `scaled` applies it at any place and sign. */
type WholeRounding = (value: number) => number;

/**
 * `value` rounded at `digits` decimal places by a rule for numbers above zero, with its sign kept. Not
 * finite where the place is beyond the largest double.
 */
function scaled(value: number, digits: number, whole: WholeRounding): number {
  if (value === 0) return 0;
  const places = Math.trunc(digits);
  const power = 10 ** Math.abs(places);
  const shift = (size: number): number => (places >= 0 ? size * power : size / power);
  const size = Math.abs(value);
  const shifted = shift(size);
  // All 15 digits stand before the place: nothing is left to round.
  if (places >= 0 && shifted >= 1e15) return value;
  // Near a whole number or a half the shift could hide what the number itself shows.
  const halves = shifted * 2;
  const isNear = Math.abs(halves - Math.round(halves)) <= halves * 2 * nearness;
  const rounded = whole(isNear ? shift(snapped(size)) : shifted);
  return Math.sign(value) * (places >= 0 ? rounded / power : rounded * power);
}

/** Nearest at `digits` decimal places (below zero: tens, hundreds …), halves away from zero. */
export const roundHalfAway = (value: number, digits: number): number =>
  scaled(value, digits, showRound);

/** Away from zero at `digits` decimal places. */
export const roundUp = (value: number, digits: number): number =>
  scaled(value, digits, showCeiling);

/** Towards zero at `digits` decimal places. */
export const roundDown = (value: number, digits: number): number =>
  scaled(value, digits, showFloor);

/**
 * The multiple of `step` next above `value`; away from zero where both are below zero, as common
 * spreadsheets do (OpenFormula's CEILING goes up there). NaN where only the step is below zero. A step
 * of zero answers 0.
 */
export function ceilingTo(value: number, step: number): number {
  if (step === 0 || value === 0) return 0;
  if (step < 0 && value > 0) return NaN;
  return snapped(showCeiling(value / step) * step);
}

/**
 * The multiple of `step` next below `value`; towards zero where both are below zero. NaN where only
 * the step is below zero, or the step is zero and the value is not.
 */
export function floorTo(value: number, step: number): number {
  if (value === 0) return 0;
  if (step === 0 || (step < 0 && value > 0)) return NaN;
  return snapped(showFloor(value / step) * step);
}

/**
 * What is left of `value` after whole `divisor`s, with the divisor's sign. NaN for a divisor of zero,
 * and where there are so many whole divisors that a double has no room for what is left.
 */
export function remainder(value: number, divisor: number): number {
  const times = showFloor(value / divisor);
  if (divisor === 0 || Math.abs(times) >= 1e15) return NaN;
  const taken = times * divisor;
  return showSame(value, taken) ? 0 : value - taken;
}
