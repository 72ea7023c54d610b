/** Finds what a workbook holds: its schedules, its own kit book, its items table. */
import type { Block } from "../../core/base/cell";
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import { ok, type Result } from "../../core/base/result";
import type { KitBookRows } from "../../core/kitbook/rows";
import { starterItems } from "../../core/kitbook/starter/items";
import { starterKitBook } from "../../core/kitbook/starter/starterKitBook";
import type { Schedule } from "../../core/openings/openingRow";
import type { ItemRow } from "../../core/pricing/item";
import { hardwareHeadings } from "../../tables/hardwareTableColumns";
import type { RateTable } from "../../core/pricing/rates/rates";
import { readItemTable } from "../../tables/itemTable";
import { readKitBook, type KitBookReading } from "../../tables/kitBookTable";
import { readRateTable } from "../../tables/rateTable";
import { scheduleLikeness } from "../../tables/scheduleLayout";
import { readSchedule, type ScheduleReading } from "../../tables/scheduleTable";
import type { Source, Workbook, WorkbookFault } from "../../workbook/workbook";
import type { Settings } from "../settings";
import { readBlocks, sameSource, type SourceBlock } from "./sourceBlocks";

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
  /** Every sheet and table that could be a schedule. */
  readonly sources: readonly Source[];
  /** Those that are read as schedules. */
  readonly scheduleSources: readonly Source[];
  readonly kitBook: KitBookRows;
  readonly hasOwnKitBook: boolean;
  /** Of the workbook's own kit book, from 1; 0 where it has none. */
  readonly kitBookEdition: number;
  readonly items: readonly ItemRow[];
  readonly hasOwnItems: boolean;
  /** Whether the items stand on a sheet of this workbook, where live prices can point. */
  readonly hasItemsSheet: boolean;
  /** Of the workbook's rates sheet; `null` where it has none. */
  readonly rates: RateTable | null;
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
  const blocks = await readBlocks(await workbook.sheets(), (source) => workbook.read(source));
  if (!blocks.ok) return blocks;
  const found = findInputs(blocks.value, settings, others);
  const readings = found.chosen.map(({ block }) => readSchedule(block, settings.columns));
  return ok(gatherInputs(found, readings, others));
}

/** What a workbook's blocks are, before the rows of the schedules are read. */
export type FoundInputs = {
  readonly blocks: readonly SourceBlock[];
  /** Those that are read as schedules. */
  readonly chosen: readonly SourceBlock[];
  /** `null` where the workbook has none of its own. */
  readonly kitBook: KitBookReading | null;
  /** `null` where the workbook has none of its own. */
  readonly items: readonly ItemRow[] | null;
  readonly rates: RateTable | null;
};

/** `readBook` may answer from memory. */
export const findInputs = (
  blocks: readonly SourceBlock[],
  settings: Settings,
  others: OtherInputs = {},
  readBook: typeof readKitBook = readKitBook,
): FoundInputs => ({
  blocks,
  chosen: schedulesIn(blocks, settings),
  kitBook: others.kitBook ?? readBook(blocks.map(({ block }) => block)),
  items: others.items ?? firstItems(blocks),
  rates: ratesIn(blocks),
});

/** What was found, with the reading of each chosen block. */
export function gatherInputs(
  { blocks, chosen, kitBook, items, rates }: FoundInputs,
  readings: readonly Result<ScheduleReading, Finding>[],
  others: OtherInputs = {},
): Inputs {
  const read = readings.flatMap((reading) => (reading.ok ? [reading.value] : []));
  return {
    readings: read,
    schedules: read.map((reading) => reading.schedule),
    source: chosen[0]?.source ?? null,
    sources: blocks.map(({ source }) => source),
    scheduleSources: chosen.map(({ source }) => source),
    kitBook: kitBook?.rows ?? starterKitBook,
    hasOwnKitBook: kitBook !== null,
    kitBookEdition: kitBook?.edition ?? 0,
    items: items ?? starterItems,
    hasOwnItems: items !== null,
    hasItemsSheet: items !== null && others.items === undefined,
    rates,
    findings: [
      ...readings.flatMap((reading) => (reading.ok ? reading.value.findings : [reading.error])),
      ...(kitBook?.findings ?? []),
      ...(kitBook === null ? [makeFinding(inputFindings, "starter-kit-book", {})] : []),
      ...(items === null ? [makeFinding(inputFindings, "starter-prices", {})] : []),
    ],
  };
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
  const likely = blocks.filter(({ block }) => scheduleLikeness(block) === "whole");
  const isMapped = Object.keys(settings.columns).length > 0;
  if (likely.length === 0 && isMapped) return blocks.slice(0, 1);
  // A schedule that lacks a size's column is read all the same, to say which one.
  if (likely.length === 0) {
    return blocks.filter(({ block }) => scheduleLikeness(block) === "part").slice(0, 1);
  }
  return likely.filter(
    ({ source, block }) =>
      source.kind === "table" ||
      !likely.some((other) => other.source.kind === "table" && other.block.sheet === block.sheet),
  );
}

/** The rows of each block that is an items table, kept with it: the same block has the same rows. */
const itemsOfBlock = new WeakMap<Block, readonly ItemRow[] | null>();

/** A hardware sheet that was kept lists items with their costs too, and is no items table. */
const itemsIn = (block: Block): readonly ItemRow[] | null =>
  hardwareHeadings(block) === null ? readItemTable(block) : null;

function firstItems(blocks: readonly SourceBlock[]): readonly ItemRow[] | null {
  for (const { block } of blocks) {
    const known = itemsOfBlock.get(block);
    const rows = known === undefined ? itemsIn(block) : known;
    itemsOfBlock.set(block, rows);
    if (rows !== null && rows.length > 0) return rows;
  }
  return null;
}

/** The same for rates. A schedule is long, so a block is looked through once. */
const ratesOfBlock = new WeakMap<Block, RateTable | null>();

export function ratesIn(blocks: readonly SourceBlock[]): RateTable | null {
  for (const { source, block } of blocks) {
    // As prices are read: from whole sheets.
    if (source.kind !== "sheet") continue;
    const known = ratesOfBlock.get(block);
    const rates = known === undefined ? (readRateTable(block)?.rates ?? null) : known;
    ratesOfBlock.set(block, rates);
    if (rates !== null) return rates;
  }
  return null;
}
