/** Writes drawings as one act: prepare, swap, finish, and a way back from every point in between. */
import { err, ok, type Result } from "../../core/base/result";
import type { Drawing } from "../../workbook/drawing";
import { withPictureWords } from "../../workbook/pictureWords";
import { cancelled } from "../../workbook/faults";
import type { WorkbookFault, WriteOptions, WrittenSheet } from "../../workbook/workbook";
import { buildSheets, type Prepared } from "./building";
import { listsDrawing, listsMark, listsOn, longLists, withLists, type ListPlaces } from "./choices";
import { halfWritten, otherIsWriting, tidyingLeft } from "./excelFaults";
import { finish, type Kept } from "./finishing";
import { inExcel } from "./inExcel";
import { silence, type Journal } from "./journal";
import { readOverview, type Overview } from "./overview";
import { planSheets, type WritePlan } from "./planning";
import { readBlock } from "./reading";
import { swapSheets } from "./swapping";
import { undo } from "./undoing";

/** Who writes, and what the adapter was given. */
export type Session = {
  readonly writer: string;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** How long a question may wait for a person who is editing a cell; milliseconds. */
  readonly patience: number;
};

type Written = Result<readonly WrittenSheet[], WorkbookFault>;

/**
 * Round trips, whatever the count of rows: one to look, two or more to prepare (one for each 2 MB
 * written and each 40,000 cells read back), one to swap, one or three to finish.
 */
export async function writeDrawings(
  session: Session,
  wanted: readonly Drawing[],
  { onProgress = () => undefined, signal }: WriteOptions = {},
): Promise<Written> {
  const drawings = wanted.map(withPictureWords);
  const isStopped = (): boolean => signal?.aborted === true;
  if (isStopped()) return err(cancelled);
  onProgress(0);
  const overview = await settledOverview(session);
  if (!overview.ok) return overview;
  const prepared = await preparation(session, drawings, overview.value);
  if (!prepared.ok) return prepared;
  const { plan, places } = prepared.value;
  const journal: Journal = {
    version: 1,
    writer: session.writer,
    at: session.now(),
    phase: "building",
    sheets: plan.sheets.map((sheet) => sheet.journal),
  };

  const onSheet = (count: number): void => {
    onProgress((0.8 * count) / (plan.sheets.length + 1));
  };
  const built = await inExcel((context) =>
    buildSheets(context, plan, journal, places, onSheet, isStopped),
  );
  if (built.ok && built.value !== null) onProgress(0.8);
  if (!built.ok || built.value === null || isStopped()) {
    await settle();
    return built.ok ? err(cancelled) : built;
  }
  const written = await swapAndFinish(session, journal, built.value, onProgress);
  return written.ok
    ? ok(written.value.map((sheet, index) => saysWords(sheet, wanted[index])))
    : written;
}

/** With what became of the pictures of the drawing that it was. */
const saysWords = (sheet: WrittenSheet, drawing: Drawing | undefined): WrittenSheet =>
  (drawing?.pictures ?? []).length === 0 ? sheet : { ...sheet, pictures: "words" };

async function swapAndFinish(
  session: Session,
  journal: Journal,
  prepared: readonly Prepared[],
  onProgress: (done: number) => void,
): Promise<Written> {
  const swapped = await inExcel((context) => swapSheets(context, prepared, journal, session.now()));
  const done = swapped.ok ? swapped.value : await settle();
  if (done === "unsettled") return err(halfWritten);
  if (done === "undone") return swapped.ok ? err(halfWritten) : swapped;
  onProgress(0.9);
  const kept = await finished(done);
  if (!kept.ok) return err(tidyingLeft);
  onProgress(1);
  return ok(
    prepared
      .map(({ plan }) => plan.journal)
      .filter(({ mark }) => mark?.kind !== listsMark.kind)
      .map(({ name, mark, was }) => ({ name, mark, was, keptAs: kept.value.get(name) ?? null })),
  );
}

/** Tries twice, and then without page set-up, which some hosts refuse for want of a printer. */
async function finished(journal: Journal): Promise<Result<Kept, WorkbookFault>> {
  const all = new Map<string, string>();
  let outcome: Result<Kept, WorkbookFault> = ok(all);
  for (const withPrint of [true, true, false]) {
    outcome = await inExcel((context) => finish(context, journal, withPrint));
    if (outcome.ok) return outcome;
  }
  return outcome;
}

/**
 * Brings the workbook to rest after a failure: what is half done is undone. A swap that came to its
 * end, though its answer was lost, is returned.
 */
async function settle(): Promise<Journal | "undone" | "unsettled"> {
  for (let tries = 0; tries < 2; tries++) {
    const settled = await inExcel(async (context) => {
      const { journal } = await readOverview(context);
      if (journal?.phase === "done") return journal;
      if (journal !== null) await undo(context, journal, false);
      return "undone";
    });
    if (settled.ok) return settled.value;
  }
  return "unsettled";
}

/** What is there, after finishing or undoing what an earlier writing left. */
async function settledOverview(session: Session): Promise<Result<Overview, WorkbookFault>> {
  const seen = await inExcel(readOverview, session.patience);
  if (!seen.ok || seen.value.journal === null) return seen;
  const recovered = await recover(session, seen.value.journal);
  return recovered.ok ? await inExcel(readOverview, session.patience) : recovered;
}

/** Finishes or undoes what `journal` tells, unless someone else may still be at it. */
export async function recover(
  session: Session,
  journal: Journal,
): Promise<Result<null, WorkbookFault>> {
  const isOthers = journal.writer !== session.writer;
  if (isOthers && session.now() - journal.at < silence) return err(otherIsWriting);
  if (journal.phase === "done") {
    const kept = await finished(journal);
    return kept.ok ? ok(null) : kept;
  }
  return await inExcel(async (context) => {
    await undo(context, journal, true);
    return null;
  });
}

/** The plan, with a sheet of lists where drop-downs need one. */
async function preparation(
  session: Session,
  drawings: readonly Drawing[],
  overview: Overview,
): Promise<Result<{ readonly plan: WritePlan; readonly places: ListPlaces }, WorkbookFault>> {
  const wanted = longLists(drawings);
  const standing = overview.sheets.find(({ mark }) => mark?.kind === listsMark.kind);
  let known: ListPlaces["lists"] = [];
  if (wanted.length > 0 && standing !== undefined) {
    const block = await inExcel(
      (context) => readBlock(context, { kind: "sheet", sheet: standing.name }),
      session.patience,
    );
    if (!block.ok) return block;
    if (!block.value.ok) return block.value;
    known = listsOn(block.value.value);
  }
  const lists = withLists(known, wanted);
  const isMore = lists.length > known.length;
  const all = isMore ? [...drawings, listsDrawing(lists)] : drawings;
  const plan = planSheets(all, overview, session.writer);
  if (!plan.ok) return plan;
  const made = plan.value.sheets.find(({ journal }) => journal.mark?.kind === listsMark.kind);
  const sheet = made?.live?.name ?? made?.journal.aside ?? standing?.name ?? null;
  return ok({ plan: plan.value, places: { sheet, lists } });
}
