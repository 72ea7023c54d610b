/** Spreadsheets make dates of lengths such as `7-6`. This says what was probably typed. */
import { dayOf } from "../base/date";

/** `typed` continues a sentence (or is empty); `example` is how to type the length so that it stays one. */
export type TypedBeforeDate = { readonly typed: string; readonly example: string };

const monthNames = [
  "jan",
  "feb",
  "mar",
  "apr",
  "may",
  "jun",
  "jul",
  "aug",
  "sep",
  "oct",
  "nov",
  "dec",
];
const dayMonth = /^(\d{1,2})[-/. ]([a-z]{3})[a-z]*\.?(?:[-/. ]+\d{2,4})?$/i;
const monthDay = /^([a-z]{3})[a-z]*\.?[-/. ](\d{1,2})(?:,? ?\d{4})?$/i;
const yearFirst = /^\d{4}-(\d{1,2})-(\d{1,2})(?:[T ].*)?$/;
const numbersOnly = /^(\d{1,2})[-/.](\d{1,2})[-/.]\d{2,4}$/;

/** What was typed before a spreadsheet made the serial of it. */
export function typedBeforeSerial(serial: number): TypedBeforeDate {
  const day = dayOf(serial);
  return day === null ? typedBefore(0, 0) : typedBefore(day.month, day.day);
}

/** The same for a date in text, as a saved .csv has it (`6-Jul`, `7/6/2026`); `null` for other text. */
export function typedBeforeText(text: string): TypedBeforeDate | null {
  const trimmed = text.trim();
  const named = dayMonth.exec(trimmed) ?? monthDay.exec(trimmed);
  if (named !== null) {
    const [, one = "", two = ""] = named;
    const [name, day] = /\d/.test(one) ? [two, one] : [one, two];
    const month = monthNames.indexOf(name.toLowerCase()) + 1;
    return month === 0 ? null : typedBefore(month, Number(day));
  }
  const numbers = yearFirst.exec(trimmed) ?? numbersOnly.exec(trimmed);
  return numbers === null ? null : typedBefore(Number(numbers[1]), Number(numbers[2]));
}

/** Months come first in some countries and days in others, so both orders are named where both are lengths. */
function typedBefore(month: number, day: number): TypedBeforeDate {
  const isLength = ([feet, inches]: readonly [number, number]): boolean => feet > 0 && inches < 12;
  const orders: readonly (readonly [number, number])[] = [
    [month, day],
    [day, month],
  ];
  const [first, second] = orders.filter(isLength);
  if (first === undefined) return { typed: "", example: `7'-6"` };
  const [feet, inches] = first;
  const other =
    second === undefined || month === day
      ? ""
      : `, or ${second.join("-")} where days come before months`;
  return { typed: `, probably ${feet}-${inches}${other}`, example: `${feet}'-${inches}"` };
}
