/** What can be wrong with a formula's text (a fault) and with its value (an error), in plain words. */
import type { CellPlace } from "../base/cell";
import {
  fillPlaces,
  makeFinding,
  type Finding,
  type FindingDetails,
  type FindingTable,
} from "../base/finding";
import type { FormulaError, FormulaErrorCode } from "./value";

/** `{at}` is the character counted from one; `{piece}` the text there; `{hint}` may be empty. */
export const formulaFindings = {
  "formula-empty": {
    level: "stop",
    says: "There is no formula here.",
    todo: "Type a number, a name or a formula.",
  },
  "formula-too-long": {
    level: "stop",
    says: "The formula has {count} characters; {most} is the most.",
    todo: "Split it: give a part of it a name of its own in the sizes.",
  },
  "formula-too-deep": {
    level: "stop",
    says: "Brackets, functions and signs stand more than {most} deep at character {at}.",
    todo: "Split the formula: give a part of it a name of its own in the sizes.",
  },
  "formula-too-many-parts": {
    level: "stop",
    says: "The formula has more than {most} numbers, names and operators.",
    todo: "Split it: give a part of it a name of its own in the sizes.",
  },
  "formula-character": {
    level: "stop",
    says: 'The character "{piece}" at character {at} means nothing in a formula.',
    todo: "Take it out{hint}.",
  },
  "formula-text-open": {
    level: "stop",
    says: "The text that starts with a quote at character {at} has no closing quote.",
    todo: 'Close it with ". An inch mark must follow its number directly, as in 60".',
  },
  "formula-bracket-name-open": {
    level: "stop",
    says: "The name that starts with [ at character {at} has no closing ].",
    todo: "Write the heading between square brackets, such as [Post height].",
  },
  "formula-number": {
    level: "stop",
    says: 'The number "{piece}" at character {at} is too large.',
    todo: "Write a smaller number.",
  },
  "formula-length-ambiguous": {
    level: "stop",
    says: '"{piece}" at character {at} can be read in two ways.',
    todo: "Write {one} for {oneMeans}, or {other} for {otherMeans}.",
  },
  "formula-length-unclear": {
    level: "stop",
    says: '"{piece}" at character {at} is not a length: {why}.',
    todo: "Write {one}.",
  },
  "formula-value-expected": {
    level: "stop",
    says: "A number, a name, a text or a function is missing at character {at}, before {what}.",
    todo: "Write what is missing there, or take out what stands before it.",
  },
  "formula-operator-expected": {
    level: "stop",
    says: 'At character {at} "{piece}" follows directly on a value.',
    todo: "Put an operator such as + * or & between them.{hint}",
  },
  "formula-bracket-open": {
    level: "stop",
    says: "The bracket ( at character {at} is never closed.",
    todo: "Add a ) where it should end.",
  },
  "formula-bracket-extra": {
    level: "stop",
    says: "The bracket ) at character {at} closes nothing.",
    todo: "Take it out, or add a ( before it.",
  },
  "formula-separator": {
    level: "stop",
    says: 'The "{piece}" at character {at} stands outside a function.',
    todo: "Separators belong between the arguments of a function; a decimal point is a full stop.",
  },
  "formula-comparison-chained": {
    level: "stop",
    says: "Two comparisons in a row at character {at}: a spreadsheet would compare TRUE or FALSE with a number.",
    todo: "Write AND(low <= x, x <= high), or put brackets around the first comparison.",
  },
  "formula-function-unknown": {
    level: "stop",
    says: 'There is no function "{piece}" (character {at}).',
    todo: "{hint}",
  },
  "formula-arguments": {
    level: "stop",
    says: "{piece} at character {at} has {count}, but takes {takes}.",
    todo: "Write {signature}.",
  },
  "formula-argument-empty": {
    level: "stop",
    says: "There is nothing between the separators at character {at}.",
    todo: 'Write the argument; nothing is 0, and no text is "".',
  },
  "formula-chart-name": {
    level: "stop",
    says: "CHART at character {at} does not start with the name of a chart in quotes.",
    todo: 'Write CHART("name of the chart", value down, value across).',
  },
  "formula-name-unknown": {
    level: "stop",
    says: 'There is no size or field "{piece}" (character {at}).',
    todo: "{hint}",
  },
  "formula-chart-unknown": {
    level: "stop",
    says: 'There is no chart "{piece}" (character {at}).',
    todo: "{hint}",
  },
  "formula-value-missing": {
    level: "stop",
    says: "{message}",
    todo: "Fill in the value that is missing.",
  },
  "formula-value-wrong": {
    level: "stop",
    says: "{message}",
    todo: "Correct the value or the formula.",
  },
  "formula-divided-by-zero": {
    level: "stop",
    says: "{message}",
    todo: "Correct the value that is zero, or ask for it with IF first.",
  },
  "formula-no-case": {
    level: "stop",
    says: "{message}",
    todo: "Add a case for this value, or a last one for all others.",
  },
  "formula-number-impossible": {
    level: "stop",
    says: "{message}",
    todo: "Correct the value or the formula.",
  },
  "formula-name-empty": {
    level: "stop",
    says: "{message}",
    todo: "Correct the size of that name first.",
  },
  "formula-chart-entry": {
    level: "stop",
    says: "{message}",
    todo: "Ask the supplier, and add the entry to the chart if there is such a part.",
  },
  "formula-cell-error": {
    level: "stop",
    says: "{message}",
    todo: "Correct the cell that shows the error.",
  },
} as const satisfies FindingTable;

type FormulaFindingCode = keyof typeof formulaFindings;

/** The finding that tells of an error's code. */
export const errorFindingCodes = {
  missing: "formula-value-missing",
  value: "formula-value-wrong",
  div0: "formula-divided-by-zero",
  na: "formula-no-case",
  num: "formula-number-impossible",
  name: "formula-name-empty",
  chart: "formula-chart-entry",
  cell: "formula-cell-error",
} as const satisfies Readonly<Record<FormulaErrorCode, FormulaFindingCode>>;

type ErrorFindingCode = (typeof errorFindingCodes)[FormulaErrorCode];

/** Stable codes of what can be wrong with a formula's text. */
export type FormulaFaultCode = Exclude<FormulaFindingCode, ErrorFindingCode>;

/** Why a formula cannot be used. */
export type FormulaFault = {
  readonly code: FormulaFaultCode;
  /** The first character at fault (from zero) in the formula as typed; its length at the end. */
  readonly position: number;
  /** The piece of the formula at fault; empty at its end. */
  readonly piece: string;
  /** What is wrong and what to do, in plain words. */
  readonly message: string;
};

/** A fault at `position`; `values` fill the message's places besides `{at}` and `{piece}`. */
export function formulaFault(
  code: FormulaFaultCode,
  position: number,
  piece: string,
  values: Readonly<Record<string, string | number>> = {},
): FormulaFault {
  const { says, todo } = formulaFindings[code];
  const message = fillPlaces(`${says} ${todo}`, { at: position + 1, piece, ...values });
  return { code, position, piece, message };
}

/** The fault as a finding about the formula `text` in the cell `place`. */
export const faultFinding = (
  fault: FormulaFault,
  text: string,
  place: CellPlace | null,
): Finding => ({
  code: fault.code,
  level: formulaFindings[fault.code].level,
  place,
  found: text,
  message: fault.message,
});

/** An error that a formula answered, as a finding; `details` say where and about which opening. */
export const errorFinding = (error: FormulaError, details: FindingDetails): Finding =>
  makeFinding(formulaFindings, errorFindingCodes[error.code], {
    ...details,
    values: { message: error.message, ...details.values },
  });
