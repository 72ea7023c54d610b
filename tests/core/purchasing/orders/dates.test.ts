import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { dateSerial, dateText } from "../../../../src/core/base/date";
import {
  deadline,
  fiveDayWeek,
  workingDaysBefore,
  workingDaysBetween,
} from "../../../../src/core/purchasing/orders/dates";

const on = (text: string): number => {
  const [year = 0, month = 0, day = 0] = text.split("-").map(Number);
  return dateSerial(year, month, day) ?? NaN;
};
// Labor Day 2026 is Monday 7 September (first Monday of September, 5 U.S.C. 6103).
const week = fiveDayWeek([on("2026-09-07"), on("2026-12-25")]);

describe("working days before a day", () => {
  test.each([
    ["2026-09-18", 0, "2026-09-18", "a Friday is itself"],
    ["2026-09-20", 0, "2026-09-18", "a Sunday is the Friday before"],
    ["2026-09-18", 1, "2026-09-17", "the day before"],
    ["2026-09-14", 1, "2026-09-11", "over a weekend"],
    ["2026-09-08", 1, "2026-09-04", "over a weekend and a holiday"],
    ["2026-09-14", 7, "2026-09-02", "over two weekends and a holiday"],
    ["2026-12-28", 1, "2026-12-24", "over a holiday on a Friday"],
    ["2026-09-20", 1, "2026-09-17", "from a Sunday, counted from the Friday"],
    ["2026-09-18", 260, "2025-09-18", "52 weeks have 260 weekdays, one of them a holiday"],
  ])("%s less %i is %s: %s", (from, days, expected) => {
    expect(dateText(workingDaysBefore(on(from), days, week))).toBe(expected);
  });

  test("take the time of day for its day", () => {
    expect(workingDaysBefore(on("2026-09-18") + 0.75, 1, week)).toBe(on("2026-09-17"));
  });

  test("work on Saturdays where the firm does", () => {
    const six = { ...week, workdays: [true, false, true, true, true, true, true] as const };
    expect(dateText(workingDaysBefore(on("2026-09-14"), 1, six))).toBe("2026-09-12");
  });

  test("are a programmer's fault in a week without work", () => {
    const none = {
      ...week,
      workdays: [false, false, false, false, false, false, false] as const,
    };
    expect(() => workingDaysBefore(on("2026-09-14"), 1, none)).toThrow(RangeError);
  });

  test("counted forward again come out the same", () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 40_000, max: 60_000 }),
        fc.integer({ min: 0, max: 200 }),
        (serial, days) => {
          const start = workingDaysBefore(serial, 0, week);
          const before = workingDaysBefore(serial, days, week);
          expect(workingDaysBetween(before, start, week)).toBe(days);
        },
      ),
    );
  });
});

describe("a deadline", () => {
  const timing = { calendar: week, today: on("2026-09-01"), bufferDays: 2 };

  test("is the need-by date less lead time and buffer", () => {
    expect(deadline(on("2026-09-14"), 5, timing)).toEqual({
      orderBy: on("2026-09-02"),
      lateDays: 0,
    });
  });

  test("of today is in time", () => {
    expect(deadline(on("2026-09-14"), 6, timing).lateDays).toBe(0);
  });

  test("that has passed is late by working days", () => {
    // Due Friday 28 August; Monday and Tuesday have gone by.
    expect(deadline(on("2026-09-14"), 8, timing)).toEqual({
      orderBy: on("2026-08-28"),
      lateDays: 2,
    });
  });
});
