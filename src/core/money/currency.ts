/** Currencies: how many decimals they have and how they are written. */

export type Currency = {
  /** ISO 4217, three letters. */
  readonly code: string;
  /** Written before the number. */
  readonly sign: string;
  /** Decimals of an amount: two where a hundred cents make one. From 0 to 4. */
  readonly digits: number;
  /** The other one of point and comma parts thousands. */
  readonly decimalMark: "." | ",";
};

/** Decimals of a unit cost, in every currency. */
export const unitCostPlaces = 4;

export const usDollar: Currency = { code: "USD", sign: "$", digits: 2, decimalMark: "." };

/** The currencies to choose from. Codes and decimals: ISO 4217. Signs and marks: common practice. */
export const currencies: readonly Currency[] = [
  usDollar,
  { code: "CAD", sign: "$", digits: 2, decimalMark: "." },
  { code: "MXN", sign: "$", digits: 2, decimalMark: "." },
  { code: "EUR", sign: "€", digits: 2, decimalMark: "," },
  { code: "GBP", sign: "£", digits: 2, decimalMark: "." },
  { code: "AUD", sign: "$", digits: 2, decimalMark: "." },
  { code: "NZD", sign: "$", digits: 2, decimalMark: "." },
];

/** The currency of a code, in either case; `null` where it is not one of `currencies`. */
export const currencyOf = (code: string): Currency | null =>
  currencies.find((currency) => currency.code === code.trim().toUpperCase()) ?? null;
