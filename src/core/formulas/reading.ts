/** Where the reading of a formula stands, and the steps that every reader takes. */
import { formulaFault, type FormulaFault, type FormulaFaultCode } from "./findings";
import type { ChartReference, NameReference } from "./formula";
import { formulaLimits } from "./limits";
import type { Token } from "./tokens";
import type { FormulaNode } from "./tree";

/** Where reading stands. A reader that answers `null` has set `fault`. */
export type Reading = {
  readonly text: string;
  readonly tokens: readonly Token[];
  at: number;
  depth: number;
  parts: number;
  fault: FormulaFault | undefined;
  readonly names: NameReference[];
  readonly charts: ChartReference[];
};

/** Reads what stands inside brackets or behind a sign, and counts the depth against the limit. */
export function deeper<Answer>(
  reading: Reading,
  token: Token,
  read: () => Answer | null,
): Answer | null {
  const most = formulaLimits.depth;
  if (reading.depth >= most) return fail(reading, "formula-too-deep", token, { most });
  reading.depth++;
  const answer = read();
  reading.depth--;
  return answer;
}

/** Counts the node against the limit. */
export function part(reading: Reading, node: FormulaNode): FormulaNode | null {
  reading.parts++;
  const most = formulaLimits.parts;
  if (reading.parts <= most) return node;
  reading.fault = formulaFault("formula-too-many-parts", node.position, "", { most });
  return null;
}

/** Sets the fault at a token; the first one stays. */
export function fail(
  reading: Reading,
  code: FormulaFaultCode,
  token: Token,
  values?: Readonly<Record<string, string | number>>,
): null {
  const piece = token.kind === "end" ? "" : reading.text.slice(token.position, token.end);
  reading.fault ??= formulaFault(code, token.position, piece, values);
  return null;
}

/** A token as a sentence names it. */
export function pieceAt(reading: Reading, { kind, position, end }: Token): string {
  return kind === "end" ? "the end of the formula" : `"${reading.text.slice(position, end)}"`;
}

export const isOperator = (token: Token, operator: string): boolean =>
  token.kind === "operator" && token.operator === operator;

/** There is always one: the last token is of kind `end`, and nothing passes it. */
export function current(reading: Reading): Token {
  const token = reading.tokens[reading.at];
  if (token === undefined) throw new Error("Read past the end of a formula");
  return token;
}

/** The end of the token before the current one. */
export const endOf = (reading: Reading): number => reading.tokens[reading.at - 1]?.end ?? 0;
