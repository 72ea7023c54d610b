/**
 * Reads a formula's text into a checked tree.
 *
 * Precedence is OpenFormula's (5.5 Infix Operators), which is every common spreadsheet's: signs bind
 * closest (`-2^2` is 4), then `%`, `^` from left to right (`2^3^2` is 64), `*` and `/`, `+` and `-`,
 * `&`, comparisons last. Three things are stricter than there, because each would count wrong in
 * silence: comparisons in a row, empty arguments, and a chart whose name is not a plain text.
 */
import { err, ok, type Result } from "../base/result";
import { callFault } from "./callFault";
import { formulaFault, type FormulaFault } from "./findings";
import type { Formula } from "./formula";
import { functionNamed, type FunctionName } from "./functions";
import { formulaLimits } from "./limits";
import { normalName } from "./names";
import { current, deeper, endOf, fail, isOperator, part, pieceAt, type Reading } from "./reading";
import { tokensOf, type Token } from "./tokens";
import { isComparison, type BinaryOperator, type FormulaNode } from "./tree";

/** The formula, or its first fault. Names and charts are looked up when it is compiled. */
export function readFormula(text: string): Result<Formula, FormulaFault> {
  const count = text.length;
  if (count > formulaLimits.characters) {
    const most = formulaLimits.characters;
    return err(formulaFault("formula-too-long", most, "", { count, most }));
  }
  const tokens = tokensOf(text);
  if (!tokens.ok) return tokens;
  const [first] = tokens.value;
  if (first === undefined || first.kind === "end") return err(formulaFault("formula-empty", 0, ""));
  const reading: Reading = {
    text,
    tokens: tokens.value,
    at: 0,
    depth: 0,
    parts: 0,
    fault: undefined,
    names: [],
    charts: [],
  };
  const tree = readExpression(reading, lowest);
  const token = reading.tokens[reading.at];
  if (tree !== null && token !== undefined && token.kind !== "end") unexpected(reading, token);
  if (reading.fault !== undefined) return err(reading.fault);
  if (tree === null) throw new Error("A formula that was not read has no fault");
  return ok({ text, tree, names: reading.names, charts: reading.charts });
}

type Read = FormulaNode | null;

const lowest = 1;

/** How closely each operator binds; all go from left to right. */
const binding: Readonly<Record<BinaryOperator, number>> = {
  "=": lowest,
  "<>": lowest,
  "<": lowest,
  "<=": lowest,
  ">": lowest,
  ">=": lowest,
  "&": 2,
  "+": 3,
  "-": 3,
  "*": 4,
  "/": 4,
  "^": 5,
};

function readExpression(reading: Reading, least: number): Read {
  const { position } = current(reading);
  let left = readPercent(reading);
  let isCompared = false;
  while (left !== null) {
    const token = current(reading);
    if (token.kind !== "operator" || token.operator === "%") break;
    const { operator } = token;
    if (binding[operator] < least) break;
    if (isComparison(operator)) {
      if (isCompared) return fail(reading, "formula-comparison-chained", token);
      isCompared = true;
    }
    reading.at++;
    const right = readExpression(reading, binding[operator] + 1);
    if (right === null) return null;
    left = part(reading, { kind: "binary", operator, left, right, position, end: endOf(reading) });
  }
  return left;
}

function readPercent(reading: Reading): Read {
  const { position } = current(reading);
  let operand = readSign(reading);
  while (operand !== null && isOperator(current(reading), "%")) {
    reading.at++;
    const end = endOf(reading);
    operand = part(reading, { kind: "unary", operator: "%", operand, position, end });
  }
  return operand;
}

function readSign(reading: Reading): Read {
  const token = current(reading);
  if (token.kind !== "operator" || (token.operator !== "-" && token.operator !== "+")) {
    return readOperand(reading);
  }
  const { operator, position } = token;
  reading.at++;
  const operand = deeper(reading, token, () => readSign(reading));
  if (operand === null) return null;
  return part(reading, { kind: "unary", operator, operand, position, end: endOf(reading) });
}

