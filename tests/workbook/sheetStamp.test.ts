import fc from "fast-check";
import { expect, test } from "@jest/globals";
import { readStamp, sameMark, stampFormula } from "../../src/workbook/sheetStamp";

test("a stamp is a text constant that says which sheet it is", () => {
  const stamp = { mark: { kind: "hardware", subject: 'Job "A"' }, written: "0f" };
  expect(stampFormula(stamp)).toBe('="1|0f|hardware|Job ""A"""');
});

test("any stamp comes back as it was, however long its subject", () => {
  const subject = fc.string({ unit: "binary", maxLength: 900 });
  fc.assert(
    fc.property(subject, (text) => {
      const stamp = { mark: { kind: "reasons", subject: text }, written: "12ab" };
      const formula = stampFormula(stamp);
      expect(readStamp(formula)).toEqual(stamp);
      expect(readStamp(formula.slice(1))).toEqual(stamp);
      for (const constant of formula.match(/"(?:[^"]|"")*"/g) ?? []) {
        expect(constant.slice(1, -1).replaceAll('""', '"').length).toBeLessThanOrEqual(255);
      }
    }),
  );
});

test.each(["", "=A1", "=1", '="2|a|b|c"', '="1|a|b"', '="1|a|b|c"&A1'])(
  "%s is no stamp",
  (text) => {
    expect(readStamp(text)).toBeNull();
  },
);

test("marks are the same when kind and subject are", () => {
  const mark = { kind: "hardware", subject: "A" };
  expect(sameMark(mark, { ...mark })).toBe(true);
  expect(sameMark(mark, { ...mark, subject: "B" })).toBe(false);
  expect(sameMark(mark, { ...mark, kind: "reasons" })).toBe(false);
});
