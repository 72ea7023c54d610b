/**
 * The functions of a formula: one typed table. Reading, help, documentation and tests use its rows.
 *
 * It is one file, although long, so that all functions stand in one place.
 *
 * Names and rules are OpenFormula's (OASIS, Open Document Format 1.3 part 4; the chapter is given for
 * each, its number from memory). There is no IFERROR on purpose: a chart without an entry, or a size
 * that was not given, must stay visible.
 */

/** One argument: its name in the signature, and what it is. */
export type FunctionArgument = { readonly name: string; readonly says: string };

export type FormulaFunction = {
  readonly arguments: readonly FunctionArgument[];
  /** How many arguments at least and at most; `most` is `null` where any number may follow. */
  readonly least: number;
  readonly most: number | null;
  /** Arguments come in pairs. */
  readonly pairs?: true;
  /** What it answers, as one sentence. */
  readonly says: string;
  readonly example: string;
  /** The chapter of OpenFormula, or where else the rule comes from. */
  readonly source: string;
};

const logical = "OpenFormula 6.15 Logical Functions";
const information = "OpenFormula 6.13 Information Functions";
const mathematical = "OpenFormula 6.16 Mathematical Functions";
const rounding = "OpenFormula 6.17 Rounding Functions";
const statistical = "OpenFormula 6.18 Statistical Functions";
const textual = "OpenFormula 6.20 Text Functions";

const value = { name: "value", says: "any value" };
const number = { name: "number", says: "a number or length" };
const text = { name: "text", says: "a text" };
const condition = { name: "condition", says: "TRUE or FALSE, or a number that is not 0" };
const digits = {
  name: "digits",
  says: "places after the decimal point; below zero for tens, hundreds …; 0 where left out",
};
const step = { name: "step", says: "the number whose multiples are wanted; 1 where left out" };

