/** Drop-downs in Excel; where a list is too long for its rule, see `choiceLists.ts`. */
import {
  isShortList,
  listReference,
  longLists as longListsOf,
  type List,
  type ListPlaces,
} from "../../workbook/choiceLists";
import type { Choice, Drawing } from "../../workbook/drawing";

export {
  listsDrawing,
  listsMark,
  listsOn,
  withLists,
  type ListPlaces,
} from "../../workbook/choiceLists";

/** The lists of the drawings that need the sheet of lists, each once. */
export const longLists = (drawings: readonly Drawing[]): readonly List[] =>
  longListsOf(drawings.flatMap(({ choices }) => choices));

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

function listSource(list: List, places: ListPlaces): string | null {
  if (list.length === 0) return null;
  if (isShortList(list)) return list.join(",");
  const reference = listReference(list, places);
  return reference === null ? null : `=${reference}`;
}
