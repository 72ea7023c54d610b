/**
 * Blocks of cells -> the rows of a kit book.
 * Its sections may stand on sheets of their own, or one below the other, as in a .csv.
 * Of several editions the latest is read (`kitBookEditions.ts`).
 */
import type { Block, TypedCell } from "../core/base/cell";
import { makeFinding, type Finding, type FindingTable } from "../core/base/finding";
import { nearestName } from "../core/formulas/names";
import { sectionColumns, type KitBookRows, type KitBookSection } from "../core/kitbook/rows";
import { matchHeadings } from "./headings";
import { kitBookColumns, type KitBookColumn } from "./kitBookColumns";
import { copiedFindings, editions, passedOver, placeKey } from "./kitBookEditions";
import { kitBookParts, type SectionHeadings } from "./kitBookParts";

export const kitBookTableFindings = {
  "kit-book-heading-unknown": {
    level: "warn",
    says: 'The {section} of a kit book have no column "{found}", so it is not read.{guess}',
    todo: "Use one of these headings: {known}.",
  },
  "kit-book-heading-twice": {
    level: "warn",
    says: 'Two columns of the {section} are headed as "{column}"; the one at this heading is not read.',
    todo: "Rename or remove one of them.",
  },
  "kit-book-without-headings": {
    level: "stop",
    says: "The {section} of the kit book have no heading row, so nothing of them is read.",
    todo: "Put these headings above the rows: {known}.",
  },
} as const satisfies FindingTable;

export type KitBookReading = {
  readonly rows: KitBookRows;
  /** The edition that is read, from 1. */
  readonly edition: number;
  readonly findings: readonly Finding[];
};

/**
 * The kit book in the given blocks, or `null` where none of them holds any section of one. Rows that
 * are all blank, titles and repeated headings are passed over; a row read twice (a table, and the
 * sheet that it is on) is taken once.
 */
export function readKitBook(blocks: readonly Block[]): KitBookReading | null {
  const placed = blocks.flatMap((block) => kitBookParts(block).map((part) => ({ block, part })));
  if (placed.length === 0) return null;
  const editionOf = editions(placed);
  const edition = Math.max(...placed.map(editionOf));
  const seen = new Set<string>();
  const findings: Finding[] = [];
  const rows: Record<KitBookSection, ReadonlyMap<KitBookColumn, TypedCell>[]> = {
    sizes: [],
    parts: [],
    limits: [],
    charts: [],
  };
  for (const one of placed) {
    const { block, part } = one;
    const headingKey = placeKey(block, part.headings?.row ?? part.titleRow);
    if (editionOf(one) < edition) {
      if (!seen.has(headingKey)) findings.push(passedOver(one, edition));
      seen.add(headingKey);
      continue;
    }
    if (part.headings === null) {
      findings.push(withoutHeadings(part.section, block, part.titleRow));
      continue;
    }
    if (!seen.has(headingKey))
      findings.push(...headingFindings(part.section, block, part.headings));
    seen.add(headingKey);
    for (const row of part.rows) {
      if (seen.has(placeKey(block, row))) continue;
      seen.add(placeKey(block, row));
      rows[part.section].push(typedCells(part.section, block, part.headings, row));
    }
  }
  findings.push(...copiedFindings(rows.parts));
  return { rows: asKitBookRows(rows), edition, findings };
}

/** Every column of the section; one that has no heading is blank, at the row's first cell. */
function typedCells(
  section: KitBookSection,
  block: Block,
  { columns }: SectionHeadings,
  row: number,
): ReadonlyMap<KitBookColumn, TypedCell> {
  const first = Math.min(...columns.values());
  const place = (column: number) => ({
    sheet: block.sheet,
    row: block.row + row,
    column: block.column + column,
  });
  return new Map(
    sectionColumns[section].map((key) => {
      const column = columns.get(key);
      if (column === undefined) return [key, { value: null, place: place(first) }];
      return [key, { value: block.rows[row]?.[column] ?? null, place: place(column) }];
    }),
  );
}

function asKitBookRows(
  rows: Readonly<Record<KitBookSection, readonly ReadonlyMap<KitBookColumn, TypedCell>[]>>,
): KitBookRows {
  const { sizes, parts, limits, charts } = sectionColumns;
  return {
    sizes: rows.sizes.map((row) => pick(row, sizes)),
    parts: rows.parts.map((row) => pick(row, parts)),
    limits: rows.limits.map((row) => pick(row, limits)),
    charts: rows.charts.map((row) => pick(row, charts)),
  };
}

function pick<Column extends KitBookColumn>(
  row: ReadonlyMap<KitBookColumn, TypedCell>,
  columns: readonly Column[],
): Readonly<Record<Column, TypedCell>> {
  const blank: TypedCell = { value: null, place: null };
  const cells = columns.map((column) => [column, row.get(column) ?? blank]);
  // Every column of the list has its cell.
  return Object.fromEntries(cells) as Readonly<Record<Column, TypedCell>>;
}

const knownHeadings = (section: KitBookSection): string =>
  kitBookColumns[section].map(({ label }) => label).join(", ");

function withoutHeadings(section: KitBookSection, block: Block, titleRow: number): Finding {
  return makeFinding(kitBookTableFindings, "kit-book-without-headings", {
    place: { sheet: block.sheet, row: block.row + titleRow, column: block.column },
    values: { section, known: knownHeadings(section) },
  });
}

/** Columns that nobody reads are said, so that a misspelt heading loses nothing in silence. */
function headingFindings(
  section: KitBookSection,
  block: Block,
  { row }: SectionHeadings,
): readonly Finding[] {
  const rules = kitBookColumns[section];
  const { others, repeats } = matchHeadings(block.rows[row] ?? [], rules);
  const known = knownHeadings(section);
  const place = (column: number) => ({
    sheet: block.sheet,
    row: block.row + row,
    column: block.column + column,
  });
  return [
    ...others.map(({ column, heading }) => {
      const nearest = nearestName(
        heading,
        rules.map(({ label }) => label),
      );
      const guess = nearest === undefined ? "" : ` Did you mean ${nearest}?`;
      return makeFinding(kitBookTableFindings, "kit-book-heading-unknown", {
        place: place(column),
        found: heading,
        values: { section, known, guess },
      });
    }),
    ...repeats.map(({ column, heading, key }) =>
      makeFinding(kitBookTableFindings, "kit-book-heading-twice", {
        place: place(column),
        found: heading,
        values: { section, column: rules.find((rule) => rule.key === key)?.label ?? key },
      }),
    ),
  ];
}
