/**
 * Dates as serial numbers, as spreadsheets keep them: whole days since 1899-12-30, in the Gregorian
 * calendar. Serials before 61 (1900-03-01) differ from those of some spreadsheets, which give 1900
 * a leap day it did not have.
 */

/** Day 0 in days of the proleptic Gregorian calendar, counted from 0001-01-01 as day 1. */
const dayZero = 693_594;

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

const monthLengths = (year: number): readonly number[] => [
  31,
  isLeap(year) ? 29 : 28,
  31,
  30,
  31,
  30,
  31,
  31,
  30,
  31,
  30,
  31,
];

const daysBeforeYear = (year: number): number => {
  const past = year - 1;
  return past * 365 + Math.floor(past / 4) - Math.floor(past / 100) + Math.floor(past / 400);
};

/** The serial of a day; `null` where the day does not exist. Months and days count from one. */
export function dateSerial(year: number, month: number, day: number): number | null {
  const lengths = monthLengths(year);
  const length = lengths[month - 1];
  if (!Number.isInteger(day) || length === undefined || day < 1 || day > length) return null;
  const inYear = lengths.slice(0, month - 1).reduce((sum, days) => sum + days, 0) + day;
  return daysBeforeYear(year) + inYear - dayZero;
}

export type Day = { readonly year: number; readonly month: number; readonly day: number };

/** The day of a serial, its time of day left out; `null` outside the years 1 to 9999. */
export function dayOf(serial: number): Day | null {
  const days = Math.floor(serial) + dayZero;
  if (!(days >= 1 && days <= daysBeforeYear(10_000))) return null;
  let year = Math.max(1, Math.floor(days / 366));
  while (daysBeforeYear(year + 1) < days) year += 1;
  let inYear = days - daysBeforeYear(year);
  let month = 1;
  for (const length of monthLengths(year)) {
    if (inYear <= length) break;
    inYear -= length;
    month += 1;
  }
  return { year, month, day: inYear };
}

/** A date serial as `2026-07-31`; a serial that is no date as its number. */
export function dateText(serial: number): string {
  const date = dayOf(serial);
  if (date === null) return String(serial);
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${String(date.year).padStart(4, "0")}-${two(date.month)}-${two(date.day)}`;
}
