/** Lines found by what a person types, and gathered by family. */
import { numberStyle, writeSize } from "../../core/lengths/writeLength";
import type { MaterialLine } from "../../core/pricing/material";

export type FamilyLines = { readonly family: string; readonly lines: readonly MaterialLine[] };

const otherFamily = "Not in the items table";

/**
 * The lines that hold every word of `search` in their code, description, family or size, in any case
 * and order. `shownSize` is the size as the pane writes it.
 */
export function searchLines(
  lines: readonly MaterialLine[],
  search: string,
  shownSize: (line: MaterialLine) => string,
): readonly FamilyLines[] {
  const words = search
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  const families = new Map<string, MaterialLine[]>();
  for (const line of lines) {
    const family = line.item?.family ?? otherFamily;
    const size = `${shownSize(line)} ${writeSize(line.line.size, numberStyle)}`;
    const text = [line.line.item, line.item?.description ?? "", family, size]
      .join(" ")
      .toLowerCase();
    if (!words.every((word) => text.includes(word))) continue;
    const found = families.get(family);
    if (found === undefined) families.set(family, [line]);
    else found.push(line);
  }
  return [...families].map(([family, found]) => ({ family, lines: found }));
}
