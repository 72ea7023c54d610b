/**
 * How fast formulas run against a loop written by hand, in one process: `npx tsx
 * tests/bench/formulas.ts`. Prints ratios; nothing here is a test.
 *
 * Both take off the same invented openings by the same ten sizes and fifty counts, keep the count of
 * every opening (a take-off needs it for its reasons) and add it to its line's total. Runs alternate,
 * and the best of each is taken, so that a busy machine disturbs both alike.
 *
 * A spreadsheet engine (@ironcalc/wasm, compiled to WebAssembly) then works out the same formulas as
 * cells, one row an opening; only its recalculation is timed, not the typing in.
 */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { initSync, Model } from "@ironcalc/wasm";
import { compileFormula } from "../../src/core/formulas/compile";
import type { CompiledFormula } from "../../src/core/formulas/formula";
import { readFormula } from "../../src/core/formulas/read";
import { tokensOf } from "../../src/core/formulas/tokens";
import { blankColumn, type FormulaValue } from "../../src/core/formulas/value";
import { columnName } from "../../src/core/base/cell";

type Opening = {
  readonly leaf_width: number;
  readonly height: number;
  readonly post_height: number;
  readonly tail_post: boolean;
  readonly floor: string;
  readonly track_length: number;
};

const fields = [
  "leaf_width",
  "height",
  "post_height",
  "tail_post",
  "floor",
  "track_length",
] as const;

const sizes: readonly (readonly [string, string])[] = [
  ["panels", "IF(leaf_width <= 5', 1, 2)"],
  ["panel_width", "leaf_width / panels"],
  ["hangers", "IF(tail_post, 3, 2)"],
  ["joint_sets", "IF(panels = 1, 0, IF(height <= 8', 3, 4))"],
  ["sections", "IF(leaf_width <= 6', 1, IF(leaf_width > 8', 2, CEILING(track_length / 10', 1)))"],
  ["anchors", 'IF(floor = "concrete", 2, 0)'],
  ["screws", 'IF(floor = "wood", 4, 0)'],
  ["overlap", 'MAX(1", MIN(leaf_width - 2\', 12"))'],
  ["cut", 'leaf_width + 2 * overlap - (1/2")'],
  ["bought", "ROUNDUP(track_length / 8, 0) * 8"],
];

const counts: readonly string[] = [
  "2",
  "2 * hangers",
  "joint_sets * 2",
  "2 * panels",
  "4",
  "hangers",
  "sections",
  "IF(panels = 2, 1, 0)",
  "IF(leaf_width > 5', 4, 0)",
  "2 * hangers + anchors",
  "IF(AND(height <= post_height, leaf_width >= 2'), 1, 0)",
  "IF(AND(panels = 2, height > 8'), 2, 0)",
  "screws",
  "bought",
  "panel_width",
];
const lines = Array.from({ length: 50 }, (_, line) => counts[line % counts.length] ?? "0");

type Counted = { readonly totals: readonly number[]; readonly kept: readonly FormulaValue[][] };

function byHand(openings: readonly Opening[]): Counted {
  const totals = lines.map(() => 0);
  const kept = lines.map(() => blankColumn(openings.length));
  let row = 0;
  for (const opening of openings) {
    const { leaf_width: width, height, track_length: track, floor } = opening;
    const panels = width <= 60 ? 1 : 2;
    const hangers = opening.tail_post ? 3 : 2;
    const jointSets = panels === 1 ? 0 : height <= 96 ? 3 : 4;
    const sections = width <= 72 ? 1 : width > 96 ? 2 : Math.ceil(track / 120);
    const anchors = floor === "concrete" ? 2 : 0;
    const screws = floor === "wood" ? 4 : 0;
    const overlap = Math.max(1, Math.min(width - 24, 12));
    const cut = width + 2 * overlap - 0.5;
    const bought = Math.ceil(track / 8) * 8;
    const quantities = [
      2,
      2 * hangers,
      jointSets * 2,
      2 * panels,
      4,
      hangers,
      sections,
      panels === 2 ? 1 : 0,
      width > 60 ? 4 : 0,
      2 * hangers + anchors,
      height <= opening.post_height && width >= 24 ? 1 : 0,
      panels === 2 && height > 96 ? 2 : 0,
      screws,
      bought,
      cut > 0 ? width / panels : 0,
    ];
    for (let line = 0; line < totals.length; line++) {
      const quantity = quantities[line % quantities.length] ?? 0;
      totals[line] = (totals[line] ?? 0) + quantity;
      const column = kept[line];
      if (column !== undefined) column[row] = quantity;
    }
    row++;
  }
  return { totals, kept };
}

const known = [...fields, ...sizes.map(([name]) => name)];

