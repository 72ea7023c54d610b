import { describe, expect, test } from "@jest/globals";
import { strToU8 } from "fflate";
import { colourReader } from "../../../src/adapters/xlsx/colours";
import { formulaForFile, formulaFromFile } from "../../../src/adapters/xlsx/fileFormula";
import { movedFormula } from "../../../src/adapters/xlsx/sharedFormula";
import { parseXml } from "../../../src/adapters/xlsx/xml";
import { printCodes, printCodesText, printTextOf } from "../../../src/workbook/printText";

describe("a colour of a file", () => {
  const theme = `<a:theme xmlns:a="x"><a:themeElements><a:clrScheme name="Office"><a:dk1><a:sysClr val="windowText" lastClr="000000"/></a:dk1><a:lt1><a:sysClr val="window" lastClr="FFFFFF"/></a:lt1><a:dk2><a:srgbClr val="44546A"/></a:dk2><a:lt2><a:srgbClr val="E7E6E6"/></a:lt2><a:accent1><a:srgbClr val="4472C4"/></a:accent1></a:clrScheme></a:themeElements></a:theme>`;
  const read = colourReader(new Map([["theme.xml", strToU8(theme)]]), "theme.xml");

  // The tints are those of Excel's own colour picker for the Office theme (values from memory).
  test.each([
    [`rgb="FF1F4E79"`, "1F4E79"],
    [`indexed="10"`, "FF0000"],
    [`indexed="64"`, undefined],
    [`auto="1"`, undefined],
    [`theme="0"`, "FFFFFF"],
    [`theme="1"`, "000000"],
    [`theme="2"`, "E7E6E6"],
    [`theme="3"`, "44546A"],
    [`theme="4" tint="0.79998168889431442"`, "D9E1F2"],
    [`theme="4" tint="0.39997558519241921"`, "8EA9DB"],
    [`theme="4" tint="-0.249977111117893"`, "2F5496"],
    [`theme="0" tint="-0.149998474074526"`, "D9D9D9"],
    [`theme="1" tint="0.499984740745262"`, "7F7F7F"],
    [`theme="99"`, undefined],
  ])("%s is %s", (attributes, colour) => {
    const found = read(parseXml(`<color ${attributes}/>`));
    const parts = (text = ""): number[] =>
      (text.match(/../g) ?? []).map((part) => Number.parseInt(part, 16));
    // Excel counts lightness in 240 steps, so a part may be two off.
    expect(parts(found)).toHaveLength(parts(colour).length);
    parts(found).forEach((part, index) => {
      expect(Math.abs(part - (parts(colour)[index] ?? 0))).toBeLessThanOrEqual(2);
    });
  });
});

describe("a formula in a file", () => {
  test.each([
    ["=SUM(A1:B2)", "SUM(A1:B2)"],
    [`=IFS(A1>1,"IFS(",TRUE,'CONCAT(1)'!A1)`, `_xlfn.IFS(A1>1,"IFS(",TRUE,'CONCAT(1)'!A1)`],
    ["=SORT(UNIQUE(A1:A9))", "_xlfn._xlws.SORT(_xlfn.UNIQUE(A1:A9))"],
    ["=CRIB.PLATE(7,7)+1", "_xldudf_CRIB_PLATE(7,7)+1"],
    ["=LET(a,1,bee,a+1,a*bee)", "_xlfn.LET(_xlpm.a,1,_xlpm.bee,_xlpm.a+1,_xlpm.a*_xlpm.bee)"],
    ["=MAP(A1:A3,LAMBDA(x,x*2))", "_xlfn.MAP(A1:A3,_xlfn.LAMBDA(_xlpm.x,_xlpm.x*2))"],
    ["=SUM(Lines[[#This Row],[Cost]])", "SUM(Lines[[#This Row],[Cost]])"],
  ])("%s is spelled %s, and read back", (typed, spelled) => {
    expect(formulaForFile(typed)).toBe(spelled);
    expect(formulaFromFile(spelled)).toBe(typed);
  });
});

describe("a formula moved two rows down and one column right", () => {
  test.each([
    ["A1+$B$2+C$3+$D4", "B3+$B$2+D$3+$D6"],
    ["SUM(A1:B9,A:B,1:2,$A:A,$1:1)", "SUM(B3:C11,B:C,3:4,$A:B,$1:3)"],
    ["Items!A1&'B2'!C3", "Items!B3&'B2'!D5"],
    ["1E5+LOG10(A1)+ATAN2(A1,1)", "1E5+LOG10(B3)+ATAN2(B3,1)"],
    [`"A1"&Lines[A1]&A1_x&TRUE`, `"A1"&Lines[A1]&A1_x&TRUE`],
    ["XFD1+A1048576", "#REF!+#REF!"],
    ["XFE1+A1048577", "XFE1+A1048577"],
  ])("%s becomes %s", (formula, moved) => {
    expect(movedFormula(formula, 2, 1)).toBe(moved);
  });

  test("up and off the sheet is no reference any more", () => {
    expect(movedFormula("A1+B5", -3, 0)).toBe("#REF!+B2");
  });
});

describe("print codes", () => {
  test.each(["Job A & B\t{page} of {pages}\tHardware", "\t\tPage {page}", "12 doors", ""])(
    "%j comes back from its codes",
    (text) => {
      expect(printTextOf(printCodesText(printCodes(text)))).toBe(text);
    },
  );

  test("of other programs lose their fonts and keep their words", () => {
    expect(printTextOf(`&L&"Arial,Bold"&12Job&"-,Regular" A&C&K00FF00&P&R&G&Z&F`)).toBe(
      "Job A\t{page}\t{file}",
    );
    expect(printTextOf("Plain")).toBe("\tPlain");
  });
});