function readOperand(reading: Reading): Read {
  const token = current(reading);
  const { position, end } = token;
  reading.at++;
  switch (token.kind) {
    case "number": {
      const { value, isLength } = token;
      return part(reading, { kind: "number", value, isLength, position, end });
    }
    case "text":
      return part(reading, { kind: "text", value: token.value, position, end });
    case "name":
      return readName(reading, token);
    case "open":
      return deeper(reading, token, () => {
        const inside = readExpression(reading, lowest);
        return inside !== null && closes(reading, token) ? inside : null;
      });
    default:
      reading.at--;
      return fail(reading, "formula-value-expected", token, { what: pieceAt(reading, token) });
  }
}

function readName(reading: Reading, token: Token & { readonly kind: "name" }): Read {
  const { written, isBracketed, position, end } = token;
  const open = current(reading);
  if (open.kind === "open" && !isBracketed) return readCall(reading, token, open);
  const upper = written.toUpperCase();
  if (!isBracketed && (upper === "TRUE" || upper === "FALSE")) {
    return part(reading, { kind: "logical", value: upper === "TRUE", position, end });
  }
  const name = normalName(written);
  reading.names.push({ name, written, position });
  return part(reading, { kind: "name", name, written, position, end });
}

function readCall(reading: Reading, token: Token & { readonly kind: "name" }, open: Token): Read {
  reading.at++;
  const called = functionNamed(token.written.toUpperCase());
  const taken = deeper(reading, token, () => readArguments(reading, open));
  if (taken === null) return null;
  const { position } = token;
  const fault = callFault(token.written, position, called, taken);
  if (fault !== undefined || called === undefined) {
    reading.fault = fault;
    return null;
  }
  return part(reading, nodeOf(reading, called, taken, position, endOf(reading)));
}

function nodeOf(
  reading: Reading,
  called: FunctionName,
  taken: readonly FormulaNode[],
  position: number,
  end: number,
): FormulaNode {
  if (called === "TRUE" || called === "FALSE") {
    return { kind: "logical", value: called === "TRUE", position, end };
  }
  if (called !== "CHART")
    return { kind: "call", function: called, arguments: taken, position, end };
  const [chart, down, across = null] = taken;
  if (chart?.kind !== "text" || down === undefined) throw new Error("CHART was not checked");
  const chartPosition = chart.position;
  reading.charts.push({ chart: chart.value, position: chartPosition });
  return { kind: "chart", chart: chart.value, chartPosition, down, across, position, end };
}

/** The arguments up to the closing bracket; the opening one is behind. */
function readArguments(reading: Reading, open: Token): readonly FormulaNode[] | null {
  const taken: FormulaNode[] = [];
  if (current(reading).kind === "close") {
    reading.at++;
    return taken;
  }
  for (;;) {
    const start = current(reading);
    if (start.kind === "separator" || start.kind === "close") {
      return fail(reading, "formula-argument-empty", start);
    }
    const argument = readExpression(reading, lowest);
    if (argument === null) return null;
    taken.push(argument);
    if (current(reading).kind === "separator") reading.at++;
    else return closes(reading, open) ? taken : null;
  }
}

/** Passes the bracket that closes `open`. */
function closes(reading: Reading, open: Token): boolean {
  const token = current(reading);
  if (token.kind === "close") {
    reading.at++;
    return true;
  }
  if (token.kind === "end") fail(reading, "formula-bracket-open", open);
  else unexpected(reading, token);
  return false;
}

/** What stands where a formula or an argument could have ended. */
function unexpected(reading: Reading, token: Token): null {
  if (token.kind === "close") return fail(reading, "formula-bracket-extra", token);
  if (token.kind === "separator") return fail(reading, "formula-separator", token);
  const before = reading.tokens[reading.at - 1];
  const isSplit = before?.kind === "name" && token.kind === "name";
  const hint = isSplit
    ? ` A heading of several words stands in square brackets: [${before.written} ${token.written}].`
    : "";
  return fail(reading, "formula-operator-expected", token, { hint });
}
