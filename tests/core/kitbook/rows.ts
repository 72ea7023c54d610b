/** Kit-book rows in a small notation: cells between `|`, in the order of the section's columns. */
import { placeName, type CellValue, type TypedCell } from "../../../src/core/base/cell";
import type { Finding } from "../../../src/core/base/finding";
import { compileKitBook, type KitBookResult } from "../../../src/core/kitbook/compileKitBook";
import {
  sectionColumns,
  type KitBookRows,
  type KitBookSection,
} from "../../../src/core/kitbook/rows";

export type Notation = Readonly<Partial<Record<KitBookSection, readonly string[]>>>;

const cell = (
  section: KitBookSection,
  row: number,
  column: number,
  value: CellValue,
): TypedCell => ({ value, place: { sheet: section, row, column } });

/** A cell of nothing but digits is a number, an empty one is blank, `#N/A` an error, `@7` a date. */
function valueOf(written: string): CellValue {
  if (written === "") return null;
  if (written.startsWith("#")) return { kind: "error", error: written };
  if (written.startsWith("@")) return { kind: "date", serial: Number(written.slice(1)) };
  return /^\d+$/.test(written) ? Number(written) : written;
}

function typed<Column extends string>(
  section: KitBookSection,
  columns: readonly Column[],
  lines: readonly string[] = [],
): readonly Readonly<Record<Column, TypedCell>>[] {
  return lines.map((line, row) => {
    const values = line.split("|").map((written) => valueOf(written.trim()));
    const cells = columns.map((name, column) => [
      name,
      cell(section, row, column, values[column] ?? null),
    ]);
    return Object.fromEntries(cells) as Readonly<Record<Column, TypedCell>>;
  });
}

export const bookRows = ({ sizes, parts, limits, charts }: Notation): KitBookRows => ({
  sizes: typed("sizes", sectionColumns.sizes, sizes),
  parts: typed("parts", sectionColumns.parts, parts),
  limits: typed("limits", sectionColumns.limits, limits),
  charts: typed("charts", sectionColumns.charts, charts),
});

export const compiled = (
  notation: Notation,
  furtherHeadings: readonly string[] = [],
): KitBookResult => compileKitBook(bookRows(notation), furtherHeadings);

/** A finding as `sizes!C1 size-cycle`. */
export const brief = ({ place, code }: Finding): string =>
  place === null ? code : `${placeName(place)} ${code}`;

/** One part, so that an opening type is not reported as one without parts. */
export const onePart = "Door | Bag | 1 | NUT | | 1";
