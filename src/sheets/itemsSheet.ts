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

/** The items as typed. `notice` stands above the table, such as that prices are invented. */
export function itemsSheet(name: string, rows: readonly ItemRow[], notice: string | null): Drawing {
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
          words: columns[key].heading,
          numbers: columns[key].format !== undefined,
          ...(columns[key].note === undefined ? {} : { note: columns[key].note }),
        })),
      ),
      ...rows.map((item) =>
        row(...itemColumns.map((key) => cellOf(item[key]?.value ?? null, key))),
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

function cellOf(value: CellValue, key: ItemColumn): DrawnCell {
  if (value === null) return blank();
  const { format } = columns[key];
  const look = key === "unitCost" ? ({ look: "input" } as const) : {};
  return typeof value === "number" && format !== undefined
    ? number(value, format, look)
    : text(cellText(value), look);
}
