/** The rows of a kit book for one opening type, each with its cells and what is wrong with it. */
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import type { CellPlace, TypedCell } from "../../core/base/cell";
import type { Finding } from "../../core/base/finding";
import { chartUses } from "../../core/bookcheck/chartGaps";
import { cellWords, rowsOf, type BookRow } from "../../core/bookcheck/matchRows";
import { normalName } from "../../core/formulas/names";
import type { OpeningType, RowSource } from "../../core/kitbook/kitBook";
import type { KitBookSection } from "../../core/kitbook/rows";
import { kitBookColumns, type KitBookColumn } from "../../tables/kitBookColumns";

export type ShownCell = {
  readonly column: KitBookColumn;
  readonly label: string;
  readonly text: string;
};

export type ShownRow = {
  /** Of its section, from 1. */
  readonly number: number;
  readonly title: string;
  readonly place: CellPlace | null;
  /** Those that hold anything and that the title does not say. */
  readonly cells: readonly ShownCell[];
  readonly findings: readonly Finding[];
};

/** What a row is called by. */
const titleColumns: Readonly<Record<KitBookSection, readonly KitBookColumn[]>> = {
  sizes: ["name"],
  parts: ["item"],
  limits: ["when"],
  charts: ["chart", "down", "across"],
};

export function shownRows(
  hand: KitBookAtHand,
  type: OpeningType,
  section: KitBookSection,
): readonly ShownRow[] {
  const all = rowsOf(hand.rows, section);
  const numbers = section === "charts" ? chartRows(hand, type, all) : typeRows(type, section);
  return numbers.flatMap((number) => {
    const row = all[number - 1];
    return row === undefined ? [] : [shownRow(section, number, row, hand.findings)];
  });
}

/** The row's findings are those about one of its cells. */
function shownRow(
  section: KitBookSection,
  number: number,
  row: BookRow,
  findings: readonly Finding[],
): ShownRow {
  const titles = titleColumns[section];
  const place = firstPlace(Object.values(row));
  return {
    number,
    title: titles
      .map((column) => cellWords(row[column]))
      .filter((words) => words !== "")
      .join(" · "),
    place,
    cells: kitBookColumns[section].flatMap(({ key, label }) => {
      const text = cellWords(row[key]);
      const isSaid = titles.includes(key) || key === "type" || text === "";
      return isSaid ? [] : [{ column: key, label, text }];
    }),
    findings:
      place === null
        ? []
        : findings.filter(
            ({ place: at }) => at !== null && at.sheet === place.sheet && at.row === place.row,
          ),
  };
}

const firstPlace = (cells: readonly TypedCell[]): CellPlace | null =>
  cells.find(({ place }) => place !== null)?.place ?? null;

function typeRows(
  type: OpeningType,
  section: Exclude<KitBookSection, "charts">,
): readonly number[] {
  const sources: readonly RowSource[] = [
    ...type[section].map(({ source }) => source),
    ...type.broken.flatMap(({ source }) => (source.section === section ? [source] : [])),
  ];
  return [...new Set(sources.map(({ number }) => number))].toSorted((one, other) => one - other);
}

/** The entries of the charts that the type's formulas look into. */
function chartRows(
  { book }: KitBookAtHand,
  type: OpeningType,
  rows: readonly BookRow[],
): readonly number[] {
  const used = new Set(
    chartUses(book).flatMap((use) => (use.type === type ? [normalName(use.node.chart)] : [])),
  );
  return rows.flatMap((row, index) =>
    used.has(normalName(cellWords(row["chart"]))) ? [index + 1] : [],
  );
}
