/** The workbook that is open in Excel, through the Office JavaScript API. */
import { ok } from "../../core/base/result";
import type { SheetSummary, Workbook } from "../../workbook/workbook";
import { listsMark } from "./choices";
import { inExcel, orThrow } from "./inExcel";
import { readOverview } from "./overview";
import { activeSheet, goTo, selection } from "./places";
import { readBlock } from "./reading";
import { readSetting, writeSetting } from "./settings";
import { sharedWatch } from "./sharedWatch";
import { watch } from "./watching";
import type { Session } from "./settling";

/**
 * Opens the workbook, and first finishes or undoes a writing that broke off. A refusal at that is
 * no reason not to open: the next writing tries again.
 *
 * `Excel` and `Office` must be there, and Office ready.
 */
export async function openExcelWorkbook(options: Partial<Session> = {}): Promise<Workbook> {
  const session: Session = {
    writer: newWriter(),
    now: Date.now,
    patience: 20_000,
    ...options,
  };
  const seen = await inExcel(readOverview, session.patience);
  if (seen.ok && seen.value.journal !== null) {
    const { recover } = await import(/* webpackChunkName: "excelWriting" */ "./settling");
    await recover(session, seen.value.journal);
  }

  const ask = async <Value>(
    question: (context: Excel.RequestContext) => Promise<Value>,
  ): Promise<Value> => orThrow(await inExcel(question, session.patience));
  const oneByOne = inTurn();
  return {
    host: "excel",
    name: () => ask(workbookName),
    sheets: () => ask(sheetSummaries),
    activeSheet: () => ask(activeSheet),
    selection: () => ask(selection),
    read: async (source) => {
      const read = await inExcel((context) => readBlock(context, source), session.patience);
      return read.ok ? read.value : read;
    },
    watch: sharedWatch(watch),
    goTo: async (place) => {
      const gone = await inExcel((context) => goTo(context, place), session.patience);
      return gone.ok ? gone.value : gone;
    },
    write: (drawings, writing) =>
      oneByOne(async () => {
        const { writeDrawings } = await loadWriting();
        return writeDrawings(session, drawings, writing);
      }),
    readSetting: (key) => ask((context) => readSetting(context, key)),
    writeSetting: (key, text) =>
      oneByOne(() => inExcel((context) => writeSetting(context, key, text))),
  };
}

/** Half of this adapter serves writing only; it comes when it is first needed. */
const loadWriting = () => import(/* webpackChunkName: "excelWriting" */ "./writing");

/** Eight hexadecimal digits. */
const newWriter = (): string =>
  Array.from(crypto.getRandomValues(new Uint8Array(4)), (byte) =>
    byte.toString(16).padStart(2, "0"),
  ).join("");

/** Runs what changes the workbook one after the other, whatever came of the one before. */
function inTurn(): <Value>(work: () => Promise<Value>) => Promise<Value> {
  let last: Promise<unknown> = Promise.resolve(ok(null));
  return (work) => {
    const next = last.then(work, work);
    last = next;
    return next;
  };
}

async function workbookName(context: Excel.RequestContext): Promise<string> {
  const workbook = context.workbook.load("name");
  await context.sync();
  return workbook.name;
}

async function sheetSummaries(context: Excel.RequestContext): Promise<readonly SheetSummary[]> {
  const { sheets } = await readOverview(context);
  return sheets
    .filter(({ mark }) => mark?.kind !== listsMark.kind)
    .map(({ name, visible, mark, tables }) => ({ name, visible, mark, tables }));
}
