/** Compiling the formulas of one row for one opening type. */
import type { Result } from "../base/result";
import { err, ok } from "../base/result";
import type { Finding } from "../base/finding";
import { compileFormula } from "../formulas/compile";
import { faultFinding } from "../formulas/findings";
import type { ChartLookup, FormulaScope } from "../formulas/formula";
import { nearestName, normalName } from "../formulas/names";
import { chartsOf, referencesOf } from "../formulas/references";
import { childrenOf, type FormulaNode } from "../formulas/tree";
import type { Value } from "../formulas/value";
import type { Chart } from "./chart";
import type { Field } from "./fields";
import type { BookFormula, CompiledSize, MessagePiece } from "./kitBook";
import type { ReadMessagePiece } from "./message";
import { bookFinding, type ReadFormula } from "./readCell";

/** A chart that formulas may look into. */
export type KnownChart = {
  readonly chart: Chart;
  readonly lookup: ChartLookup;
  /** Whether a bad row keeps it from being used. */
  readonly broken: boolean;
};

/** What the formulas of one opening type may name. Sizes are added as they are compiled. */
export type TypeNames = {
  readonly fields: readonly Field[];
  /** By name, as `normalName` spells it. */
  readonly charts: ReadonlyMap<string, KnownChart>;
  readonly sizes: Map<string, CompiledSize>;
  /** Sizes that cannot be worked out, by name, with the name as typed. */
  readonly brokenSizes: Map<string, string>;
};

/** The slot of a size or field; a size goes before a heading of the same name. */
function slotOf(names: TypeNames, name: string): number | undefined {
  const size = names.sizes.get(name);
  if (size !== undefined) return size.slot;
  const slot = names.fields.findIndex((field) => field.name === name);
  return slot < 0 ? undefined : slot;
}

const nameList = (names: TypeNames): readonly string[] => [
  ...[...names.sizes.values()].map((size) => size.name),
  ...names.fields.map((field) => field.name),
];

const scopeOf = (names: TypeNames): FormulaScope => ({
  slotOf: (name) => slotOf(names, name),
  names: () => nameList(names),
  chart: (name) => names.charts.get(name)?.lookup,
  chartNames: () => [...names.charts.values()].map(({ chart }) => chart.name),
});

/** Compiles one formula, or says why it cannot be used for this opening type. */
export function compileBookFormula(
  read: ReadFormula,
  names: TypeNames,
): Result<BookFormula, Finding> {
  const { text, place, formula } = read;
  const needs = needsBadSize(referencesOf(formula), read, names) ?? badChart(read, names);
  if (needs !== null) return err(needs);
  const compiled = compileFormula(formula, scopeOf(names));
  if (!compiled.ok) return err(faultFinding(compiled.error, text, place));
  return ok({ text, place, compiled: compiled.value });
}

function needsBadSize(
  uses: readonly string[],
  { text, place }: Pick<ReadFormula, "text" | "place">,
  { brokenSizes }: TypeNames,
): Finding | null {
  const bad = uses.find((name) => brokenSizes.has(name));
  if (bad === undefined) return null;
  const values = { size: brokenSizes.get(bad) ?? bad };
  return bookFinding("book-needs-bad-size", { place, found: text, values });
}

function badChart({ text, place, formula }: ReadFormula, { charts }: TypeNames): Finding | null {
  for (const name of chartsOf(formula)) {
    const known = charts.get(name);
    if (known?.broken !== true) continue;
    const values = { chart: known.chart.name };
    return bookFinding("book-needs-bad-chart", { place, found: text, values });
  }
  const misused = chartNodes(formula.tree).find(({ chart, across }) => {
    const known = charts.get(normalName(chart));
    return known !== undefined && known.chart.twoWay !== (across !== null);
  });
  if (misused === undefined) return null;
  const [has, uses] =
    misused.across === null ? ["two ways", "one value"] : ["one way", "two values"];
  const values = { chart: misused.chart, has, uses };
  return bookFinding("chart-ways", { place, found: text, values });
}

type ChartNode = Extract<FormulaNode, { readonly kind: "chart" }>;

function chartNodes(node: FormulaNode): readonly ChartNode[] {
  const below = childrenOf(node).flatMap(chartNodes);
  return node.kind === "chart" ? [node, ...below] : below;
}

/** The pieces of a limit's message with the slots of their names. */
export function compileMessage(
  pieces: readonly ReadMessagePiece[],
  cell: Pick<ReadFormula, "text" | "place">,
  names: TypeNames,
): Result<readonly MessagePiece[], Finding> {
  const compiled: MessagePiece[] = [];
  for (const piece of pieces) {
    if (piece.kind === "words") {
      compiled.push(piece);
      continue;
    }
    const needs = needsBadSize([piece.name], cell, names);
    if (needs !== null) return err(needs);
    const slot = slotOf(names, piece.name);
    if (slot === undefined) return err(unknownInMessage(piece.written, cell, names));
    compiled.push({ kind: "value", slot });
  }
  return ok(compiled);
}

function unknownInMessage(
  written: string,
  { place }: Pick<ReadFormula, "place">,
  names: TypeNames,
): Finding {
  const nearest = nearestName(written, nameList(names));
  const hint =
    nearest === undefined
      ? "Write the name of a size or field between { and }, or take the braces out."
      : `Did you mean {${nearest}}?`;
  const found = `{${written}}`;
  return bookFinding("message-name-unknown", { place, found, values: { hint } });
}

/** A constant as a message shows it. */
export const shownConstant = (value: Value): string =>
  value === null ? "nothing" : typeof value === "string" ? `"${value}"` : String(value);
