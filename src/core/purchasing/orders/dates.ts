/**
 * Working days, and when an order must go out. Days are whole date serials; the caller says which
 * day is today.
 */

/** A day of the week by its serial: 0 is Saturday, 1 Sunday, 2 Monday, for serial 0 is a Saturday. */
const weekdayOf = (serial: number): number => ((Math.floor(serial) % 7) + 7) % 7;

/** The days of a firm's week that are worked, Saturday first, and its holidays as date serials. */
export type Calendar = {
  readonly workdays: readonly [boolean, boolean, boolean, boolean, boolean, boolean, boolean];
  readonly holidays: ReadonlySet<number>;
};

/** Monday to Friday, less the holidays that the firm keeps. */
export const fiveDayWeek = (holidays: readonly number[] = []): Calendar => ({
  workdays: [false, false, true, true, true, true, true],
  holidays: new Set(holidays.map(Math.floor)),
});

const isWorkingDay = (serial: number, { workdays, holidays }: Calendar): boolean =>
  workdays[weekdayOf(serial)] === true && !holidays.has(Math.floor(serial));

/**
 * So many working days before a day. None is the day itself, or the last working day before it
 * where nobody works on it.
 *
 * @throws RangeError when no day of the week is worked.
 */
export function workingDaysBefore(serial: number, days: number, calendar: Calendar): number {
  if (!calendar.workdays.includes(true)) throw new RangeError("A week without a working day");
  let day = Math.floor(serial);
  const toWorkingDay = (): void => {
    while (!isWorkingDay(day, calendar)) day -= 1;
  };
  toWorkingDay();
  for (let left = Math.ceil(days); left > 0; left -= 1) {
    day -= 1;
    toWorkingDay();
  }
  return day;
}

/** Working days after `from` up to `to`, which counts too; zero where `to` is not later. */
export function workingDaysBetween(from: number, to: number, calendar: Calendar): number {
  let days = 0;
  for (let day = Math.floor(from) + 1; day <= Math.floor(to); day += 1) {
    if (isWorkingDay(day, calendar)) days += 1;
  }
  return days;
}

export type Timing = {
  readonly calendar: Calendar;
  /** The serial of the day the order is made. */
  readonly today: number;
  /** Working days kept in hand. */
  readonly bufferDays: number;
};

export type Deadline = {
  /** The last day to order. */
  readonly orderBy: number;
  /** Working days by which it has passed; zero where it has not. */
  readonly lateDays: number;
};

/** Need-by, less the lead time and the buffer in working days. */
export function deadline(needBy: number, leadDays: number, timing: Timing): Deadline {
  const { calendar, today, bufferDays } = timing;
  const orderBy = workingDaysBefore(needBy, leadDays + bufferDays, calendar);
  return { orderBy, lateDays: workingDaysBetween(orderBy, today, calendar) };
}
