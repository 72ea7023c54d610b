import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { isDateFormat } from "../../src/workbook/dateFormats";
import { printCodes, printCodesText } from "../../src/workbook/printText";
import { readSettingsXml, settingsXml } from "../../src/workbook/settingsXml";

describe("a number format", () => {
  test.each([
    "yyyy-mm-dd",
    "m/d/yy",
    "d-mmm",
    "[h]:mm",
    "[$-409]m/d/yy h:mm AM/PM;@",
    "[$-F800]dddd\\,\\ mmmm\\ dd\\,\\ yyyy",
    'yyyy"year"',
  ])("%s shows a date", (code) => {
    expect(isDateFormat(code)).toBe(true);
  });

  test.each([
    "General",
    "@",
    "#,##0.00",
    "0.0E+00",
    '0.0 "days"',
    "0\\d",
    "[Red]0.00;[Blue]-0.00",
    "_d0",
    "*d0",
    "[$USD] 0.00",
    "# ?/?",
  ])("%s shows a number", (code) => {
    expect(isDateFormat(code)).toBe(false);
  });
});

describe("print text", () => {
  test("is split at tabs and its fields become codes", () => {
    expect(printCodesText(printCodes("Job A & B\t{page} of {pages}\t{date}"))).toBe(
      "&LJob A && B&C&P of &N&R&D",
    );
  });

  test("does not run digits into a code", () => {
    expect(printCodesText(printCodes("12 doors\t{page}2"))).toBe("&L 12 doors&C&P 2");
  });

  test.each([
    ["a long job", `${"Job A & B ".repeat(60)}\t{page} of {pages}\tHardware`],
    ["a long middle that ends in fields", `Job A\t${"x".repeat(244)}{page} of {pages}\t`],
    ["three long ones", [1, 2, 3].map((part) => `${part} 🚪`.repeat(80)).join("\t")],
  ])("of %s is cut to what a header holds, and no code through", (_, text) => {
    const codes = printCodesText(printCodes(text));
    expect(codes.length).toBeLessThanOrEqual(255);
    expect(codes.length).toBeGreaterThan(200);
    expect(codes).toContain("…");
    expect(codes.replace(/&[LCRPN&]/g, "")).not.toMatch(/[&{}]|[\ud800-\udbff](?![\udc00-\udfff])/);
  });

  test("of nothing is nothing", () => {
    expect(printCodesText(printCodes(""))).toBe("");
  });
});

describe("settings as XML", () => {
  test("come back as they were, whatever they hold", () => {
    const text = fc.string({ unit: "binary" });
    fc.assert(
      fc.property(fc.dictionary(text, text), (settings) => {
        expect(readSettingsXml(settingsXml(settings))).toEqual({ ...settings });
      }),
    );
  });

  test.each(["&lt;", "\\u{41}", "a\r\nb\tc", "<setting key='x'>", "]]>"])("keep %j", (value) => {
    expect(readSettingsXml(settingsXml({ key: value }))).toEqual({ key: value });
  });

  test("that another program wrote with a prefix and other quotes are read", () => {
    const xml = `<s:settings xmlns:s="urn:cribsheet:settings"><s:setting key='a'>1</s:setting><s:setting key="b"/></s:settings>`;
    expect(readSettingsXml(xml)).toEqual({ a: "1", b: "" });
  });
});

test("a setting with an entity that XML does not know keeps it", () => {
  const xml = settingsXml({ order: "=&amp;" }).replace("&#38;amp;", "&constructor;&amp;");
  expect(xml).toContain("&constructor;");
  expect(readSettingsXml(xml)).toEqual({ order: "=&constructor;&" });
});
