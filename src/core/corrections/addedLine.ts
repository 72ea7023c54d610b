/** A row that a person added by hand -> a line, or why it cannot be counted. */
import { err, ok, type Result } from "../base/result";
import { pieces, type Pieces } from "../base/units";
import type { LengthUnit } from "../lengths/length";
import { readSize } from "../lengths/readSize";
import { readChange } from "./change";
import type { CorrectedLine } from "./correctedLine";
import type { AddedRow } from "./correction";
import type { CorrectionFindingCode } from "./correctionFindings";

/** Why it is not counted, and the text that is wrong. */
export type AddedFault = { readonly code: CorrectionFindingCode; readonly found: string };

/** `unit` is what a bare number in a size means. */
export function addedLine(row: AddedRow, unit: LengthUnit): Result<CorrectedLine, AddedFault> {
  const { item, size, quantity, spares } = row.typed;
  if (item === "") return err({ code: "added-without-item", found: size || quantity });
  if (quantity === "") return err({ code: "added-without-quantity", found: item });
  const count = readPieces(quantity);
  if (count === null || count === 0) return err({ code: "added-not-whole", found: quantity });
  const read = readSize(size, unit);
  if (!read.ok) return err({ code: "added-size", found: size });
  return ok({
    item,
    size: read.value,
    quantity: count,
    counts: [],
    counted: pieces(0),
    typed: row,
    change: { kind: "plus", pieces: count },
    ownSpares: readPieces(spares),
  });
}

/** A whole number from zero up, with or without a plus sign; `null` for anything else. */
export function readPieces(typed: string): Pieces | null {
  const change = readChange(typed);
  return change.ok && change.value.kind !== "minus" ? change.value.pieces : null;
}
