import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { freeSheetName, keptSheetName, sameSheetName } from "../../src/workbook/sheetNames";

describe("a free sheet name", () => {
  test.each([
    ["a plain name as it is", "Hardware A", [], "Hardware A"],
    ["the next number where the name is taken", "Hardware A", ["Hardware A"], "Hardware A (2)"],
    ["the case of letters for nothing", "Hardware A", ["HARDWARE a"], "Hardware A (2)"],
    ["a number that is taken too", "A", ["A", "a (2)"], "A (3)"],
    ["forbidden characters as spaces", "Job 7/8: [north]*?\\", [], "Job 7 8 north"],
    ["no apostrophe at the ends", "'Job A'", [], "Job A"],
    ["an apostrophe inside", "Joe's job", [], "Joe's job"],
    ["something where nothing is left", " ?? ", [], "Sheet"],
    ["no name that the spreadsheet keeps for itself", "History", [], "History sheet"],
    ["31 characters at most", "x".repeat(40), [], "x".repeat(31)],
    ["the number within the 31", "x".repeat(40), ["x".repeat(31)], `${"x".repeat(27)} (2)`],
  ])("keeps %s", (_, wanted, taken, name) => {
    expect(freeSheetName(wanted, taken)).toBe(name);
  });

  test("is always one that a host accepts", () => {
    const name = fc.string({ unit: "binary", maxLength: 50 });
    fc.assert(
      fc.property(name, fc.array(name), (wanted, taken) => {
        for (const made of [freeSheetName(wanted, taken), keptSheetName(wanted, taken)]) {
          expect(taken.some((other) => sameSheetName(other, made))).toBe(false);
          expect(made.length).toBeLessThanOrEqual(31);
        }
        const free = freeSheetName(wanted, taken);
        expect(free).not.toMatch(/^$|[[\]:*?/\\]|^'|'$|^history$/i);
      }),
    );
  });
});

test("a sheet set aside says so, again and again", () => {
  expect(keptSheetName("A", ["A"])).toBe("A (kept)");
  expect(keptSheetName("A", ["A", "A (Kept)"])).toBe("A (kept 2)");
});
