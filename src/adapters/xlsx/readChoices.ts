/** The drop-downs of a worksheet. */
import { cellText } from "../../core/base/cell";
import type { List } from "../../workbook/choiceLists";
import type { Choice } from "../../workbook/drawing";
import { sameSheetName } from "../../workbook/sheetNames";
import type { SheetSnapshot } from "../../workbook/snapshot";
import { readRange } from "./cellRange";
import { childNamed, childrenNamed, isOn, type XmlElement } from "./xml";

/** A drop-down whose list stands in cells, such as `Lists!$A$1:$A$9`. */
export type LinkedChoice = Omit<Choice, "list"> & { readonly reference: string };

/** `others` counts the rules for what may be typed that are no drop-downs. */
export type ReadChoices = {
  readonly choices: readonly Choice[];
  readonly linkedChoices: readonly LinkedChoice[];
  readonly others: number;
};

/** Reads the rules of the sheet's root element. A rule for several columns becomes a drop-down for each. */
export function readChoices(root: XmlElement): ReadChoices {
  const choices: Choice[] = [];
  const linkedChoices: LinkedChoice[] = [];
  let others = 0;
  for (const rule of childrenNamed(childNamed(root, "dataValidations"), "dataValidation")) {
    const { type, sqref = "", errorStyle = "stop", showErrorMessage } = rule.attributes;
    const source = childNamed(rule, "formula1")?.text.trim() ?? "";
    if (type !== "list" || source === "") {
      others += 1;
      continue;
    }
    const list = /^"([\s\S]*)"$/.exec(source)?.[1]?.replaceAll('""', '"').split(",");
    const othersToo = errorStyle !== "stop" || !isOn(showErrorMessage);
    for (const range of sqref.split(/\s+/).filter(Boolean)) {
      const { row, column, rows, columns } = readRange(range);
      for (let at = column; at < column + columns; at++) {
        const choice = { column: at, firstRow: row, lastRow: row + rows - 1, othersToo };
        if (list === undefined) linkedChoices.push({ ...choice, reference: source });
        else choices.push({ ...choice, list });
      }
    }
  }
  return { choices, linkedChoices, others };
}

/** Beyond this many cells a list is a whole column, and no longer one to choose from. */
const longestRun = 10_000;

/** The texts of the cells that a list stands in, on `home` where no sheet is named; `null` for no such cells. */
export function listAt(
  reference: string,
  home: string,
  sheets: readonly SheetSnapshot[],
): List | null {
  const found =
    /^(?:'((?:[^']|'')+)'!|([^'!]+)!)?(\$?[A-Z]{1,3}\$?\d+(?::\$?[A-Z]{1,3}\$?\d+)?)$/i.exec(
      reference,
    );
  if (found === null) return null;
  const [, quoted, plain, range = ""] = found;
  const name = quoted?.replaceAll("''", "'") ?? plain ?? home;
  const sheet = sheets.find((each) => sameSheetName(each.name, name));
  const { row, column, rows, columns } = readRange(range);
  if (sheet === undefined || (rows > 1 && columns > 1) || rows > longestRun) return null;
  return Array.from({ length: rows * columns }, (_, index) => {
    const at = columns > 1 ? [row, column + index] : [row + index, column];
    return cellText(sheet.rows[at[0] ?? 0]?.[at[1] ?? 0]?.value ?? null);
  }).filter((entry) => entry !== "");
}
