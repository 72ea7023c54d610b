/** The profiles of an opening type's formulas along one field, all other fields being given. */
import { normalName } from "../../formulas/names";
import type { FormulaNode } from "../../formulas/tree";
import { isFormulaError, type FormulaValue } from "../../formulas/value";
import { isPieces } from "../../base/units";
import { chartLookup } from "../../kitbook/chart";
import type { BookFormula, CompiledSize, KitBook, OpeningType } from "../../kitbook/kitBook";
import { asUnit } from "../../takeoff/takeOffType";
import { meets, meetsSteps } from "./lines";
import { nodeProfile, type Sight } from "./nodeProfile";
import {
  combine,
  constantProfile,
  courseAt,
  numberProfile,
  same,
  unclear,
  type Combination,
  type Domain,
  type Profile,
} from "./profile";

export type TypeProfiles = {
  /** What a part of a formula comes to; `text` is the whole formula's. */
  readonly ofNode: (text: string, node: FormulaNode) => Profile;
  /** What a formula of the type comes to. */
  readonly of: (formula: BookFormula) => Profile;
  /** The same, with an error wherever the answer is no whole number from zero up. */
  readonly ofCount: (formula: BookFormula) => Profile;
  /** Whether a formula is above zero. */
  readonly isAboveZero: (formula: BookFormula) => Profile;
};

/** `values` are the fields by slot; the one in `slot` is the number that runs. */
export function typeProfiles(
  book: KitBook,
  type: OpeningType,
  values: readonly FormulaValue[],
  slot: number,
  domain: Domain,
): TypeProfiles {
  const charts = new Map(book.charts.map((chart) => [normalName(chart.name), chart]));
  const slots = new Map(type.slots.map(({ name }, index) => [name, index]));
  const sizes = new Map(type.sizes.map((size) => [size.slot, size]));
  const known = new Map<string | number, Profile>();
  const numbersOf = (name: string, way: "down" | "across"): readonly number[] =>
    (charts.get(normalName(name))?.entries ?? []).flatMap((entry) => {
      const key = entry[way];
      return typeof key === "number" ? [key] : [];
    });
  const lookups = new Map(book.charts.map((chart) => [normalName(chart.name), chartLookup(chart)]));

  const sight: Sight = {
    domain,
    profileOf: (name) => ofSlot(slots.get(name)),
    chart: (name) => lookups.get(normalName(name)),
    chartKeys: (name) => ({ down: numbersOf(name, "down"), across: numbersOf(name, "across") }),
  };
  const remember = (key: string | number, make: () => Profile): Profile => {
    const profile = known.get(key) ?? make();
    known.set(key, profile);
    return profile;
  };
  const ofSlot = (index: number | undefined): Profile => {
    if (index === undefined) return constantProfile(null);
    if (index === slot) return numberProfile;
    const size = sizes.get(index);
    if (size === undefined) return constantProfile(values[index] ?? null);
    return remember(index, () => combine([of(size.formula)], unitOf(size), domain));
  };
  const of = ({ text, compiled }: BookFormula): Profile =>
    remember(text, () => nodeProfile(compiled.text, compiled.formula.tree, sight));
  return {
    ofNode: (text, node) => nodeProfile(text, node, sight),
    of,
    ofCount: (formula) => combine([of(formula)], whole, domain),
    isAboveZero: (formula) => combine([of(formula)], aboveZero, domain),
  };
}

/** A value checked by `check`, which a line passes only where it meets a whole number. */
const checkedWhole = (check: (value: FormulaValue) => FormulaValue): Combination => ({
  cutsIn: ([course], stretch) => (course?.kind === "line" ? meetsSteps(course, 1, 0, stretch) : []),
  courseIn: ([course = unclear], { from, to }) => {
    const value = courseAt(course, (from + to) / 2);
    return value === undefined ? unclear : same(check(value));
  },
  valueAt: ([value]) => (value === undefined ? undefined : check(value)),
});

const whole: Combination = checkedWhole((value) =>
  isFormulaError(value) || (typeof value === "number" && isPieces(value)) ? value : "not whole",
);

function unitOf(size: CompiledSize): Combination {
  if (size.unit === "count") return checkedWhole((value) => asUnit(size, value));
  return {
    cutsIn: () => [],
    courseIn: ([course = unclear]) =>
      course.kind === "same" ? same(asUnit(size, course.value)) : course,
    valueAt: ([value]) => (value === undefined ? undefined : asUnit(size, value)),
  };
}

const isAbove = (value: FormulaValue): FormulaValue =>
  isFormulaError(value) ? value : typeof value === "number" && value > 0;

const aboveZero: Combination = {
  cutsIn: ([course]) => (course?.kind === "line" ? meets(course, 0) : []),
  courseIn: ([course = unclear], { from, to }) => {
    const value = courseAt(course, (from + to) / 2);
    return value === undefined ? unclear : same(isAbove(value));
  },
  valueAt: ([value]) => (value === undefined ? undefined : isAbove(value)),
};
