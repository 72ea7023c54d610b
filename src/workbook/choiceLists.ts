/**
 * The lists of drop-downs. A short one is written out in the rule; spreadsheets allow 255 characters
 * for that and no comma in an entry. A longer one stands in a column of a sheet that nobody sees,
 * which all our sheets share; a column once written stays, since drop-downs elsewhere point at it.
 */
import { cellText, columnName, sheetReference, type Block } from "../core/base/cell";
import type { Choice, Drawing, SheetMark } from "./drawing";

export const listsMark: SheetMark = { kind: "lists", subject: "" };
export const listsName = "Cribsheet lists";

export type List = readonly string[];

/** Where the drop-downs of one writing find their lists. */
export type ListPlaces = {
  /** The name of the sheet of lists; `null` where none is needed or can be made. */
  readonly sheet: string | null;
  /** Its columns, from the first. */
  readonly lists: readonly List[];
};

export const isShortList = (list: List): boolean =>
  list.join(",").length <= 255 &&
  list.every((entry) => entry !== "" && !entry.includes(",") && entry.trim() === entry) &&
  list[0]?.startsWith("=") === false;

/** The lists that need the sheet, each once. */
export function longLists(choices: readonly Choice[]): readonly List[] {
  const long: List[] = [];
  for (const { list } of choices) {
    const isNew =
      list.length > 0 && !isShortList(list) && !long.some((each) => sameList(each, list));
    if (isNew) long.push(list);
  }
  return long;
}

/** The lists that the sheet has now, one per column. */
export function listsOn({ row, column, rows }: Block): readonly List[] {
  const width = Math.max(0, ...rows.map((cells) => cells.length));
  const before = Array.from({ length: column }, (): List => []);
  const lists = Array.from({ length: width }, (_, index): List => {
    const entries = rows.map((cells) => cells[index] ?? null);
    const end = entries.findLastIndex((entry) => entry !== null) + 1;
    const blank = Array.from({ length: row }, () => "");
    return [...blank, ...entries.slice(0, end).map(cellText)];
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

/** Where a long list stands, such as `'Cribsheet lists'!$B$1:$B$40`; `null` where it stands nowhere. */
export function listReference(list: List, { sheet, lists }: ListPlaces): string | null {
  const index = lists.findIndex((each) => sameList(each, list));
  if (index < 0 || sheet === null || list.length === 0) return null;
  const letter = columnName(index);
  return `${sheetReference(sheet)}!$${letter}$1:$${letter}$${list.length}`;
}

const sameList = (one: List, other: List): boolean =>
  one.length === other.length && one.every((entry, index) => entry === other[index]);
