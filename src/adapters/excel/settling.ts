/** Brings the workbook to rest: what was begun is finished, or undone. */
import { err, ok, type Result } from "../../core/base/result";
import type { WorkbookFault } from "../../workbook/workbook";
import { otherInFront, otherIsWriting, tidyingLeft } from "./excelFaults";
import { finish, type Extras, type Kept } from "./finishing";
import type { ChartsSeen } from "./floating";
import { inExcel } from "./inExcel";
import { silence, type Journal } from "./journal";
import { readOverview, type Overview } from "./overview";
import type { PaintPicture } from "./paintPicture";
import { undo } from "./undoing";

/** Who writes, and what the adapter was given. */
export type Session = {
  readonly writer: string;
  /** Milliseconds since 1970. */
  readonly now: () => number;
  /** How long a question may wait for a person who is editing a cell; milliseconds. */
  readonly patience: number;
  /** Makes images of pictures; the page's own canvas where absent. */
  readonly paint?: PaintPicture;
};

/** Twice all of it, and then without what some hosts refuse: a page needs a printer there. */
const tries: readonly Extras[] = [
  { print: true, charts: true },
  { print: true, charts: true },
  { print: false, charts: true },
  { print: true, charts: false },
  { print: false, charts: false },
];

type Finished = { readonly kept: Kept; readonly hasCharts: boolean };

export async function finished(
  session: Session,
  journal: Journal,
): Promise<Result<Finished, WorkbookFault>> {
  const hasPlans = journal.sheets.some(({ charts }) => charts.length > 0);
  const chartsSeen: ChartsSeen = new Map();
  let outcome: Result<Finished, WorkbookFault> = err(tidyingLeft);
  for (const extras of tries.filter(({ charts }) => charts || hasPlans)) {
    const kept = await onceInFront(session, (context) =>
      finish(context, journal, extras, chartsSeen),
    );
    if (kept.ok) return ok({ kept: kept.value, hasCharts: extras.charts });
    outcome = kept;
  }
  return outcome;
}

/**
 * Brings the workbook to rest after a failure: what is half done is undone. A swap that came to its
 * end, though its answer was lost, is returned.
 */
export async function settle(session: Session): Promise<Journal | "undone" | "unsettled"> {
  for (let tries = 0; tries < 2; tries++) {
    const settled = await onceInFront(session, async (context) => {
      const { journal } = await readOverview(context);
      if (journal?.phase === "done") return journal;
      if (journal !== null) await undo(context, journal, false);
      return "undone";
    });
    if (settled.ok) return settled.value;
  }
  return "unsettled";
}

/**
 * Excel refuses while another workbook is in front; what is half done is worth waiting until the
 * person comes back. `batch` can be done again from the journal.
 */
async function onceInFront<Value>(
  { patience }: Session,
  batch: (context: Excel.RequestContext) => Promise<Value>,
): Promise<Result<Value, WorkbookFault>> {
  for (let looks = 1; ; looks++) {
    const said = await inExcel(batch);
    if (said.ok || said.error !== otherInFront || looks === mostLooks) return said;
    await new Promise((done) => setTimeout(done, patience / mostLooks));
  }
}

/** How often to look within a session's patience. */
const mostLooks = 20;

/** What is there, after finishing or undoing what an earlier writing left. */
export async function settledOverview(session: Session): Promise<Result<Overview, WorkbookFault>> {
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
    const kept = await finished(session, journal);
    return kept.ok ? ok(null) : kept;
  }
  return await inExcel(async (context) => {
    await undo(context, journal, true);
    return null;
  });
}
