import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import type { CellValue, TypedCell } from "../../../src/core/base/cell";
import { compileKitBook } from "../../../src/core/kitbook/compileKitBook";
import type { KitBookRows } from "../../../src/core/kitbook/rows";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";
import { readKitBook } from "../../../src/tables/kitBookTable";

/** What people, spreadsheets and attackers put into cells. */
const nastyTexts = [
  "=1+1",
  "=",
  "=cmd|' /C calc'!A0",
  "{",
  "{}",
  "{width}",
  "{{a}}",
  "*",
  ",",
  ", ,",
  " x ",
  "a x b x c",
  "__proto__",
  "constructor",
  "toString",
  "hasOwnProperty",
  "7-0",
  "7'",
  "7'-0 1/2\"",
  "1e999",
  "-",
  "%",
  '"',
  '"""',
  "[",
  "[a",
  "((((((((((",
  "IF(",
  'CHART("constructor", 1)',
  'CHART("a")',
  "width",
  "WIDTH ",
  "Door",
  "door",
  "Dоor",
  "next up",
  "stop",
  "length",
  "TRUE",
  "\u0000",
  "\u202e",
  "😀",
  "a".repeat(3000),
] as const;

const value: fc.Arbitrary<CellValue> = fc.oneof(
  fc.constantFrom<CellValue[]>(...nastyTexts),
  fc.string(),
  fc.constant(null),
  fc.boolean(),
  fc.double(),
  fc.integer(),
  fc.record({ kind: fc.constant("error" as const), error: fc.constantFrom("#N/A", "#NAME?") }),
  fc.record({ kind: fc.constant("date" as const), serial: fc.double() }),
);
const cell: fc.Arbitrary<TypedCell> = value.map((held) => ({ value: held, place: null }));

const rows: fc.Arbitrary<KitBookRows> = fc.record({
  sizes: fc.array(
    fc.record({ type: cell, name: cell, formula: cell, unit: cell, note: cell, basis: cell }),
    { maxLength: 6 },
  ),
  parts: fc.array(
    fc.record({
      type: cell,
      bag: cell,
      step: cell,
      item: cell,
      size: cell,
      quantity: cell,
      when: cell,
      cutLength: cell,
      minutes: cell,
      joined: cell,
      basis: cell,
    }),
    { maxLength: 6 },
  ),
  limits: fc.array(fc.record({ type: cell, when: cell, level: cell, message: cell, basis: cell }), {
    maxLength: 6,
  }),
  charts: fc.array(
    fc.record({ chart: cell, match: cell, down: cell, across: cell, value: cell, basis: cell }),
    { maxLength: 6 },
  ),
});

describe("hostile kit-book rows", () => {
  test("never break the checking, and no row is lost: each works, or has a finding", () => {
    fc.assert(
      fc.property(rows, fc.array(fc.string(), { maxLength: 3 }), (typed, headings) => {
        const { book, findings } = compileKitBook(typed, headings);
        if (findings.every(({ level }) => level !== "stop")) {
          const used = new Set(
            book.types.flatMap(({ parts }) => parts.map(({ source }) => source.number)),
          );
          expect(used.size).toBe(typed.parts.length);
        }
        for (const type of book.types) {
          for (const { finding } of type.broken) expect(finding.message).not.toBe("");
          for (const size of type.sizes) expect(type.slots[size.slot]?.label).toBe(size.name);
        }
      }),
      { numRuns: 1000 },
    );
  });

  test("put among the starter's leave the starter's own rows working", () => {
    const good = compileKitBook(starterKitBook, []).book.types.map(({ name, parts }) => [
      name,
      parts.length,
    ]);
    // A type of their own, so that they cannot be a second row of the same name.
    const foreign = rows.map(({ parts, limits }) => ({
      parts: parts.map((part) => ({ ...part, type: { value: "Other", place: null } })),
      limits: limits.map((limit) => ({ ...limit, type: { value: "Other", place: null } })),
    }));
    fc.assert(
      fc.property(foreign, ({ parts, limits }) => {
        const { book } = compileKitBook(
          {
            ...starterKitBook,
            parts: [...parts, ...starterKitBook.parts],
            limits: [...limits, ...starterKitBook.limits],
          },
          [],
        );
        const others = book.types.filter(({ name }) => name !== "Other");
        expect(others.map(({ name, parts: used }) => [name, used.length])).toEqual(good);
        expect(others.flatMap(({ broken }) => broken)).toEqual([]);
      }),
      { numRuns: 30 },
    );
  });
});

test("hostile sheets never break the reading", () => {
  const headings = fc.constantFrom<CellValue[]>(
    "Type",
    "Item",
    "Quantity",
    "Bag",
    "Sizes",
    "Kit book parts",
    "Name",
    "Formula",
    "Chart",
    "Down",
    "Value",
  );
  const line = fc.array(fc.oneof(headings, value), { maxLength: 8 });
  fc.assert(
    fc.property(fc.string(), fc.array(line, { maxLength: 12 }), (sheet, lines) => {
      const reading = readKitBook([{ sheet, row: 0, column: 0, rows: lines }]);
      if (reading !== null) compileKitBook(reading.rows, []);
    }),
    { numRuns: 1000 },
  );
});
