/** What can be wrong or doubtful about a typed price, and how each is said. */
import { fillPlaces, makeFinding, type Finding } from "../base/finding";
import type { FindingDetails, FindingTable } from "../base/finding";
import { placeInText, shortText } from "../base/typedText";

/** `warn` rows: there is no price, so what it is for is counted and not priced. `note` rows: there is one, and it may be wrong. */
export const moneyFindings = {
  "price-blank": {
    level: "warn",
    says: "There is no price here.",
    todo: "Type one, such as 12.50.",
  },
  "price-not-text-or-number": {
    level: "warn",
    says: "{found} is not a price.",
    todo: "Type a number, such as 12.50.",
  },
  "price-is-an-error": {
    level: "warn",
    says: "The cell shows the error {found}, not a price.",
    todo: "Mend its formula, or type the price.",
  },
  "price-is-a-date": {
    level: "warn",
    says: "The cell holds the date {found}, not a price.",
    todo: "Type the price again, such as 12.50, and format the cell as a number.",
  },
  "price-text-too-long": {
    level: "warn",
    says: "This text is too long to be a price.",
    todo: "Keep notes in another column, and type only the price, such as 12.50.",
  },
  "price-not-understood": {
    level: "warn",
    says: "“{found}” stops making sense as a price at {stop}.",
    todo: "Type only the number for one unit, such as 12.50.",
  },
  "price-in-another-currency": {
    level: "warn",
    says: "“{found}” is not in {currency}, which this workbook counts in: see {stop}.",
    todo: "Type the price in {currency}.",
  },
  "price-negative": {
    level: "warn",
    says: "“{found}” is a price below zero.",
    todo: "Type a price of zero or more.",
  },
  "price-too-large": {
    level: "warn",
    says: "“{found}” is too large a number for a price.",
    todo: "Check the number.",
  },
  "price-is-zero": {
    level: "note",
    says: "The price is zero, so this counts as free.",
    todo: "Clear the cell if the price is not known.",
  },
  "price-rounded": {
    level: "note",
    says: "“{found}” has more than four decimals and was read as {read}.",
    todo: "Type a price with at most four decimals if that is not close enough.",
  },
  "price-mark-unsure": {
    level: "note",
    says: "The mark in “{found}” can part thousands or decimals; it was read as {read}.",
    todo: "Type the price as a number, or with both decimals behind the mark.",
  },
  "amount-too-large": {
    level: "warn",
    says: "{quantity} times {unitCost} is too large an amount to count with.",
    todo: "Check the quantity and the unit cost.",
  },
} as const satisfies FindingTable;

type MoneyRow = keyof typeof moneyFindings;
export type PriceDoubtCode = "price-is-zero" | "price-rounded" | "price-mark-unsure";
export type PriceFaultCode = Exclude<MoneyRow, PriceDoubtCode | "amount-too-large">;

/** Why a cell holds no price. */
export type PriceFault = {
  readonly code: PriceFaultCode;
  /** The first character that makes no sense, in UTF-16 units from zero, in the text as typed; 0 for what is no text. */
  readonly position: number;
  /** What is wrong and what to do, in plain words. */
  readonly message: string;
};

/** Why a price, though read, may not be what was meant. */
export type PriceDoubt = { readonly code: PriceDoubtCode; readonly message: string };

type Values = Readonly<Record<string, string>>;

const messageOf = (code: MoneyRow, found: string, values: Values): string =>
  fillPlaces(`${moneyFindings[code].says} ${moneyFindings[code].todo}`, {
    found: shortText(found),
    ...values,
  });

/** `found` is the text as typed; where a row says `{stop}`, the character at `position` is named. */
export const priceFault = (
  code: PriceFaultCode,
  found: string,
  position = 0,
  values: Values = {},
): PriceFault => ({
  code,
  position,
  message: messageOf(code, found, { stop: placeInText(found, position), ...values }),
});

export const priceDoubt = (code: PriceDoubtCode, found: string, values: Values): PriceDoubt => ({
  code,
  message: messageOf(code, found, values),
});

/** The finding for a fault or doubt, with the place, job and mark that `details` give. */
export const priceFinding = (
  said: PriceFault | PriceDoubt,
  details: Omit<FindingDetails, "values">,
): Finding => ({ ...makeFinding(moneyFindings, said.code, details), message: said.message });
