import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import {
  cellName,
  cellText,
  columnIndex,
  columnName,
  placeName,
  readDate,
} from "../../../src/core/base/cell";
import { dateSerial, dateText, dayOf } from "../../../src/core/base/date";

describe("date serials", () => {
  test.each([
    [61, "1900-03-01"],
    [25569, "1970-01-01"],
    [36585, "2000-02-29"],
    [45351, "2024-02-29"],
    [46209, "2026-07-06"],
  ])("%d is %s", (serial, text) => {
    expect(dateText(serial)).toBe(text);
    expect(readDate(text)).toBe(serial);
  });

  test("agree with the Gregorian calendar of the platform on any day", () => {
    fc.assert(
      fc.property(fc.integer({ min: -600_000, max: 2_900_000 }), (serial) => {
        const text = new Date((serial - 25569) * 86_400_000).toISOString().slice(0, 10);
        expect(dateText(serial)).toBe(text);
        const day = dayOf(serial);
        expect(day === null ? null : dateSerial(day.year, day.month, day.day)).toBe(serial);
      }),
    );
  });

  test.each([
    [2026, 2, 29],
    [2026, 13, 1],
    [2026, 0, 1],
    [2026, 4, 31],
    [2026, 4, 1.5],
  ])("%d-%d-%d is no day", (year, month, day) => {
    expect(dateSerial(year, month, day)).toBeNull();
  });
});

describe("cells", () => {
  test("columns have one name each, and come back from it", () => {
    expect([0, 25, 26, 701, 702].map(columnName)).toEqual(["A", "Z", "AA", "ZZ", "AAA"]);
    fc.assert(
      fc.property(fc.nat(16_383), (column) => expect(columnIndex(columnName(column))).toBe(column)),
    );
  });

  test.each([
    ["Schedule", "Schedule!D7"],
    ["Door list", "'Door list'!D7"],
    ["Bob's", "'Bob''s'!D7"],
    ["R1", "'R1'!D7"],
    ["AB12", "'AB12'!D7"],
    ["2026", "'2026'!D7"],
  ])("a place on %s is %s", (sheet, name) => {
    expect(placeName({ sheet, row: 6, column: 3 })).toBe(name);
    expect(cellName({ row: 6, column: 3 })).toBe("D7");
  });

  test.each([
    [null, ""],
    [true, "TRUE"],
    [0.1, "0.1"],
    ["x", "x"],
    [{ kind: "error", error: "#N/A" } as const, "#N/A"],
    [{ kind: "date", serial: 46209 } as const, "2026-07-06"],
  ])("%j reads as %s", (value, text) => {
    expect(cellText(value)).toBe(text);
  });
});
