import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { pieces } from "../../../src/core/base/units";
import { changed, readChange, writeChange } from "../../../src/core/corrections/change";

describe("a correction is read", () => {
  test.each([
    ["+3", "+3"],
    ["-2", "-2"],
    ["=14", "=14"],
    ["14", "=14"],
    [" + 3 ", "+3"],
    ["\u22122", "-2"],
    ["\uFF0B\uFF13", "+3"],
    ["1,250", "=1250"],
    ["+3.0", "+3"],
    ["0", "=0"],
  ])("%s as %s", (typed, written) => {
    const read = readChange(typed);
    expect(read.ok && writeChange(read.value)).toBe(written);
  });

  test.each([
    ["", "unreadable"],
    ["two more", "unreadable"],
    ["1/2", "unreadable"],
    ["3+", "unreadable"],
    ["+-3", "unreadable"],
    ["1e3", "unreadable"],
    ["5%", "unreadable"],
    ["TRUE", "unreadable"],
    ["1=4", "unreadable"],
    ["9".repeat(200), "unreadable"],
    ["+1.5", "not-whole"],
    ["0,5", "not-whole"],
  ])("and %s is refused as %s", (typed, fault) => {
    expect(readChange(typed)).toEqual({ ok: false, error: fault });
  });

  test("back from how it is written", () => {
    const kind = fc.constantFrom("plus" as const, "minus" as const, "instead" as const);
    fc.assert(
      fc.property(kind, fc.nat(999_999), (which, count) => {
        const change = { kind: which, pieces: pieces(count) };
        expect(readChange(writeChange(change))).toEqual({ ok: true, value: change });
      }),
    );
  });

  test("or refused, whatever is typed", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary" }), (typed) => {
        expect(typeof readChange(typed).ok).toBe("boolean");
      }),
    );
  });
});

test.each([
  ["+3", 17],
  ["-2", 12],
  ["-14", 0],
  ["-15", null],
  ["=20", 20],
])("14 with %s are %s", (typed, quantity) => {
  const read = readChange(typed);
  expect(read.ok && changed(pieces(14), read.value)).toBe(quantity);
});
