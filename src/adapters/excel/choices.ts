/**
 * Drop-downs. A short list is written out in the rule; Excel allows 255 characters for that and no
 * comma in an item. A longer one stands in a column of a sheet that nobody sees, which all our
 * sheets share; a column once written stays, since drop-downs on other sheets point at it.
 */
import { cellText, columnName, sheetReference, type Block } from "../../core/base/cell";
import type { Choice, Drawing, SheetMark } from "../../workbook/drawing";

export const listsMark: SheetMark = { kind: "lists", subject: "" };
const listsName = "Cribsheet lists";

type List = readonly string[];

const isShort = (list: List): boolean =>
  list.join(",").length <= 255 &&
  list.every((item) => item !== "" && !item.includes(",") && item.trim() === item) &&
  list[0]?.startsWith("=") === false;

const sameList = (one: List, other: List): boolean =>
  one.length === other.length && one.every((item, index) => item === other[index]);

/** The lists of the drawings that need the sheet, each once. */
export function longLists(drawings: readonly Drawing[]): readonly List[] {
  const long: List[] = [];
  for (const { list } of drawings.flatMap(({ choices }) => choices)) {
    const isNew = list.length > 0 && !isShort(list) && !long.some((each) => sameList(each, list));
    if (isNew) long.push(list);
  }
  return long;
}

/** The lists that the sheet has now, one per column. */
export function listsOn({ row, column, rows }: Block): readonly List[] {
  const width = Math.max(0, ...rows.map((cells) => cells.length));
  const before = Array.from({ length: column }, (): List => []);
  const lists = Array.from({ length: width }, (_, index): List => {
    const items = rows.map((cells) => cells[index] ?? null);
    const end = items.findLastIndex((item) => item !== null) + 1;
    const blank = Array.from({ length: row }, () => "");
    return [...blank, ...items.slice(0, end).map(cellText)];
  });
  return [...before, ...lists];
}

/** The sheet with `lists` as its columns. */
export function listsDrawing(lists: readonly List[]): Drawing {
  const height = Math.max(...lists.map(({ length }) => length));
  return {
    name: listsName,
    mark: listsMark,
    columnWidths: [],
    rows: Array.from({ length: height }, (_, row) => ({
      cells: lists.map((list) => {
        const text = list[row];
        return text === undefined ? null : { kind: "text", text, look: "body" };
      }),
    })),
    frozenRows: 0,
    frozenColumns: 0,
    tables: [],
    choices: [],
    print: {
      orientation: "portrait",
      fitToOnePageWide: true,
      breaksBefore: [],
      header: "",
      footer: "",
    },
  };
}

/** All of `known`, and those of `wanted` that are not among them. */
export const withLists = (known: readonly List[], wanted: readonly List[]): readonly List[] => [
  ...known,
  ...wanted.filter((list) => !known.some((each) => sameList(each, list))),
];

/** Where the drop-downs of one writing find their lists. */
export type ListPlaces = {
  /** The name that the sheet of lists has while sheets are prepared; `null` where none is needed. */
  readonly sheet: string | null;
  readonly lists: readonly List[];
};

/** Puts a drop-down on its cells. Anything may be typed beside the list where it says so. */
export function putChoice(sheet: Excel.Worksheet, choice: Choice, places: ListPlaces): void {
  const { column, firstRow, lastRow, list, othersToo } = choice;
  const source = listSource(list, places);
  if (source === null) return;
  const validation = sheet.getRangeByIndexes(
    firstRow,
    column,
    lastRow - firstRow + 1,
    1,
  ).dataValidation;
  validation.rule = { list: { inCellDropDown: true, source } };
  validation.errorAlert = {
    showAlert: !othersToo,
    style: "Stop",
    title: "Not on the list",
    message: "Choose one of the list. Press Esc to leave the cell as it was.",
  };
}

function listSource(list: List, { sheet, lists }: ListPlaces): string | null {
  if (list.length === 0) return null;
  if (isShort(list)) return list.join(",");
  const index = lists.findIndex((each) => sameList(each, list));
  if (index < 0 || sheet === null) return null;
  const letter = columnName(index);
  return `=${sheetReference(sheet)}!$${letter}$1:$${letter}$${list.length}`;
}
