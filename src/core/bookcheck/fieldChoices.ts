/** The values of a field that can make a difference to an opening type, from its formulas. */
import { normalName } from "../formulas/names";
import { childrenOf, type FormulaNode } from "../formulas/tree";
import { missingError, type FormulaValue } from "../formulas/value";
import type { KitBook, OpeningType } from "../kitbook/kitBook";
import { formulasOf } from "../kitbook/typeFormulas";

export type FieldChoices = {
  readonly slot: number;
  readonly name: string;
  readonly label: string;
  /** A number that can be anything: `values` are only some of interest. */
  readonly isNumber: boolean;
  readonly values: readonly FormulaValue[];
  /** Whether the values stand for all that could be typed: any other does the same as one of them. */
  readonly isWhole: boolean;
};

/** A text that no book compares with. */
const otherText = "something else";

/** Sizes in inches that doors have, where a formula tells none. */
const usualLengths = [24, 36, 48, 60, 72, 84, 96, 108, 120, 144, 192];

/** The choices of the fields in `slots` that any formula of the type reads. */
export function fieldChoices(
  book: KitBook,
  type: OpeningType,
  slots: readonly number[],
): readonly FieldChoices[] {
  const trees = formulasOf(type).map(({ compiled }) => compiled.formula.tree);
  const numbers = numbersIn(book, trees);
  return slots.flatMap((slot): readonly FieldChoices[] => {
    const field = book.fields[slot];
    if (field === undefined) return [];
    const { name, label, kind } = field;
    const found = { slot, name, label };
    switch (kind) {
      case "length":
        return [
          { ...found, isNumber: true, isWhole: false, values: [missingError(label), ...numbers] },
        ];
      case "number":
        return [{ ...found, isNumber: true, isWhole: false, values: [1, 2, 3, 10, ...numbers] }];
      case "yesNo":
        return [{ ...found, isNumber: false, isWhole: true, values: [true, false, null] }];
      case "text":
      case "found": {
        const use = textUse(book, trees, name);
        const texts: readonly FormulaValue[] = [...use.texts, otherText, null];
        const isText = kind === "text";
        return [
          {
            ...found,
            isNumber: false,
            isWhole: isText && use.onlyCompared,
            values: isText ? texts : [...texts, true, false, ...numbers],
          },
        ];
      }
    }
  });
}

export function* nodesIn(node: FormulaNode): Generator<FormulaNode, void, undefined> {
  yield node;
  for (const child of childrenOf(node)) yield* nodesIn(child);
}

/** Numbers above zero that stand in formulas and as keys of charts, on both sides of each. */
function numbersIn(book: KitBook, trees: readonly FormulaNode[]): readonly number[] {
  const numbers = new Set(usualLengths);
  for (const tree of trees) {
    for (const node of nodesIn(tree)) {
      // A leaf may be half of its opening.
      if (node.kind === "number" && node.value > 0)
        for (const times of [1, 2]) numbers.add(node.value * times);
    }
  }
  for (const { entries } of book.charts) {
    for (const { down, across } of entries) {
      for (const key of [down, across]) if (typeof key === "number" && key > 0) numbers.add(key);
    }
  }
  return [...numbers]
    .toSorted((one, other) => one - other)
    .flatMap((number) => [number - 1 / 64, number, number + 1 / 8]);
}

type TextUse = { readonly texts: readonly string[]; readonly onlyCompared: boolean };

/** The texts that stand near a field, and whether it is used in no other way than compared with texts. */
function textUse(book: KitBook, trees: readonly FormulaNode[], name: string): TextUse {
  const texts = new Set<string>();
  let onlyCompared = true;
  const isField = (node: FormulaNode | null | undefined): boolean =>
    node?.kind === "name" && node.name === name;
  for (const tree of trees) {
    if (![...nodesIn(tree)].some(isField)) continue;
    if (isField(tree)) onlyCompared = false;
    for (const node of nodesIn(tree)) {
      if (node.kind === "text") texts.add(node.value);
      if (node.kind === "chart") {
        const wanted = normalName(node.chart);
        const chart = book.charts.find((known) => normalName(known.name) === wanted);
        for (const { down, across } of chart?.entries ?? []) {
          for (const key of [down, across]) if (typeof key === "string") texts.add(key);
        }
      } else if (childrenOf(node).some(isField) && !comparesTexts(node, isField)) {
        onlyCompared = false;
      }
    }
  }
  return { texts: [...texts], onlyCompared };
}

/** Whether the node only compares the field with texts that are written out, or asks whether it is blank. */
function comparesTexts(node: FormulaNode, isField: (node: FormulaNode) => boolean): boolean {
  const isText = (part: FormulaNode): boolean => part.kind === "text";
  if (node.kind === "binary" && (node.operator === "=" || node.operator === "<>")) {
    return [node.left, node.right].every((part) => isField(part) || isText(part));
  }
  if (node.kind !== "call") return false;
  if (node.function === "ISBLANK") return true;
  if (node.function !== "SWITCH") return false;
  const [value, ...rest] = node.arguments;
  const cases = rest.filter((_, at) => at % 2 === 0 && at < rest.length - 1);
  return value !== undefined && isField(value) && cases.every(isText) && !rest.some(isField);
}
