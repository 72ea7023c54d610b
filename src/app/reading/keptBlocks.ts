/** The blocks of a workbook, read again only where something changed. */
import { isSameRow, type Block } from "../../core/base/cell";
import { ok, type Result } from "../../core/base/result";
import type { Source, Workbook, WorkbookChange, WorkbookFault } from "../../workbook/workbook";
import { readBlocks, sourceKey, type SourceBlock } from "./sourceBlocks";

export type KeptBlocks = {
  /** One sheet or table, whosever it is. */
  readonly readOne: Workbook["read"];
  /** A block that reads as before is the same object as before. */
  readonly read: () => Promise<Result<readonly SourceBlock[], WorkbookFault>>;
  /** The next `read` asks the host again for what `change` is about. */
  readonly forget: (change: WorkbookChange) => void;
};

/** `askedAt`: how many changes there had been when the host was asked. */
type Kept = { readonly block: Block; readonly askedAt: number };

export function keptBlocks(workbook: Workbook): KeptBlocks {
  let changes = 0;
  let sheetsChangedAt = 0;
  const changedAt = new Map<string, number>();
  let kept = new Map<string, Kept>();

  const isFresh = ({ block, askedAt }: Kept): boolean =>
    askedAt >= Math.max(sheetsChangedAt, changedAt.get(block.sheet) ?? 0);

  const readOne = async (source: Source): Promise<Result<Block, WorkbookFault>> => {
    const key = sourceKey(source);
    const known = kept.get(key);
    if (known !== undefined && isFresh(known)) return ok(known.block);
    // What changes while the host answers is read once more at the next time.
    const askedAt = changes;
    const read = await workbook.read(source);
    if (!read.ok) return read;
    const isAsBefore = known !== undefined && isSameBlock(known.block, read.value);
    const block = isAsBefore ? known.block : read.value;
    kept.set(key, { block, askedAt });
    return ok(block);
  };

  return {
    readOne,
    read: async () => {
      const sheets = await workbook.sheets();
      const names = new Set(sheets.map(({ name }) => name));
      kept = new Map([...kept].filter(([, { block }]) => names.has(block.sheet)));
      return await readBlocks(sheets, readOne);
    },
    forget: (change) => {
      if (change.kind === "selection") return;
      changes += 1;
      if (change.kind === "sheets") sheetsChangedAt = changes;
      else changedAt.set(change.sheet, changes);
    },
  };
}

const isSameBlock = (one: Block, other: Block): boolean =>
  one.sheet === other.sheet &&
  one.row === other.row &&
  one.column === other.column &&
  one.rows.length === other.rows.length &&
  one.rows.every((row, index) => isSameRow(row, other.rows[index] ?? []));
