/**
 * Whether a row of the book can do anything at all, proven from its formulas.
 *
 * A proof goes over every value of the fields behind the row: yes, no and blank, each text that is
 * compared with, and one number along all its profile. Rows with two numbers are proven only where one
 * part of an AND, or some with the same number, can never hold by themselves.
 */
import { fieldsBehind } from "../takeoff/take";
import { isTrue } from "../takeoff/truth";
import { isFormulaError, missingError, type FormulaValue } from "../formulas/value";
import type { FormulaNode } from "../formulas/tree";
import type { BookFormula, KitBook, OpeningType } from "../kitbook/kitBook";
import { fieldChoices, nodesIn, type FieldChoices } from "./fieldChoices";
import {
  combine,
  courseAt,
  same,
  unclear,
  type Combination,
  type Profile,
} from "./profile/profile";
import { meets, middle } from "./profile/lines";
import { typeProfiles, type TypeProfiles } from "./profile/typeProfile";

/** `never` is proven; `undecided` is not the same as can. */
export type Reach = "can" | "never" | "undecided";

/** Every length that an opening of a partition could have, in inches: up to 100 ft. */
export const allLengths = { from: 0, to: 1200 };

/** Combinations of words and answers gone through for one proof. */
const mostCombinations = 256;

/** Whether the part with this condition and quantity can count anything, or a limit speak. */
export function reachOf(
  book: KitBook,
  type: OpeningType,
  when: BookFormula | null,
  quantity: BookFormula | null,
): Reach {
  const formulas = [when, quantity].filter((formula) => formula !== null);
  const nodes = formulas.map((formula) => ({
    text: formula.compiled.text,
    node: formula.compiled.formula.tree,
  }));
  const slots = [...new Set(formulas.flatMap((formula) => fieldsBehind({ type }, formula)))];
  const whole = provenOver(book, type, slots, nodes, quantity !== null);
  if (whole !== "undecided" || when === null) return whole;
  return conjunctsNever(book, type, when) ? "never" : "undecided";
}

/** A condition or a quantity by its tree. */
type Piece = { readonly text: string; readonly node: FormulaNode };

/** Goes over all values of the fields, where at most one of them is a number. */
function provenOver(
  book: KitBook,
  type: OpeningType,
  slots: readonly number[],
  pieces: readonly Piece[],
  lastIsQuantity: boolean,
): Reach {
  const choices = fieldChoices(book, type, slots);
  const numbers = choices.filter(({ isNumber }) => isNumber);
  const others = choices.filter(({ isNumber }) => !isNumber);
  const combinations = others.reduce((count, { values }) => count * values.length, 1);
  if (numbers.length > 1 || combinations > mostCombinations) return "undecided";
  const [number] = numbers;
  let isUnclear = others.some(({ isWhole }) => !isWhole);
  for (const given of combinationsOf(others)) {
    for (const values of numberCases(number, given)) {
      // A slot that no field has: nothing runs, and the profile is one stretch.
      const slot = values.runs === null ? -1 : values.runs.slot;
      const profiles = typeProfiles(book, type, values.fields, slot, allLengths);
      const verdict = holdsSomewhere(profiles, pieces, lastIsQuantity);
      if (verdict === "can") return "can";
      if (verdict === "undecided") isUnclear = true;
    }
  }
  return isUnclear ? "undecided" : "never";
}

type NumberCase = {
  readonly fields: readonly FormulaValue[];
  readonly runs: FieldChoices | null;
};

/** The number given, and where it can be left out, blank. */
function numberCases(
  number: FieldChoices | undefined,
  fields: readonly FormulaValue[],
): readonly NumberCase[] {
  if (number === undefined) return [{ fields, runs: null }];
  const blank = [...fields];
  blank[number.slot] = missingError(number.label);
  return [
    { fields, runs: number },
    { fields: blank, runs: null },
  ];
}

