/** Finds what a workbook holds: its schedules, its own kit book, its items table. */
import type { Block } from "../core/base/cell";
import { makeFinding, type Finding, type FindingTable } from "../core/base/finding";
import { err, ok, type Result } from "../core/base/result";
import type { KitBookRows } from "../core/kitbook/rows";
import { starterItems } from "../core/kitbook/starter/items";
import { starterKitBook } from "../core/kitbook/starter/starterKitBook";
import type { Schedule } from "../core/openings/openingRow";
import type { ItemRow } from "../core/pricing/item";
import { readItemTable } from "../tables/itemTable";
import { readKitBook, type KitBookReading } from "../tables/kitBookTable";
import { scheduleLikeness } from "../tables/scheduleLayout";
import { readSchedule, type ScheduleReading } from "../tables/scheduleTable";
import type { Source, Workbook, WorkbookFault } from "../workbook/workbook";
import type { Settings } from "./settings";

export const inputFindings = {
  "starter-kit-book": {
    level: "note",
    says: "Counted by the starter kit book, since the workbook has none of its own.",
    todo: "Check it against your supplier's instructions and make it yours before you bid by it.",
  },
  "starter-prices": {
    level: "warn",
    says: "Priced by the starter's items, whose costs and weights are invented.",
    todo: "Add an items sheet with your own costs before you bid by the total.",
  },
} as const satisfies FindingTable;

/** Everything that a workbook says, as typed. */
export type Inputs = {
  readonly readings: readonly ScheduleReading[];
  readonly schedules: readonly Schedule[];
  /** The schedule that was read first: where the pane says that openings come from. */
  readonly source: Source | null;
  readonly kitBook: KitBookRows;
  readonly hasOwnKitBook: boolean;
  readonly items: readonly ItemRow[];
  readonly hasOwnItems: boolean;
  /** Whether the items stand on a sheet of this workbook, where live prices can point. */
  readonly hasItemsSheet: boolean;
  readonly findings: readonly Finding[];
};

/** Parts of the input that come from elsewhere, such as files named on a command line. */
export type OtherInputs = {
  readonly kitBook?: KitBookReading;
  readonly items?: readonly ItemRow[];
};

/**
 * Reads a workbook. The schedule is the one the settings name, or every sheet and table of the
 * person's that looks like one. Sheets of ours and hidden sheets are passed over.
 *
 * Error: the host could not read. No schedule at all is no error: `schedules` is empty and a finding says so.
 */
export async function readInputs(
  workbook: Workbook,
  settings: Settings,
  others: OtherInputs = {},
): Promise<Result<Inputs, WorkbookFault>> {
  const blocks = await readBlocks(workbook);
  if (!blocks.ok) return blocks;
  const all = blocks.value;

  const found = others.kitBook ?? readKitBook(all.map(({ block }) => block));
  const ownItems = others.items ?? firstItems(all);
  const chosen = schedulesIn(all, settings);
  const readings = chosen.map(({ block }) => readSchedule(block, settings.columns));
  const read = readings.flatMap((reading) => (reading.ok ? [reading.value] : []));
  const findings = [
    ...readings.flatMap((reading) => (reading.ok ? reading.value.findings : [reading.error])),
    ...(found?.findings ?? []),
    ...(found === null ? [makeFinding(inputFindings, "starter-kit-book", {})] : []),
    ...(ownItems === null ? [makeFinding(inputFindings, "starter-prices", {})] : []),
  ];
  return ok({
    readings: read,
    schedules: read.map((reading) => reading.schedule),
    source: chosen[0]?.source ?? null,
    kitBook: found?.rows ?? starterKitBook,
    hasOwnKitBook: found !== null,
    items: ownItems ?? starterItems,
    hasOwnItems: ownItems !== null,
    hasItemsSheet: ownItems !== null && others.items === undefined,
    findings,
  });
}

/** A block with where it was read. */
export type SourceBlock = { readonly source: Source; readonly block: Block };

/** Every visible sheet of the person's, and every table on it. */
async function readBlocks(
  workbook: Workbook,
): Promise<Result<readonly SourceBlock[], WorkbookFault>> {
  const blocks: SourceBlock[] = [];
  for (const sheet of await workbook.sheets()) {
    if (!sheet.visible || sheet.mark !== null) continue;
    const sources: readonly Source[] = [
      ...sheet.tables.map((table): Source => ({ kind: "table", table })),
      { kind: "sheet", sheet: sheet.name },
    ];
    for (const source of sources) {
      const block = await workbook.read(source);
      if (!block.ok) return err(block.error);
      blocks.push({ source, block: block.value });
    }
  }
  return ok(blocks);
}

/**
 * The blocks that are schedules. On one sheet the tables come first, and the sheet as a whole is
 * looked at only where none of its tables is one.
 */
function schedulesIn(blocks: readonly SourceBlock[], settings: Settings): readonly SourceBlock[] {
  const wanted = settings.schedule;
  if (wanted !== null) {
    const chosen = blocks.filter(({ source }) => sameSource(source, wanted));
    if (chosen.length > 0) return chosen;
  }
  const likely = blocks.filter(({ block }) => scheduleLikeness(block) >= 3);
  const isMapped = Object.keys(settings.columns).length > 0;
  if (likely.length === 0 && isMapped) return blocks.slice(0, 1);
  return likely.filter(
    ({ source, block }) =>
      source.kind === "table" ||
      !likely.some((other) => other.source.kind === "table" && other.block.sheet === block.sheet),
  );
}

export const sameSource = (one: Source, other: Source): boolean =>
  (one.kind === "sheet" && other.kind === "sheet" && one.sheet === other.sheet) ||
  (one.kind === "table" && other.kind === "table" && one.table === other.table);

function firstItems(blocks: readonly SourceBlock[]): readonly ItemRow[] | null {
  for (const { block } of blocks) {
    const rows = readItemTable(block);
    if (rows !== null && rows.length > 0) return rows;
  }
  return null;
}
