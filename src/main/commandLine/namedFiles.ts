/** The files that a command names beside its schedule: a kit book, items, the workbook to write. */
import { err, ok, type Result } from "../../core/base/result";
import type { OtherInputs } from "../../app/reading/inputs";
import type { FileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import { readItemTable } from "../../tables/itemTable";
import { readKitBook } from "../../tables/kitBookTable";
import { sameSheetName } from "../../workbook/sheetNames";
import { blocksOf, fileExists, readWorkbookFile } from "./files";

/** Paths; `null` where none is named. */
type NamedFiles = {
  readonly schedule: string;
  readonly kitBook: string | null;
  readonly items: string | null;
  readonly out: string | null;
};

/** The kit book and items of the files that are named. */
export async function otherInputs({
  kitBook,
  items,
}: Pick<NamedFiles, "kitBook" | "items">): Promise<Result<OtherInputs, string>> {
  let others: OtherInputs = {};
  for (const path of [kitBook, items]) {
    if (path === null) continue;
    const workbook = readWorkbookFile(path);
    if (!workbook.ok) return workbook;
    const blocks = await blocksOf(workbook.value);
    if (!blocks.ok) return blocks;
    if (path === kitBook) {
      const book = readKitBook(blocks.value);
      if (book === null) return err(`${path}: no kit book was found in it.`);
      others = { ...others, kitBook: book };
    } else {
      const rows = blocks.value.map(readItemTable).find((table) => table !== null);
      if (rows === undefined) return err(`${path}: no items table was found in it.`);
      others = { ...others, items: rows };
    }
  }
  return ok(others);
}

/** Error: the sheet that is named is not there, with those that are. `null` where none is named. */
export async function sheetIsThere(
  workbook: FileWorkbook,
  { schedule, sheet }: { readonly schedule: string; readonly sheet: string | null },
): Promise<Result<null, string>> {
  const names = (await workbook.sheets()).map(({ name }) => name);
  return sheet === null || names.some((name) => sameSheetName(name, sheet))
    ? ok(null)
    : err(`${schedule}: there is no sheet ${sheet}. There are: ${names.join("; ")}.`);
}

/** The workbook of the file to write where that exists, else the schedule's. */
export const targetOf = (
  { out, schedule }: Pick<NamedFiles, "out" | "schedule">,
  source: FileWorkbook,
): Result<FileWorkbook, string> =>
  out !== null && out !== schedule && fileExists(out) ? readWorkbookFile(out) : ok(source);
