/** A plain table that a person types into: headings, rows as given, and rows to go on with. */
import { cellText, type CellValue } from "../core/base/cell";
import type { Drawing, DrawnCell, NumberFormat } from "../workbook/drawing";
import { blank, date, headingRow, number, row, text, wordsRow } from "./cells";
import { printSetup } from "./printSetup";

export type TypedColumn = {
  readonly words: string;
  readonly width: number;
  /** Of numbers; its words then stand on the right. */
  readonly format?: NumberFormat;
  readonly note?: string;
  /** A drop-down; other words may be typed too. */
  readonly list?: readonly string[];
};

export type TypedTable = {
  readonly name: string;
  readonly columns: readonly TypedColumn[];
  readonly rows: readonly (readonly CellValue[])[];
  /** Stands above the headings, such as that prices are invented; `null` for none. */
  readonly notice: string | null;
};

/** Empty rows that have the drop-downs too. */
const rowsToGoOn = 40;

/** The sheet is the person's from the moment it is made. */
export function typedTableSheet({ name, columns, rows, notice }: TypedTable): Drawing {
  const above = notice === null ? [] : [wordsRow(notice, "caution", columns.length)];
  const heading = above.length;
  return {
    name,
    mark: null,
    columnWidths: columns.map(({ width }) => width),
    rows: [
      ...above,
      headingRow(
        columns.map(({ words, format, note }) => ({
          words,
          numbers: format !== undefined,
          ...(note === undefined ? {} : { note }),
        })),
      ),
      ...rows.map((cells) =>
        row(
          ...columns.map((column, index) =>
            typedCell(cells[index] ?? null, column, columns[index - 1]?.format !== undefined),
          ),
        ),
      ),
    ],
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: columns.flatMap(({ list }, column) =>
      list === undefined
        ? []
        : [
            {
              column,
              firstRow: heading + 1,
              lastRow: heading + rows.length + rowsToGoOn,
              list,
              othersToo: true,
            },
          ],
    ),
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: "",
      title: name,
      caution: "",
    }),
  };
}

/** Text is set in where the column before it is of numbers, whether or not one stands there. */
function typedCell(value: CellValue, { format }: TypedColumn, setIn: boolean): DrawnCell {
  if (value === null) return blank({ look: "input" });
  if (typeof value === "number") return number(value, format ?? "general", { look: "input" });
  if (typeof value === "object" && value.kind === "date") return date(value, { look: "input" });
  return text(cellText(value), { look: "input", ...(setIn ? { setIn } : {}) });
}
