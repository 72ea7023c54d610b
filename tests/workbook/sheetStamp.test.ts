import fc from "fast-check";
import { expect, test } from "@jest/globals";
import {
  isStampName,
  readStamp,
  sameMark,
  stampFormula,
  stampName,
} from "../../src/workbook/sheetStamp";

test("a stamp is a text constant that says which sheet it is, and a reference to that sheet", () => {
  const stamp = { sheet: "Bob's", mark: { kind: "hardware", subject: 'Job "A"' }, written: "0f" };
  expect(stampFormula(stamp)).toBe(`=CHOOSE(1,"1|0f|hardware|Job ""A""",'Bob''s'!$1:$1048576)`);
});

test("any stamp comes back as it was, however long its subject", () => {
  const text = fc.string({ unit: "binary", maxLength: 900 });
  const name = fc.string({ unit: "grapheme-composite", minLength: 1, maxLength: 31 });
  fc.assert(
    fc.property(text, name, (subject, sheet) => {
      const stamp = { sheet, mark: { kind: "reasons", subject }, written: "12ab" };
      const formula = stampFormula(stamp);
      expect(readStamp(formula)).toEqual(stamp);
      expect(readStamp(formula.slice(1))).toEqual(stamp);
      for (const constant of formula.match(/"(?:[^"]|"")*"/g) ?? []) {
        expect(constant.slice(1, -1).replaceAll('""', '"').length).toBeLessThanOrEqual(255);
      }
    }),
  );
});

test("a reference to the whole sheet may be written out with its corners", () => {
  expect(readStamp('CHOOSE(1,"1|0f|hardware|A",Hardware!$A$1:$XFD$1048576)')).toMatchObject({
    sheet: "Hardware",
  });
});

test.each([
  "",
  "=A1",
  '="1|a|b|c"',
  '=CHOOSE(1,"2|a|b|c",Sheet1!$1:$1048576)',
  '=CHOOSE(1,"1|a|b",Sheet1!$1:$1048576)',
  '=CHOOSE(1,"1|a|b|c",#REF!)',
  "=CHOOSE(1,\"1|a|b|c\",'Sheet 1'!#REF!)",
])("%s is no stamp", (text) => {
  expect(readStamp(text)).toBeNull();
});

test("a stamp's name is told from a person's", () => {
  expect(isStampName(stampName(12))).toBe(true);
  expect(isStampName("_cribsheet_rates")).toBe(false);
  expect(isStampName("cribsheet_1")).toBe(false);
});

test("marks are the same when kind and subject are", () => {
  const mark = { kind: "hardware", subject: "A" };
  expect(sameMark(mark, { ...mark })).toBe(true);
  expect(sameMark(mark, { ...mark, subject: "B" })).toBe(false);
  expect(sameMark(mark, { ...mark, kind: "reasons" })).toBe(false);
});
