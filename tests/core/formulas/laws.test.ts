import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { readFormula } from "../../../src/core/formulas/read";
import { traceFormula } from "../../../src/core/formulas/trace";
import { isFormulaError, missingError, type FormulaValue } from "../../../src/core/formulas/value";
import { shapeOf, shapes, textOf, type Shape } from "./printing";
import { columnsOf, compiledFrom, run, scopeOf } from "./running";

const names = ["a", "b", "c"];
const cell: fc.Arbitrary<FormulaValue> = fc.constantFrom<FormulaValue>(
  0,
  1,
  -2.5,
  0.1,
  0.3,
  60,
  1e300,
  "",
  "wood",
  "WOOD",
  "7",
  "TRUE",
  true,
  false,
  null,
  missingError("b"),
);
const values = fc.record({ a: cell, b: cell, c: cell });

/** Errors by their code: where they stand differs with the text. */
const outcome = (value: FormulaValue) => (isFormulaError(value) ? { error: value.code } : value);

/** `shape` with every number, text and logical made a name, and their values. */
function withoutConstants(shape: Shape): { shape: Shape; values: Record<string, FormulaValue> } {
  const kept: Record<string, FormulaValue> = {};
  const named = (value: FormulaValue): Shape => {
    const name = `k${Object.keys(kept).length}`;
    kept[name] = value;
    return { kind: "name", name };
  };
  const change = (part: Shape): Shape => {
    switch (part.kind) {
      case "number":
      case "text":
      case "logical":
        return named(part.value);
      case "name":
        return part;
      case "unary":
        return { ...part, operand: change(part.operand) };
      case "binary":
        return { ...part, left: change(part.left), right: change(part.right) };
      case "call":
        return { ...part, arguments: part.arguments.map(change) };
    }
  };
  return { shape: change(shape), values: kept };
}

const runs = { numRuns: 1000 };

describe("laws of formulas", () => {
  test("a tree written with the fewest brackets is read back as itself", () => {
    fc.assert(
      fc.property(shapes(names), (shape) => {
        const read = readFormula(textOf(shape));
        if (!read.ok) throw new Error(read.error.message);
        expect(shapeOf(read.value.tree)).toEqual(shape);
      }),
      runs,
    );
  });

  test("a part that is worked out beforehand is worth what it is worth row by row", () => {
    fc.assert(
      fc.property(shapes([]), (shape) => {
        const loose = withoutConstants(shape);
        const compiled = compiledFrom(textOf(shape), scopeOf({}));
        expect(compiled.constant).toBeDefined();
        expect(outcome(compiled.constant ?? null)).toEqual(
          outcome(run(textOf(loose.shape), loose.values)),
        );
      }),
      runs,
    );
  });

  test("fixed numbers and texts are worth what columns of them are", () => {
    fc.assert(
      fc.property(shapes(names), values, (shape, cells) => {
        const loose = withoutConstants(shape);
        const fixed = run(textOf(shape), cells);
        const read = run(textOf(loose.shape), { ...cells, ...loose.values });
        expect(outcome(fixed)).toEqual(outcome(read));
      }),
      runs,
    );
  });

  test("telling what is read changes nothing, and all that is read is known beforehand", () => {
    fc.assert(
      fc.property(shapes(names), values, (shape, cells) => {
        const compiled = compiledFrom(textOf(shape), scopeOf(cells));
        const columns = columnsOf(cells);
        const traced = traceFormula(compiled, columns, 0);
        expect(traced.value).toEqual(compiled.evaluate(columns, 0));
        for (const { slot, value } of traced.reads) {
          expect(compiled.slots).toContain(slot);
          expect(value).toBe(columns[slot]?.[0]);
        }
      }),
      runs,
    );
  });

  test("only what was read can change the answer", () => {
    fc.assert(
      fc.property(shapes(names), values, values, (shape, cells, others) => {
        const compiled = compiledFrom(textOf(shape), scopeOf(cells));
        const columns = columnsOf(cells);
        const { value, reads } = traceFormula(compiled, columns, 0);
        const wasRead = new Set(reads.map(({ slot }) => slot));
        const changed = columns.map((column, slot) =>
          wasRead.has(slot) ? column : (columnsOf(others)[slot] ?? []),
        );
        expect(compiled.evaluate(changed, 0)).toEqual(value);
      }),
      runs,
    );
  });

  test("an answer is never a number that is none", () => {
    fc.assert(
      fc.property(shapes(names), values, (shape, cells) => {
        const value = run(textOf(shape), cells);
        if (typeof value === "number") {
          expect(Number.isFinite(value)).toBe(true);
          expect(Object.is(value, -0)).toBe(false);
        }
      }),
      runs,
    );
  });

  test("two numbers are equal exactly where their difference is 0", () => {
    const number = fc.oneof(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.integer({ min: -100, max: 100 }).map((tenths) => tenths * 0.1),
    );
    fc.assert(
      fc.property(number, number, fc.integer({ min: -9, max: 9 }), (a, other, steps) => {
        for (const b of [other, a * (1 + steps * 2 ** -52)])
          expect(run("(a = b) = (a - b = 0)", { a, b })).toBe(true);
      }),
      runs,
    );
  });

  test("comparisons are one order", () => {
    fc.assert(
      fc.property(cell, cell, cell, (a, b, c) => {
        const cells = { a, b, c };
        if (Object.values(cells).some(isFormulaError)) return;
        const yes = (text: string) => expect([text, run(text, cells)]).toEqual([text, true]);
        yes("(a < b) = (b > a)");
        yes("(a <= b) = NOT(a > b)");
        yes("(a = b) = NOT(a <> b)");
        yes("(a <= b) = OR(a < b, a = b)");
        // A blank is like whatever it meets, so it alone can stand between unlike values.
        if (Object.values(cells).every((value) => value !== null))
          yes("OR(NOT(AND(a <= b, b <= c)), a <= c)");
      }),
      runs,
    );
  });
});
