/**
 * What a person typed on hardware sheets, and what must be left of it.
 *
 * Each thing that is typed has a reason of its own, such as `r17`, so it can be found again wherever
 * it goes. `live` must not be lost, `gone` was typed over or cleared and must not come back; what is
 * in neither may be either.
 */
import { defaultSettings, type Settings } from "../../../src/app/settings";
import { rowKey } from "../../../src/core/corrections/rowName";
import { hingedDoor } from "../../../src/core/kitbook/starter/hingedDoor";
import { starterItems } from "../../../src/core/kitbook/starter/items";
import { typedRows } from "../../../src/core/kitbook/starter/starterRows";
import { trackPlates } from "../../../src/core/kitbook/starter/trackPlates";
import type { ItemRow } from "../../../src/core/pricing/item";
import type { KitBookReading } from "../../../src/tables/kitBookTable";
import type { TypedSheets } from "../typedWorkbook";
import type { Desk } from "./desk";
import { hardwareSubjects, sheetRows, tokenIn, type SheetRow } from "./hardwareSheets";

/** Whole numbers from zero to below `limit`, the same ones for the same seed. */
export type Chance = (limit: number) => number;

export function chanceOf(seed: number): Chance {
  let state = seed >>> 0;
  return (limit) => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) % limit;
  };
}

export const pick = <T>(list: readonly T[], chance: Chance): T | undefined =>
  list[chance(list.length || 1)];

export type World = {
  desk: Desk;
  settings: Settings;
  items: readonly ItemRow[];
  readonly live: Set<string>;
  readonly gone: Set<string>;
  /** On record when it was last kept. */
  recorded: ReadonlySet<string>;
  /** The subjects of the sheets that were written last: what they show is what is kept. */
  fresh: ReadonlySet<string>;
  /** The row under which each one is on record. */
  keys: ReadonlyMap<string, string>;
  /** Whether since the last writing a person typed only where they are asked to. */
  isTidy: boolean;
  readonly log: string[];
  tokens: number;
};

const headings = "Job|Mark|Qty|Type|Width|Height|Post height|Tail post|Floor".split("|");
const opening = (job: string, mark: string, width: string): readonly (string | number)[] => [
  job,
  mark,
  1,
  "hinged door",
  width,
  "7'",
  "8'",
  "yes",
  "concrete",
];

/** Widths that an opening of the schedule may be given. */
export const widths = ["2'", "3'", `3'-6"`, "4'"];

/** The starter's part that the schedule needs: it is compiled anew for each take-off. */
export const kitBook: KitBookReading = {
  rows: typedRows([hingedDoor], trackPlates),
  edition: 1,
  findings: [],
};

/** The schedule that is taken off. */
export const schedule: TypedSheets = {
  Schedule: [
    headings,
    opening("Crib", "A-1", "4'"),
    opening("Crib", "A-2", "3'"),
    opening("Cage", "B-1", "4'"),
  ],
};

/** Before a workbook with the schedule, in which nothing was typed yet. */
export const newWorld = (desk: Desk): World => ({
  desk,
  settings: defaultSettings,
  items: starterItems,
  live: new Set(),
  gone: new Set(),
  recorded: new Set(),
  fresh: new Set(),
  keys: new Map(),
  isTidy: false,
  log: [],
  tokens: 0,
});

export function newToken(world: World): string {
  world.tokens += 1;
  const token = `r${world.tokens}`;
  world.live.add(token);
  return token;
}

/**
 * What stood in a row is not said any more, unless another row of the sheet says it of the same.
 * Elsewhere it may be said of another line, or with other spares, which keeps it: no claim.
 */
export function leave(world: World, row: SheetRow): void {
  const token = tokenIn(row);
  if (token === null || !world.live.has(token)) return;
  // A sheet that has gone stale may show it under the name of a job that was renamed since.
  if ((world.keys.get(token) ?? rowKey(row.name)) !== rowKey(row.name)) return;
  const others = sheetRows(world.desk).filter(
    (other) => tokenIn(other) === token && (other.sheet !== row.sheet || other.row !== row.row),
  );
  const isSaid = others.some(
    ({ sheet, name }) => sheet === row.sheet && rowKey(name) === rowKey(row.name),
  );
  if (isSaid) return;
  world.live.delete(token);
  // A stale sheet may show it with other spares than those that are kept.
  const isFresh = world.fresh.has(hardwareSubjects(world.desk).get(row.sheet) ?? "?");
  if (others.length === 0 && isFresh) world.gone.add(token);
}

/** What is put back from the record was perhaps typed over since, or was never on it: no claim. */
export function disclaim(world: World, tokens: readonly string[]): void {
  for (const token of world.recorded) world.gone.delete(token);
  for (const token of tokens) if (!world.recorded.has(token)) world.live.delete(token);
}

/** A sheet that has gone stale may show what was typed over elsewhere: whoever touches it says it again. */
export const sayAgain = (world: World, row: SheetRow): void => {
  world.gone.delete(tokenIn(row) ?? "");
};
