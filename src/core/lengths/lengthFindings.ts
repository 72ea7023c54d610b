/** What can be wrong or doubtful about a typed length, and how each is said. */
import { fillPlaces, makeFinding, type Finding, type FindingDetails } from "../base/finding";
import type { FindingTable } from "../base/finding";
import { placeInText, shortText } from "../base/typedText";

/** `stop` rows are faults: there is no length. The others are doubts: there is one, and it may be wrong. */
export const lengthFindings = {
  "length-blank": {
    level: "stop",
    says: "There is no length here.",
    todo: `Type one, such as 7'-6", 84 or 2134 mm.`,
  },
  "length-not-text-or-number": {
    level: "stop",
    says: "{found} is not a length.",
    todo: `Type one, such as 7'-6", 84 or 2134 mm.`,
  },
  "length-is-an-error": {
    level: "stop",
    says: "The cell shows the error {found}, not a length.",
    todo: "Mend its formula, or type the length.",
  },
  "length-is-a-date": {
    level: "stop",
    says: "The spreadsheet has made the date {found} of what was typed{typed}.",
    todo: "Type feet and inches with their marks, such as {example}.",
  },
  "length-text-too-long": {
    level: "stop",
    says: "This text is too long to be a length.",
    todo: `Keep notes in another column, and type only the length, such as 7'-6".`,
  },
  "length-not-understood": {
    level: "stop",
    says: "“{found}” stops making sense as a length at {stop}.",
    todo: `Type it like 7'-6 1/2", 90 1/2 or 2134 mm.`,
  },
  "length-is-two": {
    level: "stop",
    says: "“{found}” is more than one length: the second begins at {stop}.",
    todo: "Type width and height in columns of their own.",
  },
  "length-not-a-fraction": {
    level: "stop",
    says: "“{found}” has a fraction that is none at {stop}.",
    todo: `A fraction of an inch is below one, such as 83 1/2".`,
  },
  "length-inches-past-eleven": {
    level: "stop",
    says: "“{found}” looks like feet and inches, but a foot has 12 inches: see {stop}.",
    todo: `Type it with its marks, such as 7'-6", or as inches alone, such as 90.`,
  },
  "length-negative": {
    level: "stop",
    says: "“{found}” is below zero.",
    todo: "Type a length above zero.",
  },
  "length-zero": {
    level: "stop",
    says: "“{found}” is a length of zero.",
    todo: "Type a length above zero, or leave the cell blank if there is none.",
  },
  "length-too-large": {
    level: "stop",
    says: "“{found}” is too large a number for a length.",
    todo: "Check the number and its unit.",
  },
  "length-not-a-door": {
    level: "warn",
    says: "“{found}” was read as {read}, which no opening is likely to be ({least} to {most}).",
    todo: "{hint}",
  },
  "length-feet-guessed": {
    level: "warn",
    says: "“{found}” has no marks and was read as {read}.",
    todo: "Type it as {read} if that is right, and as inches alone if it is not.",
  },
  "length-many-inches": {
    level: "warn",
    says: "“{found}” has a foot or more of inches and was read as {read}.",
    todo: "Type it as {read} if that is right.",
  },
  "length-fraction-in-inches": {
    level: "note",
    says: "“{found}” has a fraction and was read as inches, though bare numbers here are millimetres.",
    todo: "Type the inch mark too.",
  },
  "length-comma": {
    level: "note",
    says: "The comma of “{found}” can part thousands or decimals; it was read as {read}.",
    todo: "Type the number without a comma, or with a point before decimals.",
  },
} as const satisfies FindingTable;

type LengthRow = keyof typeof lengthFindings;
export type LengthFaultCode = {
  [Code in LengthRow]: (typeof lengthFindings)[Code]["level"] extends "stop" ? Code : never;
}[LengthRow];
export type LengthDoubtCode = Exclude<LengthRow, LengthFaultCode>;

/** Why a cell holds no length. */
export type LengthFault = {
  readonly code: LengthFaultCode;
  /** The first character that makes no sense, in UTF-16 units from zero, in the text as typed; 0 for what is no text. */
  readonly position: number;
  /** What is wrong and what to do, in plain words. */
  readonly message: string;
};

/** Why a length, though read, may not be what was meant. */
export type LengthDoubt = { readonly code: LengthDoubtCode; readonly message: string };

type Values = Readonly<Record<string, string>>;

const messageOf = (code: LengthRow, values: Values): string =>
  fillPlaces(`${lengthFindings[code].says} ${lengthFindings[code].todo}`, values);

/** `found` is the text as typed; where a row says `{stop}`, the character at `position` is named. */
export function lengthFault(
  code: LengthFaultCode,
  found: string,
  position = 0,
  values: Values = {},
): LengthFault {
  const stop = placeInText(found, position);
  return { code, position, message: messageOf(code, { found: shortText(found), stop, ...values }) };
}

export const lengthDoubt = (code: LengthDoubtCode, found: string, values: Values): LengthDoubt => ({
  code,
  message: messageOf(code, { found: shortText(found), ...values }),
});

/** The finding for a fault or doubt, with the place, job and mark that `details` give. */
export const lengthFinding = (
  said: LengthFault | LengthDoubt,
  details: Omit<FindingDetails, "values">,
): Finding => ({ ...makeFinding(lengthFindings, said.code, details), message: said.message });
