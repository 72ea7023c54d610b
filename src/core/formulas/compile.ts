/**
 * A formula's tree into closures over columns of values.
 *
 * Each part of the tree becomes one small function; nothing looks at the tree again. A part without
 * names and charts is worked out once, here. No text is ever run as code.
 */
import { err, ok, type Result } from "../base/result";
import { call } from "./calls";
import { errorAt, pieceOf, shown, type Site } from "./coerce";
import {
  cellPart,
  fixedPart,
  readCell,
  runPart,
  valueOf,
  type Evaluator,
  type Part,
} from "./evaluator";
import { formulaFault, type FormulaFault } from "./findings";
import type { ChartLookup, CompiledFormula, Formula, FormulaScope, ReadColumn } from "./formula";
import { nameInFormula, nearestName, normalName } from "./names";
import { binary, unary } from "./operators";
import { childrenOf, type ChartNode, type FormulaNode } from "./tree";
import { isFormulaError } from "./value";

/** Makes the formula ready to run, or tells of the first name or chart that the scope does not know. */
export function compileFormula(
  formula: Formula,
  scope: FormulaScope,
): Result<CompiledFormula, FormulaFault> {
  const slots = new Map<string, number>();
  const columns = new Map<number, ReadColumn>();
  for (const { name, written, position } of formula.names) {
    const slot = scope.slotOf(name);
    if (slot === undefined) {
      const near = nearestName(written, scope.names());
      const hint =
        near === undefined
          ? "Correct the name, or add a size or a column of that name."
          : `Did you mean ${nameInFormula(near)}?`;
      return err(formulaFault("formula-name-unknown", position, written, { hint }));
    }
    slots.set(name, slot);
    if (!columns.has(slot)) columns.set(slot, { slot, name, written });
  }
  const charts = new Map<string, ChartLookup>();
  for (const { chart, position } of formula.charts) {
    const lookup = scope.chart(normalName(chart));
    if (lookup === undefined) {
      const near = nearestName(chart, scope.chartNames());
      const hint =
        near === undefined
          ? "Correct the name, or add a chart of that name."
          : `Did you mean "${near}"?`;
      return err(formulaFault("formula-chart-unknown", position, chart, { hint }));
    }
    charts.set(normalName(chart), lookup);
  }

  const meaning = { formula: formula.text, slots, charts };
  const { run, isFixed, fixed } = partOf(formula.tree, meaning);
  let heard: ((slot: number) => void) | undefined;
  let told: Evaluator | undefined;
  return ok({
    text: formula.text,
    formula,
    columns: [...columns.values()],
    slots: [...columns.keys()],
    constant: isFixed ? fixed : undefined,
    evaluate: run,
    evaluateTold(values, row, read) {
      told ??= partOf(formula.tree, { ...meaning, read: (slot) => heard?.(slot) }).run;
      const before = heard;
      heard = read;
      const value = told(values, row);
      heard = before;
      return value;
    },
  });
}

/** What the names in a tree stand for; `read` is told of each column read, where somebody listens. */
type Meaning = {
  readonly formula: string;
  readonly slots: ReadonlyMap<string, number>;
  readonly charts: ReadonlyMap<string, ChartLookup>;
  readonly read?: (slot: number) => void;
};

function partOf(node: FormulaNode, meaning: Meaning): Part {
  const site: Site = { formula: meaning.formula, node };
  switch (node.kind) {
    case "number":
    case "text":
    case "logical":
      return fixedPart(node.value, site);
    case "name":
      return cell(known(meaning.slots.get(node.name)), meaning.read, site);
    default: {
      const parts = childrenOf(node).map((child) => partOf(child, meaning));
      const run = runOf(node, parts, meaning, site);
      const isFixed = node.kind !== "chart" && parts.every((part) => part.isFixed);
      return isFixed ? fixedPart(run([], 0), site) : runPart(run, site);
    }
  }
}

function cell(slot: number, read: Meaning["read"], site: Site): Part {
  if (read === undefined) return cellPart(slot, site);
  // Not as a column: whoever reads that directly would not be heard.
  return runPart((columns, row) => {
    read(slot);
    return readCell(columns, slot, row);
  }, site);
}

type InnerNode = Exclude<FormulaNode, { readonly kind: "number" | "text" | "logical" | "name" }>;

function runOf(node: InnerNode, parts: readonly Part[], meaning: Meaning, site: Site): Evaluator {
  switch (node.kind) {
    case "unary":
      return unary(node.operator, known(parts[0]));
    case "binary":
      return binary(node.operator, known(parts[0]), known(parts[1]), site);
    case "call":
      return call(node, parts, site);
    case "chart":
      return entry(node, parts, known(meaning.charts.get(normalName(node.chart))), site);
  }
}

function entry(
  node: ChartNode,
  [downPart, acrossPart]: readonly Part[],
  lookup: ChartLookup,
  site: Site,
): Evaluator {
  const downward = known(downPart);
  const sideward = acrossPart ?? fixedPart(null, site);
  const isTwoWay = acrossPart !== undefined;
  return (columns, row) => {
    const down = valueOf(downward, columns, row);
    if (isFormulaError(down)) return down;
    const across = valueOf(sideward, columns, row);
    if (isFormulaError(across)) return across;
    const found = lookup(down, across);
    if (found !== undefined) return found;
    const where = isTwoWay ? `${shown(down)} down and ${shown(across)} across` : shown(down);
    const says = `The chart "${node.chart}" has no entry for ${where} (${pieceOf(site)}).`;
    return { ...errorAt(site, "chart", says), chart: { node, down, across } };
  };
}

function known<Thing>(thing: Thing | undefined): Thing {
  if (thing === undefined) throw new Error("A tree was compiled with a part that was not checked");
  return thing;
}
