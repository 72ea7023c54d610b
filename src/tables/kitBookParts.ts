/**
 * Where the sections of a kit book stand in a block of cells.
 *
 * A section begins at its title (`Sizes`, `Kit book parts`), at the top of a sheet of that name, or at
 * its very headings; then come its heading row and its rows. Sections may stand one below the other.
 */
import { isBlank, type Block, type CellValue } from "../core/base/cell";
import { kitBookSections, type KitBookSection } from "../core/kitbook/rows";
import { sizeUnits } from "../core/kitbook/sizeUnit";
import { matchHeadings } from "./headings";
import {
  kitBookColumns,
  readSectionTitle,
  tellsSection,
  type KitBookColumn,
  type SectionTitle,
} from "./kitBookColumns";

/** A kit book that is there begins within so many rows of its sheet. */
const rowsToBegin = 40;

export type SectionHeadings = {
  /** Counted from the block's first row. */
  readonly row: number;
  readonly columns: ReadonlyMap<KitBookColumn, number>;
};

export type KitBookPart = {
  readonly section: KitBookSection;
  readonly titleRow: number;
  /** `null` where a title announces a section and no headings follow. */
  headings: SectionHeadings | null;
  readonly rows: number[];
  /** Whether its title, or the name of its sheet, says that it is of a kit book. */
  readonly isNamed: boolean;
  /** The edition that its title names, else the name of its sheet; `null` where neither does. */
  readonly edition: number | null;
};

/** The sections of a kit book in a block, each with its headings and the rows below that hold anything. */
export function kitBookParts(block: Block): readonly KitBookPart[] {
  const parts: KitBookPart[] = [];
  const sheetTitle = readSectionTitle(block.sheet);
  const begin = (
    section: KitBookSection,
    titleRow: number,
    headings: SectionHeadings | null,
    title: SectionTitle | null,
  ): KitBookPart => {
    const ofSheet = sheetTitle?.section === section ? sheetTitle : null;
    return {
      section,
      titleRow,
      headings,
      rows: [],
      isNamed: title?.namesBook === true || ofSheet?.namesBook === true,
      edition: title?.edition ?? ofSheet?.edition ?? null,
    };
  };
  let part: KitBookPart | null =
    sheetTitle?.namesBook === true ? begin(sheetTitle.section, 0, null, null) : null;
  // A title without "kit book" may stand above anything: it counts once its headings are there.
  let isSure = part !== null;
  const close = (): void => {
    if (part !== null && (part.headings !== null || isSure)) parts.push(part);
    part = null;
  };

  for (const [index, cells] of block.rows.entries()) {
    if (part === null && parts.length === 0 && index >= rowsToBegin) break;
    if (cells.every(isBlank)) continue;
    const title = titleOf(cells);
    if (title !== null) {
      const isSheetTitle = part?.headings === null && part.section === title.section;
      if (isSheetTitle) {
        // The sheet may have another name by now than its title.
        part = begin(title.section, part?.titleRow ?? 0, null, title);
      } else {
        close();
        part = begin(title.section, index, null, title);
        isSure = title.namesBook;
      }
      continue;
    }
    const headings = headingsOf(cells, part?.section ?? null);
    if (headings !== null) {
      const { section, columns } = headings;
      if (part?.section === section) {
        // Headings that come again, as on each page of a print, are passed over.
        part.headings ??= { row: index, columns };
      } else {
        close();
        part = begin(section, index, { row: index, columns }, null);
      }
      continue;
    }
    const columns = part?.headings?.columns;
    if (columns !== undefined && hasContent(cells, columns)) part?.rows.push(index);
  }
  close();
  return parts;
}

/** A row that holds a section's title and nothing else. */
function titleOf(cells: readonly CellValue[]): SectionTitle | null {
  const filled = cells.filter((value) => !isBlank(value));
  const [only] = filled;
  return filled.length === 1 && typeof only === "string" ? readSectionTitle(only) : null;
}

/** The section whose headings these are: the one that is open before the others. */
function headingsOf(
  cells: readonly CellValue[],
  open: KitBookSection | null,
): { readonly section: KitBookSection; readonly columns: SectionHeadings["columns"] } | null {
  if (!cells.some(isHeadingWord)) return null;
  const inOrder = open === null ? kitBookSections : [open, ...kitBookSections];
  for (const section of inOrder) {
    const { matches } = matchHeadings(cells, kitBookColumns[section]);
    const columns = new Map(matches.map(({ key, column }) => [key, column]));
    if (tellsSection(section, new Set(columns.keys()))) return { section, columns };
  }
  return null;
}

/** Units of sizes are heading words too, and say nothing. */
const headingWords: ReadonlySet<string> = new Set(
  Object.values(kitBookColumns)
    .flat()
    .flatMap(({ words }) => words)
    .filter((word) => !sizeUnits.some((unit) => unit === word)),
);

/** Most rows are no headings, and matching headings is slow: a row without any of their words is passed over. */
const isHeadingWord = (value: CellValue): boolean =>
  typeof value === "string" && headingWords.has(value.trim().toLowerCase());

const hasContent = (cells: readonly CellValue[], columns: SectionHeadings["columns"]): boolean =>
  [...columns.values()].some((column) => !isBlank(cells[column] ?? null));
