import { describe, expect, test } from "@jest/globals";
import { fingerprint, type TypedCell } from "../../src/workbook/fingerprint";

const typed = (value: TypedCell["value"], formula?: string): TypedCell => ({
  row: 1,
  column: 2,
  value,
  ...(formula === undefined ? {} : { formula }),
});
const of = (...cells: TypedCell[]): string => fingerprint(cells);

describe("a fingerprint stays the same", () => {
  test.each([
    ["when a result changes", typed(1, "=A1+1"), typed(2, "=A1+1")],
    ["when a host spaces a formula", typed(0, "=SUM(A1, B2)"), typed(0, "=sum(A1,B2)")],
    ["when a row is put in elsewhere", typed(0, "=Schedule!$D$7*2"), typed(0, "=Schedule!$D$8*2")],
    ["when another sheet is renamed", typed(0, "=Schedule!D7"), typed(0, "='Door list'!D7")],
    ["when another sheet is deleted", typed(0, "=Schedule!D7*2"), typed(0, "=#REF!D7*2")],
    ["when a table is renamed", typed(0, "=SUM(Lines[Item])"), typed(0, "=SUM(Rows[Item])")],
    [
      "when a host shortens a table's own row",
      typed(0, "=Lines[[#This Row],[Qty]]*2"),
      typed(0, "=[@Qty]*2"),
    ],
    ["when a referred row is deleted", typed(0, "=Schedule!D7+1"), typed(0, "=Schedule!#REF!+1")],
    [
      "when a file prefixes a function",
      typed(0, "=XLOOKUP(1,A:A,B:B)"),
      typed(0, "=_xlfn.XLOOKUP(1,A:A,B:B)"),
    ],
    [
      "when a file renames a worksheet function",
      typed(0, "=CRIB.COUNT(A1)"),
      typed(0, "=_xldudf_CRIB_COUNT(A1)"),
    ],
    ["when a date is read as a number", typed({ kind: "date", serial: 46000 }), typed(46000)],
    ["in the last digits of a double", typed(0.1 + 0.2), typed(0.3)],
    ["when yes is saved as a function", typed(true), typed(true, "=TRUE()")],
  ])("%s", (_when, before, after) => {
    expect(of(before)).toBe(of(after));
  });

  test("when blank cells are told of", () => {
    expect(of(typed("x"), { row: 4, column: 0, value: null })).toBe(of(typed("x")));
  });
});

describe("a fingerprint changes", () => {
  test.each([
    ["with a number", typed(1), typed(2)],
    ["from a number to its text", typed(1), typed("1")],
    ["from true to its text", typed(true), typed("true")],
    ["with letter case of text", typed("a"), typed("A")],
    ["with text inside a formula", typed(0, '="a b"'), typed(0, '="ab"')],
    ["with a reference on the same sheet", typed(0, "=A1"), typed(0, "=A2")],
    ["when a formula becomes its result", typed(3, "=A1"), typed(3)],
    ["when text looks like a formula", typed("=A1"), typed(0, "=A1")],
  ])("%s", (_when, before, after) => {
    expect(of(before)).not.toBe(of(after));
  });

  test("when the same text stands in another cell", () => {
    expect(of({ row: 0, column: 1, value: "x" })).not.toBe(of({ row: 1, column: 0, value: "x" }));
  });
});
