import { describe, expect, test } from "@jest/globals";
import {
  commonOrderPattern,
  nextOrderNumber,
  readOrderPattern,
  type OrderPattern,
} from "../../../../src/core/purchasing/books/orderNumber";

const patternOf = (text: string): OrderPattern => {
  const read = readOrderPattern(text);
  if (!read.ok) throw new Error(read.error.message);
  return read.value;
};

describe("the next order number", () => {
  test.each([
    [commonOrderPattern.text, [], "PO-2026-0001"],
    [commonOrderPattern.text, ["PO-2026-0001", "PO-2026-0007"], "PO-2026-0008"],
    [commonOrderPattern.text, ["PO-2025-0012", "X-2026-0040", "PO-2026-12x"], "PO-2026-0001"],
    [commonOrderPattern.text, ["PO-2026-9999"], "PO-2026-10000"],
    ["{number}", ["9", " 10 "], "11"],
    ["A.{number:3}/{year}", ["A.004/2026", "Ax009/2026"], "A.005/2026"],
    ["({year}) {number:2}+", ["(2026) 03+"], "(2026) 04+"],
  ])("of %s after %j is %s", (pattern, used, expected) => {
    expect(nextOrderNumber(patternOf(pattern), 2026, used)).toBe(expected);
  });
});

describe("a pattern", () => {
  test.each([
    ["PO-{year}", "pattern-without-number"],
    ["", "pattern-without-number"],
    ["{number}-{number:2}", "pattern-with-two-numbers"],
    ["PO-{month}-{number}", "pattern-word-unknown"],
    ["PO-{number:0}", "pattern-word-unknown"],
    ["PO-{number", "pattern-word-unknown"],
  ])("%j is refused as %s", (text, code) => {
    expect(readOrderPattern(text)).toMatchObject({ ok: false, error: { code } });
  });
});
