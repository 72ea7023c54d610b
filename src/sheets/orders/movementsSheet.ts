/** Every movement of stock, and rows for a person to go on with. */
import { movementKinds, type StockMovement } from "../../core/purchasing/books/stockMovements";
import type { SizeText } from "../../core/takeoff/sizeTexts";
import type { CarriedCell, Drawing, DrawnRow, SheetMark } from "../../workbook/drawing";
import { blank, headingRow, number, row, text, wordsRow } from "../cells";
import { fittedRow } from "../fittedRow";
import { dateCell } from "./orderWish";
import { printSetup } from "../printSetup";

export const movementsMark: SheetMark = { kind: "stock movements", subject: "" };

const movementHeadings = [
  { words: "Row", width: 8, middle: true },
  { words: "Day", width: 12, middle: true },
  { words: "Item", width: 22 },
  { words: "Size", width: 16, numbers: true },
  {
    words: "What",
    width: 12,
    middle: true,
    note: `One of: ${movementKinds.join(", ")}. Blank is a count of the shelf.`,
  },
  {
    words: "Change",
    width: 10,
    numbers: true,
    note: "Pieces that came; with a minus in front those that went.",
  },
  {
    words: "On hand after",
    width: 10,
    middle: true,
    note: "Typed alone, with no change, it is what a count of the shelf found.",
  },
  { words: "Job", width: 28 },
  { words: "Order", width: 16 },
  { words: "Who", width: 14 },
  { words: "Note", width: 40 },
] as const;

/** Empty rows to go on with. */
const rowsToGoOn = 20;

const widths = movementHeadings.map((column) => column.width);

/** `carried` are cells that a person typed on the sheet before it and that are on record now. */
export function movementsSheet(
  movements: readonly StockMovement[],
  sizeText: SizeText,
  carried: readonly CarriedCell[],
): Drawing {
  const width = movementHeadings.length;
  const heading = 2;
  const first = heading + 1 + movements.length;
  return {
    name: "Stock movements",
    mark: movementsMark,
    columnWidths: widths,
    rows: [
      wordsRow("Stock movements", "title", width, { height: 26 }),
      wordsRow(
        "Rows are only added. Mend a mistake with a new row below the others: a day, the item, what changed or what you counted, who and why.",
        "subtitle",
        width,
      ),
      fittedRow(headingRow(movementHeadings), widths),
      ...movements.map((movement) => movementRow(movement, sizeText)),
      ...Array.from({ length: rowsToGoOn }, () =>
        row(...movementHeadings.map(() => blank({ look: "input", input: true }))),
      ),
    ],
    frozenRows: heading + 1,
    frozenColumns: 3,
    tables: [],
    choices: [
      {
        column: 4,
        firstRow: first,
        lastRow: first + rowsToGoOn - 1,
        list: movementKinds,
        othersToo: true,
      },
    ],
    carried,
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: "",
      title: "Stock movements",
      caution: "",
    }),
  };
}

const movementRow = (movement: StockMovement, sizeText: SizeText): DrawnRow => {
  const cells = row(
    number(movement.number, "count", { align: "center" }),
    dateCell(movement.day),
    text(movement.item),
    text(sizeText(movement), { align: "right" }),
    text(movement.kind, { align: "center" }),
    number(movement.change, "count"),
    number(movement.balance, "count", { align: "center" }),
    text(movement.job ?? ""),
    text(movement.order ?? ""),
    text(movement.who),
    text(movement.note),
  );
  return fittedRow(cells, widths);
};
