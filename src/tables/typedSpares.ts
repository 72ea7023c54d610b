/** Whether a person typed over the spares of a line. */
import { cellText, type CellValue } from "../core/base/cell";
import type { WrittenSpares } from "../core/corrections/record";
import { isPieces, pieces } from "../core/base/units";
import { sparesFor } from "../core/pricing/material";

export type SparesRules = {
  /** The item's rule when the sheet was written; `undefined` where it had none. */
  readonly rule: WrittenSpares[string] | undefined;
  /** Whether the rules of that time are known at all. */
  readonly isKnown: boolean;
  /** What had been typed when the sheet was written. */
  readonly own: string | undefined;
};

const isError = (value: CellValue): boolean => typeof value === "object" && value?.kind === "error";

/**
 * The spares as typed; the empty text where they are what the rule makes of one of the quantities that
 * the row shows or showed; `null` where that cannot be told, as where a formula has no result.
 */
export function typedSpares(
  shown: CellValue,
  quantities: readonly CellValue[],
  { rule, isKnown, own }: SparesRules,
): string | null {
  if (typeof shown === "object" && shown !== null) return null;
  const text = cellText(shown).trim();
  if (text === "" || text === own || typeof shown !== "number") return text;
  if (rule === undefined) return shown === 0 ? "" : isKnown ? text : null;
  const counts = quantities.filter((count) => typeof count === "number").filter(isPieces);
  // Beside no quantity there are no spares of ours; an error hides what there is.
  if (counts.length === 0) return quantities.some(isError) ? null : text;
  const policy = { percent: rule.percent, least: pieces(Math.ceil(rule.least)) };
  return counts.some((count) => sparesFor(count, policy) === shown) ? "" : text;
}