const formulaFunctions = {
  IF: {
    arguments: [
      condition,
      { name: "then", says: "the answer where the condition is true" },
      { name: "else", says: "the answer where it is false; FALSE where left out" },
    ],
    least: 2,
    most: 3,
    says: "Answers one of two values; only the one that is needed is worked out.",
    example: "IF(leaf_width <= 5', 1, 2)",
    source: logical,
  },
  IFS: {
    arguments: [condition, { name: "answer", says: "the answer where that condition is true" }],
    least: 2,
    most: null,
    pairs: true,
    says: "Answers for the first condition that is true; #N/A where none is.",
    example: "IFS(height <= 8', 3, height <= 10', 4)",
    source: "not in OpenFormula; as common spreadsheets have it",
  },
  SWITCH: {
    arguments: [
      { name: "value", says: "what is compared" },
      { name: "case", says: "a value it may equal" },
      { name: "answer", says: "the answer where it does" },
      { name: "otherwise", says: "a single last argument: the answer where no case fits" },
    ],
    least: 3,
    most: null,
    says: "Answers for the first case that equals the value; #N/A where none does and no last answer is given.",
    example: 'SWITCH(floor, "concrete", 2, "wood", 4, 0)',
    source: "not in OpenFormula; as common spreadsheets have it",
  },
  AND: {
    arguments: [condition],
    least: 1,
    most: null,
    says: "TRUE where all conditions are true; a blank counts as FALSE.",
    example: "AND(leaf_width > 5', height <= 8')",
    source: logical,
  },
  OR: {
    arguments: [condition],
    least: 1,
    most: null,
    says: "TRUE where any condition is true; a blank counts as FALSE.",
    example: 'OR(floor = "wood", floor = "concrete")',
    source: logical,
  },
  NOT: {
    arguments: [condition],
    least: 1,
    most: 1,
    says: "TRUE where the condition is false.",
    example: "NOT(tail_post)",
    source: logical,
  },
  TRUE: { arguments: [], least: 0, most: 0, says: "True.", example: "TRUE()", source: logical },
  FALSE: { arguments: [], least: 0, most: 0, says: "False.", example: "FALSE()", source: logical },
  MIN: {
    arguments: [number],
    least: 1,
    most: null,
    says: "The smallest number; blanks are passed over, and 0 is the answer where all are blank.",
    example: "MIN(width, 16')",
    source: statistical,
  },
  MAX: {
    arguments: [number],
    least: 1,
    most: null,
    says: "The largest number; blanks are passed over, and 0 is the answer where all are blank.",
    example: "MAX(width / 4, 2)",
    source: statistical,
  },
  SUM: {
    arguments: [number],
    least: 1,
    most: null,
    says: "The sum of the numbers; blanks are passed over.",
    example: 'SUM(width, 6", 6")',
    source: mathematical,
  },
  ABS: {
    arguments: [number],
    least: 1,
    most: 1,
    says: "The number without its sign.",
    example: "ABS(height - post_height)",
    source: mathematical,
  },
  MOD: {
    arguments: [number, { name: "divisor", says: "what it is divided by; not 0" }],
    least: 2,
    most: 2,
    says: "What a division leaves over, with the sign of the divisor.",
    example: "MOD(panels, 2)",
    source: mathematical,
  },
  INT: {
    arguments: [number],
    least: 1,
    most: 1,
    says: "The next whole number at or below.",
    example: 'INT(width / 16")',
    source: rounding,
  },
  ROUND: {
    arguments: [number, digits],
    least: 1,
    most: 2,
    says: "Rounds to the nearest, halves away from zero.",
    example: "ROUND(width / 3, 1)",
    source: rounding,
  },
  ROUNDUP: {
    arguments: [number, digits],
    least: 1,
    most: 2,
    says: "Rounds away from zero.",
    example: "ROUNDUP(track_length / section_length)",
    source: rounding,
  },
  ROUNDDOWN: {
    arguments: [number, digits],
    least: 1,
    most: 2,
    says: "Rounds towards zero.",
    example: "ROUNDDOWN(width / 12, 0)",
    source: rounding,
  },
  CEILING: {
    arguments: [number, step],
    least: 1,
    most: 2,
    says: "The next multiple of the step at or above; away from zero where both are below zero.",
    example: "CEILING(track_length / 10', 1)",
    source: rounding,
  },
  FLOOR: {
    arguments: [number, step],
    least: 1,
    most: 2,
    says: "The next multiple of the step at or below; towards zero where both are below zero.",
    example: 'FLOOR(width, 1")',
    source: rounding,
  },
  ISBLANK: {
    arguments: [value],
    least: 1,
    most: 1,
    says: "TRUE where nothing was typed, or a size was not given.",
    example: "ISBLANK(tail_run)",
    source: information,
  },
  ISNUMBER: {
    arguments: [value],
    least: 1,
    most: 1,
    says: "TRUE where the value is a number or length.",
    example: "ISNUMBER(lock)",
    source: information,
  },
  ISTEXT: {
    arguments: [value],
    least: 1,
    most: 1,
    says: "TRUE where the value is a text.",
    example: "ISTEXT(lock)",
    source: information,
  },
  LEN: {
    arguments: [text],
    least: 1,
    most: 1,
    says: "How many characters the text has.",
    example: "LEN(lock)",
    source: textual,
  },
  LEFT: {
    arguments: [text, { name: "count", says: "how many characters; 1 where left out" }],
    least: 1,
    most: 2,
    says: "The first characters of the text.",
    example: "LEFT(mark, 1)",
    source: textual,
  },
  RIGHT: {
    arguments: [text, { name: "count", says: "how many characters; 1 where left out" }],
    least: 1,
    most: 2,
    says: "The last characters of the text.",
    example: "RIGHT(mark, 2)",
    source: textual,
  },
  UPPER: {
    arguments: [text],
    least: 1,
    most: 1,
    says: "The text in capitals.",
    example: "UPPER(lock)",
    source: textual,
  },
  LOWER: {
    arguments: [text],
    least: 1,
    most: 1,
    says: "The text in small letters.",
    example: "LOWER(lock)",
    source: textual,
  },
  TRIM: {
    arguments: [text],
    least: 1,
    most: 1,
    says: "The text without spaces at its ends, and with single spaces inside.",
    example: "TRIM(lock)",
    source: textual,
  },
  CHART: {
    arguments: [
      { name: "chart", says: "the chart's name, in quotes" },
      { name: "down", says: "the value looked for down the first column" },
      { name: "across", says: "the value looked for across the first row; for two-way charts" },
    ],
    least: 2,
    most: 3,
    says: "The entry of a chart of the kit book; an error where it has none.",
    example: 'CHART("track plates", post_height, height)',
    source: "our own: the kit book's charts",
  },
} as const satisfies Readonly<Record<string, FormulaFunction>>;

export type FunctionName = keyof typeof formulaFunctions;

const table: Readonly<Record<FunctionName, FormulaFunction>> = formulaFunctions;

/** Every function's name, in the table's order. */
export const functionNames = Object.keys(formulaFunctions) as readonly FunctionName[];

/** The function of this name, in capitals, or `undefined`. */
export const functionNamed = (name: string): FunctionName | undefined =>
  functionNames.find((known) => known === name);

export const functionOf = (name: FunctionName): FormulaFunction => table[name];

/** How it is written: `ROUND(number, [digits])`; what may be left out is in brackets. */
export function functionSignature(name: FunctionName): string {
  const { arguments: taken, least, most } = functionOf(name);
  const shown = taken.map((argument, index) =>
    index < least ? argument.name : `[${argument.name}]`,
  );
  return `${name}(${shown.join(", ")}${most === null ? ", …" : ""})`;
}
