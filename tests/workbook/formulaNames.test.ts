import { describe, expect, test } from "@jest/globals";
import { tablesNamed, withOtherNames } from "../../src/workbook/formulaNames";

const sheets = new Map([
  ["hardware", "For the yard"],
  ["bob's", "Alice"],
]);
const tables = new Map([["lines", "Lines_2"]]);

describe("withOtherNames", () => {
  test.each([
    ["=Hardware!B2+Other!B2", "='For the yard'!B2+Other!B2"],
    ["='Bob''s'!A1", "=Alice!A1"],
    ["=hardware!$A$1:$B$9", "='For the yard'!$A$1:$B$9"],
    ['=IF(A1="Hardware!B2","Lines[x]",1)', '=IF(A1="Hardware!B2","Lines[x]",1)'],
    ["=SUM(Lines[Qty])+Lines[[#This Row],[Qty]]", "=SUM(Lines_2[Qty])+Lines_2[[#This Row],[Qty]]"],
    ["=MyLines[Qty]+[@Qty]", "=MyLines[Qty]+[@Qty]"],
    ["=#REF!A1+Hardware+LINES(1)", "=#REF!A1+Hardware+LINES(1)"],
    ["=Lines[it''s '[odd']]", "=Lines_2[it''s '[odd']]"],
  ])("%s becomes %s", (formula, expected) => {
    expect(withOtherNames(formula, sheets, tables)).toBe(expected);
  });
});

describe("tablesNamed", () => {
  test.each([
    ["=A1+Items!B2", []],
    ["=SUM(Lines[Qty])*Items[Cost]", ["lines", "items"]],
    ["=[@Qty]*2", [""]],
    ['="Lines[Qty]"', []],
  ])("%s names %j", (formula, expected) => {
    expect([...tablesNamed(formula)]).toEqual(expected);
  });
});
