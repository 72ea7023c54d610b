/** The blocks that a workbook is read as: its sheets, and the tables on them. */
import { sameSheetName } from "../../workbook/sheetNames";
import type { Block } from "../../core/base/cell";
import { err, ok, type Result } from "../../core/base/result";
import type { SheetSummary, Source, Workbook, WorkbookFault } from "../../workbook/workbook";

/** A block with where it was read. */
export type SourceBlock = { readonly source: Source; readonly block: Block };

/**
 * Every visible sheet of the person's, each behind the tables on it. Sheets of ours are passed over.
 * `read` may answer from memory.
 */
export async function readBlocks(
  sheets: readonly SheetSummary[],
  read: Workbook["read"],
): Promise<Result<readonly SourceBlock[], WorkbookFault>> {
  const blocks: SourceBlock[] = [];
  for (const source of sheets.flatMap(sourcesOn)) {
    const block = await read(source);
    if (!block.ok) return err(block.error);
    blocks.push({ source, block: block.value });
  }
  return ok(blocks);
}

const sourcesOn = ({ visible, mark, tables, name }: SheetSummary): readonly Source[] =>
  visible && mark === null
    ? [...tables.map((table): Source => ({ kind: "table", table })), { kind: "sheet", sheet: name }]
    : [];

/** A text that differs for sources that differ. */
export const sourceKey = (source: Source): string =>
  source.kind === "sheet" ? `sheet ${source.sheet}` : `table ${source.table}`;

/** What makes two sources the same. */
export const sameSource = (one: Source, other: Source): boolean =>
  one.kind === "sheet" && other.kind === "sheet"
    ? sameSheetName(one.sheet, other.sheet)
    : sourceKey(one) === sourceKey(other);