function compiled(text: string): CompiledFormula {
  const formula = readFormula(text);
  if (!formula.ok) throw new Error(formula.error.message);
  const result = compileFormula(formula.value, {
    slotOf: (name) => (known.includes(name) ? known.indexOf(name) : undefined),
    names: () => known,
    chart: () => undefined,
    chartNames: () => [],
  });
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

const compiledSizes = sizes.map(([, text]) => compiled(text));
const compiledLines = lines.map(compiled);

function byFormulas(fieldColumns: readonly (readonly FormulaValue[])[], rows: number): Counted {
  const columns: (readonly FormulaValue[])[] = [...fieldColumns];
  for (const size of compiledSizes) {
    const column = blankColumn(rows);
    for (let row = 0; row < rows; row++) column[row] = size.evaluate(columns, row);
    columns.push(column);
  }
  const kept = lines.map(() => blankColumn(rows));
  const totals = compiledLines.map((line, index) => {
    const column = kept[index] ?? [];
    let total = 0;
    for (let row = 0; row < rows; row++) {
      const quantity = line.evaluate(columns, row);
      column[row] = quantity;
      if (typeof quantity === "number") total += quantity;
    }
    return total;
  });
  return { totals, kept };
}

/** The same invented openings on every run. */
function invented(rows: number): Opening[] {
  let state = 1;
  const below = (count: number): number => {
    state = (state * 48271) % 2147483647;
    return state % count;
  };
  return Array.from({ length: rows }, () => {
    const width = 30 + below(320) / 2;
    const height = [84, 96, 120][below(3)] ?? 84;
    return {
      leaf_width: width,
      height,
      post_height: height + 12 * below(3),
      tail_post: below(2) === 0,
      floor: ["concrete", "wood", "steel"][below(3)] ?? "",
      track_length: width * 2 + below(8),
    };
  });
}

function milliseconds(work: () => unknown): number {
  const start = performance.now();
  work();
  return performance.now() - start;
}

function columnsOf(openings: readonly Opening[]): FormulaValue[][] {
  return fields.map((field) => {
    const column = blankColumn(openings.length);
    openings.forEach((opening, row) => (column[row] = opening[field]));
    return column;
  });
}

/** A formula over the cells of one row, lengths as their inches. */
function cellFormula(text: string, row: number): string {
  const tokens = tokensOf(text);
  if (!tokens.ok) throw new Error(tokens.error.message);
  const written = tokens.value.map((token) => {
    if (token.kind === "number") return String(token.value);
    const column = token.kind === "name" ? known.indexOf(token.written) : -1;
    return column < 0 ? text.slice(token.position, token.end) : `${columnName(column)}${row + 1}`;
  });
  return `=${written.join(" ").replaceAll(" (", "(")}`;
}

function compareWithEngine(rows: number): void {
  const wasm = createRequire(import.meta.url).resolve("@ironcalc/wasm/wasm_bg.wasm");
  initSync({ module: readFileSync(wasm) });
  const model = new Model("bench", "en", "UTC", "en");
  model.pauseEvaluation();
  const openings = invented(rows);
  const formulas = [...sizes.map(([, text]) => text), ...lines];
  openings.forEach((opening, row) => {
    fields.forEach((field, column) => {
      model.setUserInput(0, row + 1, column + 1, String(opening[field]).toUpperCase());
    });
    formulas.forEach((text, index) => {
      model.setUserInput(0, row + 1, fields.length + index + 1, cellFormula(text, row));
    });
  });
  const columns = columnsOf(openings);
  const { kept } = byFormulas(columns, rows);
  model.evaluate();
  lines.forEach((text, line) => {
    const theirs = Number(
      model.getFormattedCellValue(0, rows, fields.length + sizes.length + line + 1),
    );
    const own = Number(kept[line]?.[rows - 1]);
    if (!(Math.abs(theirs - own) < 1e-3)) throw new Error(`${text}: ${own} and ${theirs}`);
  });
  let engine = Infinity;
  let own = Infinity;
  for (let turn = 0; turn < 10; turn++) {
    engine = Math.min(
      engine,
      milliseconds(() => {
        model.evaluate();
      }),
    );
    own = Math.min(
      own,
      milliseconds(() => byFormulas(columns, rows)),
    );
  }
  console.log(
    `${rows} openings x ${formulas.length} formulas: spreadsheet engine ${engine.toFixed(1)} ms,` +
      ` formulas ${own.toFixed(2)} ms, ${(engine / own).toFixed(0)} times faster`,
  );
}

function compare(rows: number): void {
  const openings = invented(rows);
  const columns = columnsOf(openings);
  const one = byHand(openings).totals;
  const other = byFormulas(columns, rows).totals;
  if (one.some((total, line) => Math.abs(total - (other[line] ?? NaN)) > 1e-6)) {
    throw new Error("The two do not count the same");
  }
  let hand = Infinity;
  let formulas = Infinity;
  for (let turn = 0; turn < 25; turn++) {
    hand = Math.min(
      hand,
      milliseconds(() => byHand(openings)),
    );
    formulas = Math.min(
      formulas,
      milliseconds(() => byFormulas(columns, rows)),
    );
  }
  const each = (formulas * 1e6) / (rows * (sizes.length + lines.length));
  console.log(
    `${rows} openings x ${sizes.length + lines.length} formulas: by hand ${hand.toFixed(2)} ms,` +
      ` formulas ${formulas.toFixed(2)} ms (${each.toFixed(1)} ns each),` +
      ` ratio ${(formulas / hand).toFixed(2)}`,
  );
}

for (const rows of [1_000, 10_000, 100_000]) compare(rows);
compareWithEngine(1_000);
