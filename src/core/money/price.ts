/**
 * A cell to a price: the one door by which money comes in.
 *
 * Reads a number with the currency's sign or code before or behind it, or with none: `12.5`,
 * `$1,234.50`, `USD 12.50`, `US$12.50`, `12,50 €`, `$12.50 each`, `0.0825/ea`. Where both marks
 * stand, the last is the decimal mark (`1.234,50`); a mark that stands twice parts thousands. One mark
 * alone is the decimal mark, but for one with exactly three digits behind it and one to three before
 * it: that is taken in the currency's own way, so `1,234` is a thousand and more in dollars, and in
 * euros 1 and a fraction, with a doubt, as text from elsewhere often has the other mark. `0,125` is a
 * fraction in every currency.
 */
import { cellText, type CellValue } from "../base/cell";
import {
  asThousands,
  decimalOfNumber,
  powerOfTen,
  scanDecimal,
  type Decimal,
} from "../base/decimal";
import { plainCharacters, skipLetters, skipSpaces } from "../base/plainCharacters";
import { err, ok, type Result } from "../base/result";
import { longestText } from "../base/typedText";
import { tenThousandths, type TenThousandths } from "../base/units";
import { currencyOf, unitCostPlaces, usDollar, type Currency } from "./currency";
import { priceDoubt, priceFault, type PriceDoubt } from "./moneyFindings";
import type { PriceDoubtCode, PriceFault, PriceFaultCode } from "./moneyFindings";
import { unitCostText } from "./writeMoney";

export type ReadPrice = {
  readonly unitCost: TenThousandths;
  readonly doubts: readonly PriceDoubt[];
};

/** Where a text stops making sense as a price, and why. */
type Stop = { readonly code: PriceFaultCode; readonly at: number };

/** In whole currency units. */
const largestPrice = 1e9;
const none: readonly PriceDoubt[] = [];
const otherSign = /\p{Sc}/u;
const forOne = / *(?:(?:\/|per\b) *(?:each|ea|pcs?|piece)|each|ea)\b\.?/iy;

/**
 * Reads one cell. More than four decimals are rounded with a doubt, and a price of zero is read with
 * a doubt. Less than zero, a thousand million and more, another currency, dates, errors, blanks and
 * other text are faults. Any value whatever is answered; none throws.
 */
export function readPrice(
  value: CellValue,
  currency: Currency = usDollar,
): Result<ReadPrice, PriceFault> {
  const found = cellText(value);
  if (typeof value === "string") return readText(value, currency);
  if (typeof value === "number") {
    if (Number.isNaN(value)) return err(priceFault("price-not-text-or-number", found));
    if (value < 0) return err(priceFault("price-negative", found));
    const decimal = value < largestPrice ? decimalOfNumber(value, unitCostPlaces) : null;
    if (decimal === null) return err(priceFault("price-too-large", found));
    return ok(checkedPrice(decimal, found, currency));
  }
  if (value === null) return err(priceFault("price-blank", found));
  if (typeof value === "boolean") return err(priceFault("price-not-text-or-number", found));
  return err(priceFault(value.kind === "error" ? "price-is-an-error" : "price-is-a-date", found));
}

function readText(text: string, currency: Currency): Result<ReadPrice, PriceFault> {
  if (text.length > longestText) return err(priceFault("price-text-too-long", text, longestText));
  const read = readPriceText(plainCharacters(text), currency);
  if (read.ok) {
    return ok(checkedPrice(read.value.decimal, text, currency, read.value.isMarkUnsure));
  }
  return err(priceFault(read.error.code, text, read.error.at, { currency: currency.code }));
}

function checkedPrice(
  decimal: Decimal,
  found: string,
  currency: Currency,
  isMarkUnsure = false,
): ReadPrice {
  const { coefficient, places, rounded } = decimal;
  const unitCost = tenThousandths(coefficient * powerOfTen(unitCostPlaces - places));
  const code: PriceDoubtCode | null = rounded
    ? "price-rounded"
    : unitCost === 0
      ? "price-is-zero"
      : isMarkUnsure
        ? "price-mark-unsure"
        : null;
  if (code === null) return { unitCost, doubts: none };
  const doubt = priceDoubt(code, found, { read: unitCostText(unitCost, currency) });
  return { unitCost, doubts: [doubt] };
}

type PriceText = { readonly decimal: Decimal; readonly isMarkUnsure: boolean };

function readPriceText(text: string, currency: Currency): Result<PriceText, Stop> {
  const start = skipSpaces(text, 0);
  if (start === text.length) return err({ code: "price-blank", at: 0 });
  const isMinus = (at: number): boolean => text.startsWith("-", at) || text.startsWith("(", at);
  const before = skipSpaces(text, isMinus(start) ? start + 1 : start);
  const mark = currencyMarkAt(text, before, currency);
  if (!mark.ok) return mark;
  const minus = skipSpaces(text, mark.value);
  const numberStart = skipSpaces(text, isMinus(minus) ? minus + 1 : minus);
  const number = scanDecimal(text, numberStart, unitCostPlaces);
  if (!number.ok) {
    const code = number.error === "none" ? "price-not-understood" : "price-too-large";
    return err({ code, at: numberStart });
  }
  if (isMinus(start) || isMinus(minus)) return err({ code: "price-negative", at: start });
  const { end, unsureMark } = number.value;
  const behind =
    mark.value > before ? ok(end) : currencyMarkAt(text, skipSpaces(text, end), currency);
  if (!behind.ok) return behind;
  forOne.lastIndex = behind.value;
  const rest = skipSpaces(text, forOne.test(text) ? forOne.lastIndex : behind.value);
  if (rest < text.length) return err({ code: "price-not-understood", at: rest });
  const isDecimal = unsureMark === null || unsureMark === currency.decimalMark;
  const decimal = isDecimal ? number.value : asThousands(number.value);
  const isTooLarge = decimal.coefficient >= largestPrice * powerOfTen(decimal.places);
  if (isTooLarge) return err({ code: "price-too-large", at: numberStart });
  return ok({ decimal, isMarkUnsure: unsureMark !== null && currency.decimalMark === "," });
}

/**
 * Past the currency's sign or code at `at`: `$`, `USD`, `US$`, `USD $`. The same place where there is
 * none, and a stop where it is another currency's.
 */
function currencyMarkAt(text: string, at: number, { code, sign }: Currency): Result<number, Stop> {
  const other = err({ code: "price-in-another-currency", at } as const);
  const lettersEnd = skipLetters(text, at);
  const letters = text.slice(at, lettersEnd).toUpperCase();
  const signStart = letters === code ? skipSpaces(text, lettersEnd) : lettersEnd;
  const hasSign = text.startsWith(sign, signStart);
  if (hasSign) return code.startsWith(letters) ? ok(signStart + sign.length) : other;
  if (otherSign.test(text.charAt(signStart))) return other;
  if (letters === code) return ok(lettersEnd);
  return currencyOf(letters) === null ? ok(at) : other;
}
