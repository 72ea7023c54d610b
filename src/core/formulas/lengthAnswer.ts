/** Whether a formula's answer is a length, so that a message can write it as one. */
import { isComparison, type CallNode, type FormulaNode } from "./tree";

/**
 * Whether `node` answers a length: one that is written or named as a length, lengths added, chosen or
 * rounded, or a length times or divided by a plain number. `isLength` tells which names are lengths.
 */
export function answersLength(node: FormulaNode, isLength: (name: string) => boolean): boolean {
  const answers = (part: FormulaNode | undefined): boolean =>
    part !== undefined && answersLength(part, isLength);
  switch (node.kind) {
    case "number":
      return node.isLength;
    case "name":
      return isLength(node.name);
    case "unary":
      return node.operator !== "%" && answers(node.operand);
    case "binary": {
      const { operator, left, right } = node;
      if (isComparison(operator)) return false;
      if (operator === "+" || operator === "-") return answers(left) || answers(right);
      if (operator === "*") return answers(left) !== answers(right);
      return operator === "/" && answers(left) && !answers(right);
    }
    case "call":
      return answersOf(node).some(answers);
    default:
      return false;
  }
}

/** The arguments of a call that are of the kind of its answer. */
function answersOf(call: CallNode): readonly FormulaNode[] {
  const taken = call.arguments;
  switch (call.function) {
    case "IF":
      return taken.slice(1);
    case "IFS":
      return taken.filter((_, index) => index % 2 === 1);
    case "SWITCH":
      return taken.filter(
        (_, index) => index > 0 && (index % 2 === 0 || index === taken.length - 1),
      );
    case "MIN":
    case "MAX":
    case "SUM":
      return taken;
    case "ABS":
    case "MOD":
    case "INT":
    case "ROUND":
    case "ROUNDUP":
    case "ROUNDDOWN":
    case "CEILING":
    case "FLOOR":
      return taken.slice(0, 1);
    default:
      return [];
  }
}
