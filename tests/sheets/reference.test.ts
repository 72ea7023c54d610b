import { describe, expect, test } from "@jest/globals";
import {
  at,
  down,
  exactKey,
  lookUp,
  onSheet,
  quoted,
  rounded,
  sumOf,
  wholeColumn,
} from "../../src/sheets/reference";

test("a reference counts from zero and may be fixed", () => {
  expect([at(0, 0), at(6, 27), at(6, 1, true), down(1, 2, 8)]).toEqual([
    "A1",
    "AB7",
    "$B$7",
    "B3:B9",
  ]);
  expect(onSheet("Joe's items", 2, 1)).toBe("'Joe''s items'!$B$3");
  expect(wholeColumn("Items", 3)).toBe("Items!$D:$D");
});

test("a look-up names whole columns", () => {
  expect(lookUp("A5", { sheet: "Items", keyColumn: 0, valueColumn: 3 })).toBe(
    "INDEX(Items!$D:$D,MATCH(A5,Items!$A:$A,0))",
  );
});

describe("a key", () => {
  test("without wildcards stays as it is", () => {
    expect(exactKey("A5", "CB 1/4 x 1-1/4")).toBe("A5");
  });

  test("with one is escaped, the tilde first", () => {
    expect(exactKey("A5", "BOLT*")).toBe(
      'SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(A5,"~","~~"),"*","~*"),"?","~?")',
    );
  });
});

test("text in a formula doubles its quotes and is cut where a constant would be too long", () => {
  expect(quoted("7'-0\"")).toBe('"7\'-0"""');
  expect(quoted("")).toBe('""');
  expect(quoted("x".repeat(300))).toBe(`"${"x".repeat(255)}"&"${"x".repeat(45)}"`);
});

test("a sum joins neighbours into ranges", () => {
  expect(sumOf(1, [2, 3, 4, 7, 9, 10])).toBe("SUM(B3:B5,B8,B10:B11)");
  expect(sumOf(1, [])).toBe("0");
});

test("rounding takes a formula with or without its equals sign", () => {
  expect([rounded("=B2*C2", 2), rounded("B2*C2", 2)]).toEqual(["ROUND(B2*C2,2)", "ROUND(B2*C2,2)"]);
});
