/** Whatever is typed into a kit book, and whatever stands in its columns, is answered. */
import { describe, expect, test } from "@jest/globals";
import { compileFormula } from "../../../src/core/formulas/compile";
import { errorFindingCodes, formulaFindings } from "../../../src/core/formulas/findings";
import { functionNames } from "../../../src/core/formulas/functions";
import { readFormula } from "../../../src/core/formulas/read";
import type { FormulaValue } from "../../../src/core/formulas/value";
import { columnsOf, scopeOf } from "./running";

const pieces = [
  ...Array.from("0123456789.+-*/^%&=<>(),;[]{}'\"`~!@#$:?\\|_ \t\n\u0000\u00a0½⅛′″’”“–−×÷≤≥≠٣Ⅷ"),
  ...[
    "<=",
    ">=",
    "<>",
    "==",
    "''",
    '""',
    "1/2",
    "7'-0\"",
    "5'",
    " in",
    "ft",
    "mm",
    "e9",
    "E-",
    "1e308",
  ],
  ...[
    "a",
    "b",
    "Türe",
    "post_height",
    "[Post height]",
    "__proto__",
    "constructor",
    "TRUE",
    "#REF!",
  ],
  ...functionNames.map((name) => `${name}(`),
  ...['CHART("c",', '"wood"', "\ud83d", "😀", "\u202e", "ﬀ", "İ", "ß"],
];

const values: Readonly<Record<string, FormulaValue>> = {
  a: 5,
  b: "7",
  türe: null,
  "Post height": Number.MAX_VALUE,
  constructor: true,
};
const scope = scopeOf(values, { c: (down, across) => (down === 5 ? across : undefined) });
const columns = columnsOf(values);

/** A generator of its own: a hundred thousand texts from one seed, the same on every machine. */
function* texts(count: number): Generator<string> {
  let state = 20_261_101;
  const below = (most: number): number => {
    state = (Math.imul(state, 1_103_515_245) + 12_345) & 0x7fffffff;
    return (state >>> 8) % most;
  };
  for (let made = 0; made < count; made++) {
    let text = below(4) === 0 ? "=" : "";
    for (let length = below(24); length > 0; length--) text += pieces[below(pieces.length)] ?? "";
    yield text;
  }
}

describe("hostile texts", () => {
  test("a hundred thousand are read, compiled and run, or refused with a known fault", () => {
    let run = 0;
    const refused = new Set<string>();
    const wrong: string[] = [];
    for (const text of texts(100_000)) {
      const read = readFormula(text);
      const compiled = read.ok ? compileFormula(read.value, scope) : read;
      if (compiled.ok) {
        run++;
        const value = compiled.value.evaluate(columns, 0);
        const isValue =
          value === null ||
          typeof value === "string" ||
          typeof value === "boolean" ||
          (typeof value === "number" && Number.isFinite(value)) ||
          (typeof value === "object" && Object.hasOwn(errorFindingCodes, value.code));
        if (!isValue) wrong.push(text);
      } else {
        const { code, position, piece } = compiled.error;
        refused.add(code);
        const stands = text.includes(piece, position);
        if (!(code in formulaFindings) || position < 0 || position > text.length || !stands)
          wrong.push(text);
      }
    }
    expect(wrong).toEqual([]);
    // Both ways must have been gone, and many faults met, for this to say anything.
    expect(run).toBeGreaterThan(1000);
    expect(refused.size).toBeGreaterThan(15);
  });

  test.each([
    ["opening brackets", "(".repeat(3999)],
    ["signs", "-".repeat(3999)],
    ["functions", "IF(".repeat(1333)],
    ["percents", `1${"%".repeat(3999)}`],
    ["digits", "9".repeat(4000)],
    ["digits and a stroke", `1 1/${"9".repeat(3990)}`],
    ["spaces", `1${" ".repeat(3998)}1`],
    ["quotes", '"'.repeat(3999)],
    ["feet", "1'".repeat(2000)],
    ["headings", "[".repeat(4000)],
    ["strokes", "1/".repeat(2000)],
    ["a long sum", `1${"+1".repeat(499)}`],
    ["a long name", "x".repeat(4000)],
    ["exponents", "1e".repeat(2000)],
  ])("%s without end are answered", (_says, text) => {
    const read = readFormula(text);
    const compiled = read.ok ? compileFormula(read.value, scope) : read;
    expect(compiled.ok ? compiled.value.evaluate(columns, 0) : compiled.error.code).toBeDefined();
  });

  test("beyond the limit is refused before it is looked at", () => {
    expect(readFormula("(".repeat(10_000_000))).toMatchObject({
      error: { code: "formula-too-long" },
    });
  });
});
