/** Lines: where they meet each other, and where they meet the steps of a rounding. */
import { asNumber, type Site } from "../../formulas/coerce";
import { isFormulaError } from "../../formulas/value";
import { line, type Course, type Domain } from "./profile";

/** A course that is a number: a line, or a number that stays the same. */
export type NumberCourse = { readonly slope: number; readonly atZero: number };

/** The operands of an operation as numbers; `null` for one that is none. */
export type Numbers = readonly (NumberCourse | null)[];

/** The course as a number, read as a formula reads it; `null` for an error, a text and what is unclear. */
export function numberCourse(course: Course | undefined, site: Site): NumberCourse | null {
  if (course === undefined || course.kind === "unclear") return null;
  if (course.kind === "line") return course;
  const number = asNumber(course.value, site);
  return isFormulaError(number) ? null : { slope: 0, atZero: number };
}

export const courseOf = ({ slope, atZero }: NumberCourse): Course => line(slope, atZero);

export const plus = (one: NumberCourse, other: NumberCourse, times = 1): NumberCourse => ({
  slope: one.slope + times * other.slope,
  atZero: one.atZero + times * other.atZero,
});

export const scaled = ({ slope, atZero }: NumberCourse, times: number): NumberCourse => ({
  slope: slope * times,
  atZero: atZero * times,
});

/** Where the line is `height`; none where it is level. */
export const meets = ({ slope, atZero }: NumberCourse, height: number): readonly number[] =>
  slope === 0 ? [] : [(height - atZero) / slope];

export const meeting = (one: NumberCourse, other: NumberCourse): readonly number[] =>
  meets(plus(one, other, -1), 0);

/** More steps than this within one stretch are not worked out one by one. */
const mostSteps = 20_000;

/**
 * Where the line meets `offset` and every multiple of `step` from there; `null` where that is too
 * often. A level line meets none.
 */
export function meetsSteps(
  course: NumberCourse,
  step: number,
  offset: number,
  { from, to }: Domain,
): readonly number[] | null {
  if (course.slope === 0) return [];
  const ends = [from, to].map((end) => (course.slope * end + course.atZero - offset) / step);
  const first = Math.ceil(Math.min(...ends)) - 1;
  const last = Math.floor(Math.max(...ends)) + 1;
  if (!(last - first <= mostSteps)) return null;
  return Array.from({ length: last - first + 1 }, (_, index) => first + index).flatMap((count) =>
    meets(course, offset + count * step),
  );
}

/** The value in the middle of a stretch. */
export const middle = ({ from, to }: Domain): number => (from + to) / 2;
