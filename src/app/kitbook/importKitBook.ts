/**
 * Taking another kit book's rows over into a workbook's own.
 *
 * What would change is known before anything is written, row by row. The book that comes of it is
 * written as the next edition, four new sheets beside the old ones, of which no cell is touched: what a
 * person typed there, with its looks, notes and formulas, stays, and counts again when the new sheets go.
 */
import type { Finding } from "../../core/base/finding";
import { ok, type Result } from "../../core/base/result";
import { between, finish, type Steps } from "../../core/base/steps";
import { applyChanges, type Wanted } from "../../core/bookcheck/applyChanges";
import { compareBooksInSteps, type RowChange } from "../../core/bookcheck/compareBooks";
import { compileInSteps, compileKitBook } from "../../core/kitbook/compileKitBook";
import type { KitBookRows } from "../../core/kitbook/rows";
import { kitBookDrawings } from "../../tables/kitBookDrawings";
import { readKitBook, type KitBookReading } from "../../tables/kitBookTable";
import type { Drawing } from "../../workbook/drawing";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import type { KitBookAtHand } from "./kitBookAtHand";
import { readBlocks } from "../reading/sourceBlocks";

export type KitBookImport = {
  /** The rows in use now: the workbook's own, or the starter's. */
  readonly before: KitBookRows;
  readonly after: KitBookRows;
  /** Whether the workbook has no book of its own, so that a row that goes was typed by nobody. */
  readonly isFirst: boolean;
  /** From `before` to `after`. */
  readonly changes: readonly RowChange[];
};

type HandRows = Pick<KitBookAtHand, "rows" | "isStarter">;

export const kitBookImport = (hand: HandRows, after: KitBookRows): KitBookImport =>
  finish(importInSteps(hand, after));

/** The same, some rows a step. */
export function* importInSteps(
  { rows, isStarter }: HandRows,
  after: KitBookRows,
): Steps<KitBookImport> {
  const changes = yield* compareBooksInSteps(rows, after);
  return { before: rows, after, isFirst: isStarter, changes };
}

/** What is taken over unless a person says otherwise: a row that the other book lacks is kept. */
export const isOffered = ({ kind }: RowChange, { isFirst }: KitBookImport): boolean =>
  isFirst || kind !== "removed";

/** The book that comes of the changes wanted. */
export function importedRows(
  { before, after, isFirst, changes }: KitBookImport,
  isWanted: Wanted,
): KitBookRows {
  return isFirst && changes.every(isWanted)
    ? after
    : applyChanges(before, after, changes, isWanted);
}

/** What would be wrong with that book; `headings` are the further fields of the workbook's schedules. */
export const importFindings = (
  rows: KitBookRows,
  headings: readonly string[],
): readonly Finding[] => compileKitBook(rows, headings).findings;

export type ImportedBook = {
  readonly rows: KitBookRows;
  /** What would not work in it. */
  readonly stops: readonly Finding[];
};

/** The book that comes of the changes wanted, checked, an opening type a step. */
export function* checkedImport(
  change: KitBookImport,
  isWanted: Wanted,
  headings: readonly string[],
): Steps<ImportedBook> {
  const rows = importedRows(change, isWanted);
  yield 0.1;
  const { findings } = yield* between(0.1, 1, compileInSteps(rows, headings));
  return { rows, stops: findings.filter(({ level }) => level === "stop") };
}

/** The sheets of the next edition after `edition`, which is 0 where there is none. */
export const importDrawings = (rows: KitBookRows, edition: number): readonly Drawing[] =>
  kitBookDrawings(rows, edition + 1);

/** The kit book of another workbook, such as a file; `null` where it has none. Error: it could not be read. */
export async function kitBookIn(
  workbook: Workbook,
): Promise<Result<KitBookReading | null, WorkbookFault>> {
  const blocks = await readBlocks(await workbook.sheets(), (source) => workbook.read(source));
  return blocks.ok ? ok(readKitBook(blocks.value.map(({ block }) => block))) : blocks;
}
