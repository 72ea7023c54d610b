/** A block of cells -> rows of an items table, and the headings it is written with. */
import { cellText, isBlank, type Block, type TypedCell } from "../core/base/cell";
import type { ItemColumn, ItemRow } from "../core/pricing/item";
import { findHeadingRow, matchHeadings, type ColumnRule } from "./headings";
import { readOfferTable } from "./offerTable";
import { plainWeightHeading, weightUnitIn } from "./weightHeading";

export const itemTableColumns: readonly ColumnRule<ItemColumn>[] = [
  {
    key: "code",
    label: "Code",
    words: ["code", "item", "item code", "item no", "part", "part no", "part number"],
  },
  {
    key: "description",
    label: "Description",
    words: ["description", "desc", "item description", "name"],
  },
  { key: "family", label: "Family", words: ["family", "group", "category", "class"] },
  { key: "unit", label: "Unit", words: ["unit", "uom", "unit of measure", "per", "priced per"] },
  {
    key: "unitCost",
    label: "Unit cost",
    words: ["unit cost", "cost", "cost each", "unit price", "price", "price each"],
  },
  {
    key: "weight",
    label: "Weight (lb)",
    // Whatever unit its heading names: see `plainWeightHeading`.
    words: ["weight"],
  },
  {
    key: "sparesPercent",
    label: "Spares %",
    words: ["spares", "spares percent", "spare percent", "spares pct", "percent spares", "spare"],
  },
  {
    key: "sparesLeast",
    label: "Spares least",
    words: ["spares least", "least spares", "spares min", "min spares", "spares at least"],
  },
  {
    key: "priceDate",
    label: "Price date",
    words: ["price date", "priced on", "date", "date of price", "cost date"],
  },
  { key: "basis", label: "Basis", words: ["basis", "source", "note", "notes"] },
];

/** Headings that no other table of a workbook has together. */
const needed: readonly ItemColumn[] = ["code", "unitCost"];

/**
 * The rows of an items table; rows that are all blank are passed over. `null` where the block has no
 * headings for a code and a unit cost.
 */
export function readItemTable(block: Block): readonly ItemRow[] | null {
  const headings = headingsOf(block);
  if (headings === null) return null;
  const { row: headingRow, columns } = headings;
  const rows: ItemRow[] = [];
  const weightUnit = headedUnit(block, headingRow, columns.get("weight"));
  for (const [index, cells] of block.rows.entries()) {
    if (index <= headingRow || cells.every(isBlank)) continue;
    const cell = (column: number): TypedCell => ({
      value: cells[column] ?? null,
      place: { sheet: block.sheet, row: block.row + index, column: block.column + column },
    });
    const typed = Object.fromEntries(
      [...columns].map(([key, column]) => [key, cell(column)]),
    ) as Readonly<Partial<Record<ItemColumn, TypedCell>>>;
    const { code } = typed;
    if (code === undefined) continue;
    // The notice that demo prices carry stands alone in its row.
    const filled = cells.filter((value) => !isBlank(value));
    if (filled.length === 1 && cellText(code.value).length > 40) continue;
    rows.push({ ...typed, code, ...weightUnit });
  }
  return rows;
}

/** No row further down is looked at for headings. */
const lastHeadingRow = 40;

/** The unit in the heading of the weights, where it names one. */
function headedUnit(
  { sheet, row, column, rows }: Block,
  heading: number,
  weights: number | undefined,
): Pick<ItemRow, "weightUnit"> {
  if (weights === undefined) return {};
  const value = weightUnitIn(rows[heading]?.[weights] ?? null);
  if (value === null || value === "") return {};
  const place = { sheet, row: row + heading, column: column + weights };
  return { weightUnit: { value, place } };
}

function headingsOf(
  block: Block,
): { readonly row: number; readonly columns: ReadonlyMap<ItemColumn, number> } | null {
  const rows = block.rows.slice(0, lastHeadingRow).map((row) => row.map(plainWeightHeading));
  const row = findHeadingRow(rows, itemTableColumns, 3);
  const cells = rows[row];
  if (cells === undefined) return null;
  const { matches } = matchHeadings(cells, itemTableColumns);
  const columns = new Map(matches.map(({ key, column }) => [key, column]));
  // What suppliers offer has codes and prices too.
  if (!needed.every((key) => columns.has(key)) || readOfferTable(block) !== null) return null;
  return { row, columns };
}
