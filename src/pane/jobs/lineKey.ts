/** Tells the lines of a job apart: one added by hand may be of the same item and size as a counted one. */
import type { CorrectedLine } from "../../core/corrections/correctedLine";
import { pieceKey } from "../../core/takeoff/partColumn";

export function lineKey({ item, size, typed }: CorrectedLine): string {
  const key = pieceKey(item, size);
  return typed?.name.kind === "added" ? `${key}\nadded ${typed.name.number}` : key;
}
