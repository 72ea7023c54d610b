/**
 * A formula as a tree. Every node knows where it stands: `position` is its first character in the
 * formula's text (from zero), `end` the one after its last; brackets around a node are not part of it.
 */
import type { FunctionName } from "./functions";

export const comparisons = ["=", "<>", "<", "<=", ">", ">="] as const;
/** Compare numbers as a spreadsheet shows them, and texts without case. */
export type Comparison = (typeof comparisons)[number];

export const isComparison = (operator: BinaryOperator): operator is Comparison =>
  (comparisons as readonly BinaryOperator[]).includes(operator);

export type BinaryOperator = Comparison | "&" | "+" | "-" | "*" | "/" | "^";
/** `%` stands after its operand, the others before. */
export type UnaryOperator = "+" | "-" | "%";

type Span = { readonly position: number; readonly end: number };

/** `isLength` when written as a length, such as `5'` or `1524 mm`; then `value` is in inches. */
export type NumberNode = Span & {
  readonly kind: "number";
  readonly value: number;
  readonly isLength: boolean;
};
export type TextNode = Span & { readonly kind: "text"; readonly value: string };
export type LogicalNode = Span & { readonly kind: "logical"; readonly value: boolean };

/** A size or field: `name` as `normalName` spells it, `written` as typed, brackets left out. */
export type NameNode = Span & {
  readonly kind: "name";
  readonly name: string;
  readonly written: string;
};
export type UnaryNode = Span & {
  readonly kind: "unary";
  readonly operator: UnaryOperator;
  readonly operand: FormulaNode;
};
export type BinaryNode = Span & {
  readonly kind: "binary";
  readonly operator: BinaryOperator;
  readonly left: FormulaNode;
  readonly right: FormulaNode;
};

/** A function with as many arguments as it takes; `TRUE()` and `FALSE()` are logical nodes. */
export type CallNode = Span & {
  readonly kind: "call";
  readonly function: Exclude<FunctionName, "CHART" | "TRUE" | "FALSE">;
  readonly arguments: readonly FormulaNode[];
};

/** A look-up into the chart `chart` (as typed); `across` is `null` where the formula gives none. */
export type ChartNode = Span & {
  readonly kind: "chart";
  readonly chart: string;
  /** Where the chart's name stands. */
  readonly chartPosition: number;
  readonly down: FormulaNode;
  readonly across: FormulaNode | null;
};

export type FormulaNode =
  NumberNode | TextNode | LogicalNode | NameNode | UnaryNode | BinaryNode | CallNode | ChartNode;

/** The nodes directly below `node`, from left to right. */
export function childrenOf(node: FormulaNode): readonly FormulaNode[] {
  switch (node.kind) {
    case "unary":
      return [node.operand];
    case "binary":
      return [node.left, node.right];
    case "call":
      return node.arguments;
    case "chart":
      return node.across === null ? [node.down] : [node.down, node.across];
    default:
      return [];
  }
}
