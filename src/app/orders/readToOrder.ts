/**
 * A workbook that jobs are ordered from, read once and counted in steps, so that the pane answers
 * meanwhile; again where a person decides that another kit book or other items hold.
 */
import { ok, type Result } from "../../core/base/result";
import type { Steps } from "../../core/base/steps";
import type { WorkbookFault } from "../../workbook/workbook";
import { readCorrections, type ReadCorrections } from "../corrections/corrections";
import type { CountedFile, OrderFile } from "./countFile";
import type { OtherInputs } from "../reading/inputs";
import { enteredLoads } from "../pricing/enteredLoads";
import { keptTakeOff } from "../reading/keptTakeOff";
import { readKeptBook } from "./orderBook";
import { readOrderTables } from "./orderTables";
import { readSettings } from "../settings";
import { readBlocks, type SourceBlock } from "../reading/sourceBlocks";

export type FileToCount = Omit<CountedFile, "takeOff"> & {
  readonly blocks: readonly SourceBlock[];
  readonly corrections: ReadCorrections;
};

/** `today` is a date serial. Error: the host could not read. */
export async function readToOrder(
  { file, workbook }: OrderFile,
  today: number,
): Promise<Result<FileToCount, WorkbookFault>> {
  const settings = await readSettings(workbook);
  const blocks = await readBlocks(await workbook.sheets(), (source) => workbook.read(source));
  if (!blocks.ok) return blocks;
  const corrections = await readCorrections(workbook);
  if (!corrections.ok) return corrections;
  const tables = await readOrderTables(workbook);
  if (!tables.ok) return tables;
  const book = await readKeptBook(workbook, settings, today);
  if (!book.ok) return book;
  return ok({
    file,
    settings,
    tables: tables.value,
    book: book.value,
    blocks: blocks.value,
    corrections: corrections.value,
  });
}

/** `others` is what holds instead of the workbook's own. */
export function* countToOrder(
  { blocks, corrections, ...file }: FileToCount,
  others: OtherInputs = {},
): Steps<CountedFile> {
  const takeOff = yield* keptTakeOff(enteredLoads)(blocks, file.settings, corrections, others);
  return { ...file, takeOff };
}
