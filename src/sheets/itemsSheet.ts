/** An items table as a sheet that belongs to the person: what each item costs, weighs and is called. */
import { cellText, type CellValue } from "../core/base/cell";
import { itemColumns, type ItemColumn, type ItemRow } from "../core/pricing/item";
import type { Drawing, DrawnCell, NumberFormat } from "../workbook/drawing";
import { blank, headingRow, number, row, text, wordsRow } from "./cells";
import { printSetup } from "./printSetup";

type Column = {
  readonly heading: string;
  readonly width: number;
  readonly format?: NumberFormat;
  readonly note?: string;
};

const columns: Readonly<Record<ItemColumn, Column>> = {
  code: { heading: "Code", width: 20, note: "The code that the kit book's parts use." },
  description: { heading: "Description", width: 56 },
  family: { heading: "Family", width: 18, note: "Lists and totals are grouped by it." },
  unit: { heading: "Unit", width: 12, note: "each, foot, square foot, metre or square metre" },
  unitCost: { heading: "Unit cost", width: 11, format: "unitCost" },
  weight: { heading: "Weight (lb)", width: 11, format: "decimal", note: "Pounds of one unit." },
  sparesPercent: { heading: "Spares %", width: 10, format: "decimal" },
  sparesLeast: { heading: "Spares least", width: 10, format: "count" },
  priceDate: { heading: "Price date", width: 12 },
  basis: { heading: "Basis", width: 52 },
};

/**
 * The items as typed. `notice` stands above the table, such as that prices are invented. The heading
 * of the weights names the unit of the first row's; a number of another unit stands with that one.
 */
export function itemsSheet(name: string, rows: readonly ItemRow[], notice: string | null): Drawing {
  const unit = weightUnitOf(rows[0]);
  const isPounds = unit === "lb";
  const above = notice === null ? [] : [wordsRow(notice, "caution", itemColumns.length)];
  const heading = above.length;
  return {
    name,
    mark: null,
    columnWidths: itemColumns.map((key) => columns[key].width),
    rows: [
      ...above,
      headingRow(
        itemColumns.map((key) => ({
          words: key === "weight" ? `Weight (${unit})` : columns[key].heading,
          numbers: columns[key].format !== undefined,
          ...(columns[key].note === undefined || (key === "weight" && !isPounds)
            ? {}
            : { note: columns[key].note }),
        })),
      ),
      ...rows.map((item) =>
        row(
          ...itemColumns.map((key) =>
            cellOf(key === "weight" ? weightIn(item, unit) : (item[key]?.value ?? null), key),
          ),
        ),
      ),
    ],
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: "",
      title: name,
      caution: "",
    }),
  };
}

const weightUnitOf = (row: ItemRow | undefined): string =>
  cellText(row?.weightUnit?.value ?? null).trim() || "lb";

/** The weight as typed, with its unit where its own heading named another one than `unit`. */
function weightIn(row: ItemRow, unit: string): CellValue {
  const value = row.weight?.value ?? null;
  const own = weightUnitOf(row);
  const isBare = typeof value === "number" || (typeof value === "string" && /\d\s*$/.test(value));
  return own === unit || !isBare ? value : `${cellText(value)} ${own}`;
}

function cellOf(value: CellValue, key: ItemColumn): DrawnCell {
  if (value === null) return blank();
  const { format } = columns[key];
  const look = key === "unitCost" ? ({ look: "input" } as const) : {};
  return typeof value === "number" && format !== undefined
    ? number(value, format, look)
    : text(cellText(value), look);
}
