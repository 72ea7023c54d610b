/** Random formula trees, and their text with no more brackets than precedence asks for. */
import fc from "fast-check";
import { childrenOf, type BinaryOperator, type FormulaNode } from "../../../src/core/formulas/tree";

/** A tree without positions. */
export type Shape =
  | { readonly kind: "number"; readonly value: number; readonly isLength: boolean }
  | { readonly kind: "text"; readonly value: string }
  | { readonly kind: "logical"; readonly value: boolean }
  | { readonly kind: "name"; readonly name: string }
  | { readonly kind: "unary"; readonly operator: "+" | "-" | "%"; readonly operand: Shape }
  | {
      readonly kind: "binary";
      readonly operator: BinaryOperator;
      readonly left: Shape;
      readonly right: Shape;
    }
  | { readonly kind: "call"; readonly function: string; readonly arguments: readonly Shape[] };

const levels: readonly (readonly BinaryOperator[])[] = [
  ["=", "<>", "<", "<=", ">", ">="],
  ["&"],
  ["+", "-"],
  ["*", "/"],
  ["^"],
];
const percentLevel = levels.length;
const signLevel = percentLevel + 1;
const operandLevel = signLevel + 1;

function levelOf(shape: Shape): number {
  if (shape.kind === "binary") {
    return levels.findIndex((level) => level.includes(shape.operator));
  }
  if (shape.kind === "unary") return shape.operator === "%" ? percentLevel : signLevel;
  return operandLevel;
}

/** The text of `shape`, in brackets where it binds less closely than `least`. */
export function textOf(shape: Shape, least = 0): string {
  const level = levelOf(shape);
  const text = bareText(shape, level);
  return level < least ? `(${text})` : text;
}

function bareText(shape: Shape, level: number): string {
  switch (shape.kind) {
    case "number":
      return shape.isLength ? `${shape.value}"` : String(shape.value);
    case "text":
      return `"${shape.value.replaceAll('"', '""')}"`;
    case "logical":
      return shape.value ? "TRUE" : "FALSE";
    case "name":
      return shape.name;
    case "unary":
      return shape.operator === "%"
        ? `${textOf(shape.operand, percentLevel)}%`
        : `${shape.operator}${textOf(shape.operand, signLevel)}`;
    case "binary": {
      // From left to right; comparisons in a row need brackets on both sides.
      const left = textOf(shape.left, level === 0 ? 1 : level);
      return `${left} ${shape.operator} ${textOf(shape.right, level + 1)}`;
    }
    case "call":
      return `${shape.function}(${shape.arguments.map((argument) => textOf(argument)).join(", ")})`;
  }
}

/** The shape of a tree that was read. */
export function shapeOf(node: FormulaNode): Shape {
  const [first, second] = childrenOf(node).map(shapeOf);
  switch (node.kind) {
    case "number":
      return { kind: "number", value: node.value, isLength: node.isLength };
    case "text":
      return { kind: "text", value: node.value };
    case "logical":
      return { kind: "logical", value: node.value };
    case "name":
      return { kind: "name", name: node.name };
    case "unary":
      return { kind: "unary", operator: node.operator, operand: shapeOf(node.operand) };
    case "binary":
      if (first === undefined || second === undefined) throw new Error("An operand is missing");
      return { kind: "binary", operator: node.operator, left: first, right: second };
    case "call":
      return {
        kind: "call",
        function: node.function,
        arguments: node.arguments.map((argument) => shapeOf(argument)),
      };
    case "chart":
      throw new Error("Random trees have no charts");
  }
}

const calls: readonly (readonly [name: string, count: number])[] = [
  ["IF", 2],
  ["IF", 3],
  ["IFS", 4],
  ["SWITCH", 3],
  ["SWITCH", 4],
  ["AND", 2],
  ["OR", 3],
  ["NOT", 1],
  ["MIN", 2],
  ["MAX", 3],
  ["SUM", 2],
  ["ABS", 1],
  ["INT", 1],
  ["MOD", 2],
  ["ROUND", 2],
  ["ROUNDUP", 1],
  ["ROUNDDOWN", 2],
  ["CEILING", 2],
  ["FLOOR", 1],
  ["ISBLANK", 1],
  ["ISNUMBER", 1],
  ["ISTEXT", 1],
  ["LEN", 1],
  ["LEFT", 2],
  ["RIGHT", 1],
  ["UPPER", 1],
  ["LOWER", 1],
  ["TRIM", 1],
];

/** Random shapes over the names `names`; `isLength` numbers are whole, so that any text is exact. */
export function shapes(names: readonly string[]): fc.Arbitrary<Shape> {
  const number = fc.record({
    kind: fc.constant("number" as const),
    value: fc.oneof(
      fc.nat(12),
      fc.constantFrom(0.1, 0.2, 0.3, 0.5, 2.5, 1 / 3, 60, 84, 1e-7, 1e21),
    ),
    isLength: fc.boolean(),
  });
  const leaf: fc.Arbitrary<Shape> = fc.oneof(
    number,
    fc.record({
      kind: fc.constant("text" as const),
      value: fc.constantFrom("", "a", "A", "wood", "3", "TRUE", 'say "x"', "5'"),
    }),
    fc.record({ kind: fc.constant("logical" as const), value: fc.boolean() }),
    ...(names.length === 0
      ? []
      : [fc.record({ kind: fc.constant("name" as const), name: fc.constantFrom(...names) })]),
  );
  return fc.letrec<{ shape: Shape }>((tie) => {
    const shape = tie("shape");
    return {
      shape: fc.oneof(
        { depthSize: "small", withCrossShrink: true },
        leaf,
        fc.record({
          kind: fc.constant("unary" as const),
          operator: fc.constantFrom("+" as const, "-" as const, "%" as const),
          operand: shape,
        }),
        fc.record({
          kind: fc.constant("binary" as const),
          operator: fc.constantFrom(...levels.flat()),
          left: shape,
          right: shape,
        }),
        fc.constantFrom(...calls).chain(([name, count]) =>
          fc.record({
            kind: fc.constant("call" as const),
            function: fc.constant(name),
            arguments: fc.array(shape, { minLength: count, maxLength: count }),
          }),
        ),
      ),
    };
  }).shape;
}
