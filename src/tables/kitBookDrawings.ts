/**
 * A kit book's rows -> four sheets that belong to the person: sizes, parts, limits and charts.
 *
 * What the book reads as a formula is written as text and stays text, whatever it starts with; the
 * cells are formatted as text, so that what a person types there stays text too.
 */
import { cellText, type CellValue, type TypedCell } from "../core/base/cell";
import { findingLevels } from "../core/base/finding";
import { chartMatches } from "../core/kitbook/chart";
import {
  kitBookSections,
  sectionColumns,
  type KitBookRows,
  type KitBookSection,
} from "../core/kitbook/rows";
import { sizeUnits } from "../core/kitbook/sizeUnit";
import type { CellDress, Choice, DrawnCell, DrawnRow, Drawing } from "../workbook/drawing";
import { kitBookColumns, sectionTitle, type KitBookColumn } from "./kitBookColumns";

const sectionNotes: Readonly<Record<KitBookSection, string>> = {
  sizes:
    "What is worked out for an opening. Formulas use the schedule's columns and other sizes by name; numbers are inches.",
  parts:
    "What one opening needs. An item is a code, or = and a formula that gives one. Quantity, when, size, cut length and minutes are formulas. Joined: the thickness that a bolt joins, for checking its length.",
  limits:
    "What must be said about an opening, and when. stop: not counted. warn: counted, and likely wrong. note: counted.",
  charts:
    'Look-ups for CHART("name", down, across). exact: only what stands here. next up: the next larger entry.',
};

/** Widths in characters. */
const columnWidths: Readonly<Record<KitBookColumn, number>> = {
  type: 24,
  name: 22,
  formula: 48,
  unit: 10,
  note: 52,
  basis: 40,
  bag: 16,
  step: 12,
  item: 34,
  size: 28,
  quantity: 20,
  when: 30,
  cutLength: 18,
  minutes: 18,
  joined: 12,
  level: 9,
  message: 70,
  chart: 18,
  match: 10,
  down: 14,
  across: 14,
  value: 20,
};

const wrapped: ReadonlySet<KitBookColumn> = new Set([
  "formula",
  "note",
  "basis",
  "message",
  "when",
]);

/** What may be picked from a list, and nothing else. */
const lists: Readonly<Partial<Record<KitBookColumn, readonly string[]>>> = {
  unit: sizeUnits,
  level: findingLevels,
  match: chartMatches,
};

/** Rows below the last one that have the lists too, for rows a person adds. */
const rowsToAdd = 200;

const headingRow = 2;

/**
 * The sheets `Kit book sizes`, `Kit book parts`, `Kit book limits` and `Kit book charts`; of a later
 * edition, `Kit book sizes, edition 2` and so on, always all four.
 */
export const kitBookDrawings = (rows: KitBookRows, edition = 1): readonly Drawing[] =>
  kitBookSections.map((section) => drawSection(section, rows[section], edition));

type TypedRow = Readonly<Partial<Record<KitBookColumn, TypedCell>>>;

function drawSection(section: KitBookSection, rows: readonly TypedRow[], edition: number): Drawing {
  const rules = kitBookColumns[section];
  const keys: readonly KitBookColumn[] = sectionColumns[section];
  const name = sectionTitle(section, edition);
  const firstRow = headingRow + 1;
  // A table needs a row; an empty section gets a blank one to type into.
  const lastRow = headingRow + Math.max(1, rows.length);
  const drawn: readonly DrawnRow[] = rows.map((row) => ({
    cells: keys.map((key) => drawCell(row[key]?.value ?? null, key)),
  }));
  const blankRow: DrawnRow = { cells: keys.map((key) => drawCell(null, key)) };
  return {
    name,
    mark: null,
    columnWidths: keys.map((key) => columnWidths[key]),
    rows: [
      { cells: [text(name, { look: "title" })] },
      { cells: [text(sectionNotes[section], { look: "subtitle" })] },
      { cells: rules.map(({ label }) => text(label, { look: "heading" })) },
      ...(drawn.length === 0 ? [blankRow] : drawn),
    ],
    frozenRows: headingRow + 1,
    frozenColumns: 0,
    tables: [
      {
        name: edition === 1 ? `KitBook_${section}` : `KitBook_${section}_${edition}`,
        headingRow,
        lastRow,
        firstColumn: 0,
        lastColumn: keys.length - 1,
      },
    ],
    choices: keys.flatMap((key, column): readonly Choice[] => {
      const list = lists[key];
      if (list === undefined) return [];
      return [{ column, firstRow, lastRow: lastRow + rowsToAdd, list, othersToo: false }];
    }),
    print: {
      orientation: "landscape",
      titleRows: { first: headingRow, last: headingRow },
      fitToOnePageWide: true,
      breaksBefore: [],
      header: `${name}\t\t`,
      footer: "Follow the supplier's instructions and local codes.\t\tPage {page} of {pages}",
    },
  };
}

const text = (words: string, dress: CellDress): DrawnCell => ({
  kind: "text",
  text: words,
  ...dress,
});

/** The value as it is; an error, which no sheet can be given to hold, as its text. */
function drawCell(value: CellValue, key: KitBookColumn): DrawnCell {
  const dress: CellDress = wrapped.has(key) ? { look: "input", wrap: true } : { look: "input" };
  if (value === null) return { kind: "blank", format: "text", ...dress };
  if (typeof value === "number") return { kind: "number", number: value, align: "left", ...dress };
  if (typeof value === "boolean") return { kind: "yesNo", yes: value, ...dress };
  if (typeof value === "object" && value.kind === "date") {
    return { kind: "date", date: value, format: "date", ...dress };
  }
  return text(cellText(value), { ...dress, format: "text" });
}
