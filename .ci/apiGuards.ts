/** Which requirement sets are known to be there at a place in the code, since someone asked for them. */
import ts from "typescript";

/** Versions by the name of the set, such as `ExcelApi` → `1.13`. */
export type Sets = ReadonlyMap<string, string>;

/** Above zero when `one` is a later version than `other`. */
export function later(one: string, other: string): number {
  const [major = 0, minor = 0] = one.split(".").map(Number);
  const [otherMajor = 0, otherMinor = 0] = other.split(".").map(Number);
  return major - otherMajor || minor - otherMinor;
}

/**
 * What holds at `node`: the questions of the `if`s, conditions and `&&`s around it, and of earlier
 * `if`s that leave the block where the answer is no.
 */
export function setsKnownAt(node: ts.Node, checker: ts.TypeChecker): Sets {
  const known = new Map<string, string>();
  const add = (sets: Sets): void => {
    for (const [set, version] of sets) {
      if (later(version, known.get(set) ?? "0.0") > 0) known.set(set, version);
    }
  };
  for (let at = node; !ts.isSourceFile(at); at = at.parent) {
    const { parent } = at;
    if (ts.isIfStatement(parent)) {
      if (parent.thenStatement === at) add(setsWhen(parent.expression, true, checker));
      if (parent.elseStatement === at) add(setsWhen(parent.expression, false, checker));
    } else if (ts.isConditionalExpression(parent)) {
      if (parent.whenTrue === at) add(setsWhen(parent.condition, true, checker));
      if (parent.whenFalse === at) add(setsWhen(parent.condition, false, checker));
    } else if (ts.isBinaryExpression(parent) && parent.right === at) {
      const { kind } = parent.operatorToken;
      if (kind === ts.SyntaxKind.AmpersandAmpersandToken) add(setsWhen(parent.left, true, checker));
      if (kind === ts.SyntaxKind.BarBarToken) add(setsWhen(parent.left, false, checker));
    } else if (ts.isBlock(parent) || ts.isSourceFile(parent) || ts.isCaseClause(parent)) {
      for (const before of parent.statements) {
        if (before === at) break;
        if (ts.isIfStatement(before) && leaves(before.thenStatement)) {
          add(setsWhen(before.expression, false, checker));
        }
      }
    }
  }
  return known;
}

/** What is known once `condition` came out as `outcome`. */
function setsWhen(condition: ts.Expression, outcome: boolean, checker: ts.TypeChecker): Sets {
  if (ts.isParenthesizedExpression(condition)) {
    return setsWhen(condition.expression, outcome, checker);
  }
  if (ts.isPrefixUnaryExpression(condition)) {
    const isNot = condition.operator === ts.SyntaxKind.ExclamationToken;
    return isNot ? setsWhen(condition.operand, !outcome, checker) : new Map();
  }
  if (ts.isBinaryExpression(condition)) {
    const { kind } = condition.operatorToken;
    const isAnd = kind === ts.SyntaxKind.AmpersandAmpersandToken;
    const isOr = kind === ts.SyntaxKind.BarBarToken;
    // All of an `and` holds when it is true, none of an `or` when it is false.
    if ((isAnd && outcome) || (isOr && !outcome)) {
      return new Map([
        ...setsWhen(condition.left, outcome, checker),
        ...setsWhen(condition.right, outcome, checker),
      ]);
    }
    return new Map();
  }
  return outcome ? setsAsked(condition, checker) : new Map();
}

/** A question for a set: asked directly, through a function of ours, or kept in a constant. */
function setsAsked(expression: ts.Expression, checker: ts.TypeChecker): Sets {
  if (ts.isIdentifier(expression)) {
    const declared = checker.getSymbolAtLocation(expression)?.valueDeclaration;
    const isConstant =
      declared !== undefined &&
      ts.isVariableDeclaration(declared) &&
      (ts.getCombinedNodeFlags(declared) & ts.NodeFlags.Const) !== 0;
    return isConstant && declared.initializer !== undefined
      ? setsWhen(declared.initializer, true, checker)
      : new Map();
  }
  if (!ts.isCallExpression(expression)) return new Map();
  if (isSetQuestion(expression)) return asked(expression.arguments.map(literal));
  const question = questionOf(expression, checker);
  if (question === null) return new Map();
  return asked(
    question.call.arguments.map((argument) => {
      const place = ts.isIdentifier(argument) ? question.parameters.indexOf(argument.text) : -1;
      return place < 0 ? literal(argument) : literal(expression.arguments[place]);
    }),
  );
}

/** `isSetSupported(set, version)`, on whatever object. */
const isSetQuestion = ({ expression }: ts.CallExpression): boolean =>
  ts.isPropertyAccessExpression(expression) && expression.name.text === "isSetSupported";

const literal = (argument: ts.Expression | undefined): string | null =>
  argument !== undefined && ts.isStringLiteralLike(argument) ? argument.text : null;

const asked = ([set, version]: readonly (string | null)[]): Sets =>
  set === undefined || set === null ? new Map() : new Map([[set, version ?? "1.1"]]);

/** The question that a function of ours does nothing but ask, and its parameters. */
function questionOf(
  call: ts.CallExpression,
  checker: ts.TypeChecker,
): { readonly call: ts.CallExpression; readonly parameters: readonly string[] } | null {
  const declaration = checker.getResolvedSignature(call)?.declaration;
  if (declaration === undefined || !("body" in declaration)) return null;
  const { body } = declaration;
  const returned =
    body === undefined || !ts.isBlock(body)
      ? body
      : body.statements.map((each) =>
          ts.isReturnStatement(each) ? each.expression : undefined,
        )[0];
  if (returned === undefined || !ts.isCallExpression(returned) || !isSetQuestion(returned)) {
    return null;
  }
  const parameters = declaration.parameters.map(({ name }) => name.getText());
  return { call: returned, parameters };
}

/** Whether the statement never comes to its end. */
function leaves(statement: ts.Statement): boolean {
  if (ts.isBlock(statement)) {
    const last = statement.statements.at(-1);
    return last !== undefined && leaves(last);
  }
  return (
    ts.isReturnStatement(statement) ||
    ts.isThrowStatement(statement) ||
    ts.isContinueStatement(statement) ||
    ts.isBreakStatement(statement)
  );
}
