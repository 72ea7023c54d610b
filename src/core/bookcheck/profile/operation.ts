/** One operation of a formula by itself: its operands become values that are put in. */
import { compileFormula } from "../../formulas/compile";
import type { ChartLookup } from "../../formulas/formula";
import { childrenOf, type FormulaNode, type NameNode } from "../../formulas/tree";
import type { FormulaValue } from "../../formulas/value";

export type Operation = (values: readonly FormulaValue[]) => FormulaValue;

/** Looks up a chart by its name as typed. */
export type ChartNamed = (name: string) => ChartLookup | undefined;

/**
 * What `node` makes of the values of its operands, exactly as the formula would: the same closures
 * run. @throws Error when the node looks into a chart that is not known.
 */
export function operationOf(text: string, node: FormulaNode, chartNamed: ChartNamed): Operation {
  const names = childrenOf(node).map(({ position, end }, index): NameNode => ({
    kind: "name",
    name: `operand_${index}`,
    written: `operand_${index}`,
    position,
    end,
  }));
  const lookup = node.kind === "chart" ? chartNamed(node.chart) : undefined;
  const compiled = compileFormula(
    {
      text,
      tree: withChildren(node, names),
      names,
      charts: node.kind === "chart" ? [{ chart: node.chart, position: node.position }] : [],
    },
    {
      slotOf: (name) => names.findIndex((operand) => operand.name === name),
      names: () => [],
      chart: () => lookup,
      chartNames: () => [],
    },
  );
  if (!compiled.ok) throw new Error(compiled.error.message);
  return (values) =>
    compiled.value.evaluate(
      values.map((value) => [value]),
      0,
    );
}

function withChildren(node: FormulaNode, children: readonly FormulaNode[]): FormulaNode {
  const [first, second] = children;
  switch (node.kind) {
    case "unary":
      return first === undefined ? node : { ...node, operand: first };
    case "binary":
      return first === undefined || second === undefined
        ? node
        : { ...node, left: first, right: second };
    case "call":
      return { ...node, arguments: children };
    case "chart":
      return first === undefined ? node : { ...node, down: first, across: second ?? null };
    default:
      return node;
  }
}
