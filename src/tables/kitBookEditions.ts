/**
 * Kit books beside each other in one workbook.
 *
 * A book that takes the place of another stands beside it as a later edition, which its titles name
 * (`Kit book parts, edition 2`). Only the latest edition is read, and what is passed over is said. So a
 * book is replaced without a cell of the old one being touched, whatever its sheets are called, and the
 * old one counts again once the sheets of the new one are gone.
 */
import type { Block, CellPlace, TypedCell } from "../core/base/cell";
import { makeFinding, type Finding, type FindingTable } from "../core/base/finding";
import { sectionTitle, type KitBookColumn } from "./kitBookColumns";
import type { KitBookPart } from "./kitBookParts";

export const kitBookEditionFindings = {
  "kit-book-edition-passed": {
    level: "note",
    says: "The {section} on this sheet are not read: edition {edition} of the kit book is in use.",
    todo: "Delete the sheets of the later edition to use these again.",
  },
  "kit-book-edition-missing": {
    level: "warn",
    says: "The {section} on this sheet are not read: edition {edition} of the kit book is in use, and these name no edition.",
    todo: 'Write "{title}" in a row above their headings to have them read as well.',
  },
  "kit-book-copied": {
    level: "warn",
    says: 'All {count} rows of the {section} here stand on the sheet "{found}" too, and are counted twice.',
    todo: "Delete one of the two sheets if it is a copy.",
  },
} as const satisfies FindingTable;

/** A part of a kit book with the block that it stands in. */
export type PlacedPart = { readonly block: Block; readonly part: KitBookPart };

/** A row of a sheet, whichever block it was read in. */
export const placeKey = (block: Block, row: number): string => `${block.sheet}\n${block.row + row}`;

/** The edition of each part: a table's is that of the title above it, which is in its sheet's block only. */
export function editions(placed: readonly PlacedPart[]): (part: PlacedPart) => number {
  const named = new Map<string, number>();
  const keyOf = ({ block, part }: PlacedPart): string =>
    placeKey(block, part.headings?.row ?? part.titleRow);
  for (const one of placed) {
    const { edition } = one.part;
    if (edition !== null) named.set(keyOf(one), Math.max(edition, named.get(keyOf(one)) ?? 1));
  }
  return (one) => named.get(keyOf(one)) ?? 1;
}

/** That a part of an earlier edition is not read. */
export function passedOver({ block, part }: PlacedPart, edition: number): Finding {
  const code = part.isNamed ? "kit-book-edition-passed" : "kit-book-edition-missing";
  const row = part.headings?.row ?? part.titleRow;
  return makeFinding(kitBookEditionFindings, code, {
    place: { sheet: block.sheet, row: block.row + row, column: block.column },
    values: {
      section: part.section,
      edition,
      title: sectionTitle(part.section, edition),
    },
  });
}

/** Parts that stand on two sheets alike: most likely a person copied the sheet, to be safe. */
export function copiedFindings(
  parts: readonly ReadonlyMap<KitBookColumn, TypedCell>[],
): readonly Finding[] {
  const bySheet = new Map<string, Set<string>>();
  const firstPlaces = new Map<string, CellPlace>();
  for (const row of parts) {
    const place = [...row.values()][0]?.place;
    if (place === undefined || place === null) continue;
    const rows = bySheet.get(place.sheet) ?? new Set<string>();
    rows.add(JSON.stringify([...row.values()].map(({ value }) => value)));
    bySheet.set(place.sheet, rows);
    if (!firstPlaces.has(place.sheet)) firstPlaces.set(place.sheet, place);
  }
  return [...bySheet].flatMap(([sheet, rows], index) => {
    const original = [...bySheet]
      .slice(0, index)
      .find(([, others]) => [...rows].every((row) => others.has(row)));
    if (original === undefined || rows.size < 2) return [];
    return [
      makeFinding(kitBookEditionFindings, "kit-book-copied", {
        place: firstPlaces.get(sheet) ?? null,
        found: original[0],
        values: { section: "parts", count: rows.size },
      }),
    ];
  });
}
