/** A kit book's rows -> the lines of one text file: section below section, each with its title and headings. */
import type { CellValue } from "../core/base/cell";
import {
  kitBookSections,
  sectionColumns,
  type KitBookRows,
  type KitBookSection,
} from "../core/kitbook/rows";
import type { BookRow } from "../core/bookcheck/matchRows";
import { kitBookColumns, sectionTitle } from "./kitBookColumns";

/** As the first edition; `readKitBook` reads them back. */
export const kitBookLines = (rows: KitBookRows): readonly (readonly CellValue[])[] =>
  kitBookSections.flatMap((section) => sectionLines(section, rows[section]));

function sectionLines(
  section: KitBookSection,
  rows: readonly BookRow[],
): readonly (readonly CellValue[])[] {
  return [
    [sectionTitle(section, 1)],
    kitBookColumns[section].map(({ label }) => label),
    ...rows.map((row) => sectionColumns[section].map((column) => row[column]?.value ?? null)),
    [],
  ];
}