/** Every way to choose one value of each field, by slot; blanks where nothing is chosen. */
function combinationsOf(choices: readonly FieldChoices[]): readonly (readonly FormulaValue[])[] {
  let found: FormulaValue[][] = [[]];
  for (const { slot, values } of choices) {
    found = found.flatMap((before) =>
      values.map((value) => {
        const fields = [...before];
        while (fields.length < slot) fields.push(null);
        fields[slot] = value;
        return fields;
      }),
    );
  }
  return found;
}

/** Whether all pieces hold at one point: conditions are true, the quantity is not 0. */
function holdsSomewhere(
  profiles: TypeProfiles,
  pieces: readonly Piece[],
  lastIsQuantity: boolean,
): Reach {
  const holdsAt = (value: FormulaValue, index: number): boolean => {
    if (isFormulaError(value)) return false;
    const isQuantity = lastIsQuantity && index === pieces.length - 1;
    return isQuantity ? typeof value === "number" && value > 0 : isTrue(value);
  };
  const holds = (values: readonly (FormulaValue | undefined)[]): boolean | undefined => {
    // One that certainly does not hold decides, whatever the unclear ones do.
    if (values.some((value, index) => value !== undefined && !holdsAt(value, index))) return false;
    return values.includes(undefined) ? undefined : true;
  };
  const together: Combination = {
    // A line is above zero on one side of where it meets it.
    cutsIn: (courses) =>
      courses.flatMap((course) => (course.kind === "line" ? meets(course, 0) : [])),
    courseIn: (courses, stretch) => {
      const answer = holds(courses.map((course) => courseAt(course, middle(stretch))));
      return answer === undefined ? unclear : same(answer);
    },
    valueAt: holds,
  };
  const profile = combine(
    pieces.map(({ text, node }) => profiles.ofNode(text, node)),
    together,
    allLengths,
  );
  return verdictOf(profile);
}

function verdictOf({ at, between }: Profile): Reach {
  const isTrueSomewhere =
    at.includes(true) || between.some((course) => course.kind === "same" && course.value === true);
  if (isTrueSomewhere) return "can";
  const isClear = !at.includes(undefined) && between.every(({ kind }) => kind !== "unclear");
  return isClear ? "never" : "undecided";
}

/** Whether some parts of a condition's AND that read one number, or none, can never hold together. */
function conjunctsNever(book: KitBook, type: OpeningType, when: BookFormula): boolean {
  const { text, formula } = when.compiled;
  const conjuncts = conjunctsOf(formula.tree);
  if (conjuncts.length < 2) return false;
  const read = conjuncts.map((node) => ({ node, slots: slotsBehind(type, when, node) }));
  const isNumber = (slot: number): boolean => {
    const kind = book.fields[slot]?.kind;
    return kind === "length" || kind === "number";
  };
  const numbers = new Set(read.flatMap(({ slots }) => slots.filter(isNumber)));
  return [...numbers, -1].some((number) => {
    const group = read.filter(({ slots }) =>
      slots.every((slot) => slot === number || !isNumber(slot)),
    );
    if (group.length === 0) return false;
    const slots = [...new Set(group.flatMap((conjunct) => conjunct.slots))];
    const pieces = group.map(({ node }) => ({ text, node }));
    return provenOver(book, type, slots, pieces, false) === "never";
  });
}

/** The conditions that must all hold, through any depth of AND. */
const conjunctsOf = (node: FormulaNode): readonly FormulaNode[] =>
  node.kind === "call" && node.function === "AND" ? node.arguments.flatMap(conjunctsOf) : [node];

/** The fields behind a part of a formula. */
function slotsBehind(type: OpeningType, whole: BookFormula, node: FormulaNode): readonly number[] {
  const names = new Set(
    [...nodesIn(node)].flatMap((part) => (part.kind === "name" ? [part.name] : [])),
  );
  const slots = whole.compiled.columns
    .filter(({ name }) => names.has(name))
    .map(({ slot }) => slot);
  return fieldsBehind({ type }, { ...whole, compiled: { ...whole.compiled, slots } });
}
