/**
 * How a value runs along one number: exact for everything made of lines and steps.
 *
 * The number line from `from` to `to` is cut at some points. At a cut the value is known by itself;
 * between two cuts it is one line, one value that stays the same, or unclear.
 */
import { showSame } from "../../formulas/rounding";
import { isFormulaError, type FormulaValue } from "../../formulas/value";

/** A value on an open stretch between two cuts. A line goes up or down: its slope is not 0. */
export type Course =
  | { readonly kind: "line"; readonly slope: number; readonly atZero: number }
  | { readonly kind: "same"; readonly value: FormulaValue }
  /** A curve, or a text that changes with the number: only trying tells. */
  | { readonly kind: "unclear" };

export type Domain = { readonly from: number; readonly to: number };

export type Profile = {
  /** Ascending, inside the domain. */
  readonly cuts: readonly number[];
  /** The value at each cut; `undefined` where it is unclear. */
  readonly at: readonly (FormulaValue | undefined)[];
  /** One more than there are cuts. */
  readonly between: readonly Course[];
};

export const unclear: Course = { kind: "unclear" };

export const same = (value: FormulaValue): Course => ({ kind: "same", value });

/** A line, or the value that stays the same where the slope is 0. */
export const line = (slope: number, atZero: number): Course =>
  slope === 0 ? same(atZero) : { kind: "line", slope, atZero };

export const constantProfile = (value: FormulaValue): Profile => ({
  cuts: [],
  at: [],
  between: [same(value)],
});

/** The number itself. */
export const numberProfile: Profile = { cuts: [], at: [], between: [line(1, 0)] };

/** The value of a course at a point of its stretch; `undefined` where it is unclear. */
export function courseAt(course: Course, point: number): FormulaValue | undefined {
  if (course.kind === "unclear") return undefined;
  return course.kind === "same" ? course.value : course.slope * point + course.atZero;
}

/** The value at any point of the domain; `undefined` where it is unclear. */
export function profileAt({ cuts, at, between }: Profile, point: number): FormulaValue | undefined {
  const next = cuts.findIndex((cut) => cut >= point);
  if (next >= 0 && cuts[next] === point) return at[next];
  return courseAt(between[next < 0 ? cuts.length : next] ?? unclear, point);
}

/** What a combination of values does on a stretch on which each of them has one course. */
export type Combination = {
  /** The points inside at which the combination may change its course. */
  readonly cutsIn: (courses: readonly Course[], stretch: Domain) => readonly number[] | null;
  /** Its course on a stretch without such points. */
  readonly courseIn: (courses: readonly Course[], stretch: Domain) => Course;
  readonly valueAt: (values: readonly (FormulaValue | undefined)[]) => FormulaValue | undefined;
};

/** More cuts than this on one value make it unclear: nobody would read such a table. */
const mostCuts = 20_000;

/** Values put together along the number. `cutsIn` answers `null` where there are too many to count. */
export function combine(
  parts: readonly Profile[],
  { cutsIn, courseIn, valueAt }: Combination,
  domain: Domain,
): Profile {
  const drafts: Draft = { cuts: [], at: [], between: [] };
  let from = domain.from;
  for (const { to, courses, values } of stretchesOf(parts, domain)) {
    const stretch = { from, to };
    const inside = drafts.cuts.length > mostCuts ? null : cutsIn(courses, stretch);
    if (inside === null) drafts.between.push(unclear);
    else addStretch(drafts, courses, stretch, inside, { courseIn, valueAt });
    if (values !== null) addCut(drafts, to, valueAt(values));
    from = to;
  }
  return simplified(drafts);
}

type Draft = { cuts: number[]; at: (FormulaValue | undefined)[]; between: Course[] };

function addStretch(
  drafts: Draft,
  courses: readonly Course[],
  stretch: Domain,
  inside: readonly number[],
  { courseIn, valueAt }: Omit<Combination, "cutsIn">,
): void {
  let from = stretch.from;
  for (const cut of distinct(inside, stretch)) {
    drafts.between.push(courseIn(courses, { from, to: cut }));
    addCut(drafts, cut, valueAt(courses.map((course) => courseAt(course, cut))));
    from = cut;
  }
  drafts.between.push(courseIn(courses, { from, to: stretch.to }));
}

function addCut(drafts: Draft, cut: number, value: FormulaValue | undefined): void {
  drafts.cuts.push(cut);
  drafts.at.push(value);
}

/** Ascending, each once, and really inside: points that show the same number are one point. */
function distinct(points: readonly number[], { from, to }: Domain): readonly number[] {
  const found: number[] = [];
  let last = from;
  for (const point of points.toSorted((one, other) => one - other)) {
    if (point <= last || point >= to || showSame(point, last) || showSame(point, to)) continue;
    found.push(point);
    last = point;
  }
  return found;
}

type Stretch = {
  readonly to: number;
  readonly courses: readonly Course[];
  /** The parts' values at `to`; `null` at the end of the domain. */
  readonly values: readonly (FormulaValue | undefined)[] | null;
};

/** The stretches between the cuts of any part, from left to right. */
function* stretchesOf(parts: readonly Profile[], { to: end }: Domain): Generator<Stretch> {
  const next = parts.map(() => 0);
  for (;;) {
    const cut = Math.min(...parts.map(({ cuts }, part) => cuts[next[part] ?? 0] ?? Infinity));
    const courses = parts.map(({ between }, part) => between[next[part] ?? 0] ?? unclear);
    if (cut === Infinity) {
      yield { to: end, courses, values: null };
      return;
    }
    const values = parts.map(({ cuts, at }, part) => {
      const index = next[part] ?? 0;
      const own = cuts[index];
      if (own === undefined || !(own === cut || showSame(own, cut))) {
        return courseAt(courses[part] ?? unclear, cut);
      }
      next[part] = index + 1;
      return at[index];
    });
    yield { to: cut, courses, values };
  }
}

/** Without the cuts at which nothing happens. */
function simplified({ cuts, at, between }: Draft): Profile {
  const kept: Draft = { cuts: [], at: [], between: [between[0] ?? unclear] };
  for (const [index, cut] of cuts.entries()) {
    const before = kept.between.at(-1) ?? unclear;
    const after = between[index + 1] ?? unclear;
    const value = at[index];
    const through = courseAt(before, cut);
    const goesOn =
      sameCourse(before, after) &&
      value !== undefined &&
      through !== undefined &&
      sameOutcome(value, through);
    if (goesOn) continue;
    addCut(kept, cut, value);
    kept.between.push(after);
  }
  return kept;
}

function sameCourse(one: Course, other: Course): boolean {
  if (one.kind === "same" && other.kind === "same") return sameOutcome(one.value, other.value);
  return (
    one.kind === "line" &&
    other.kind === "line" &&
    one.slope === other.slope &&
    one.atZero === other.atZero
  );
}

/** Whether two values are the same answer: numbers that show the same, errors of one cause. */
export function sameOutcome(one: FormulaValue, other: FormulaValue): boolean {
  if (typeof one === "number" && typeof other === "number") return showSame(one, other);
  if (isFormulaError(one) || isFormulaError(other)) {
    return (
      isFormulaError(one) &&
      isFormulaError(other) &&
      one.code === other.code &&
      one.position === other.position &&
      one.formula === other.formula
    );
  }
  return one === other;
}
