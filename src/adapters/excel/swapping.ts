/**
 * The swap: what was prepared takes its place. One request, in an order that can be undone at every
 * point: first the old sheets are copied, then the journal says so, then contents change; once the
 * journal says `done`, only tidying is left.
 */
import { stampFormula } from "../../workbook/sheetStamp";
import { wantedTable, type Prepared } from "./building";
import { listsMark } from "./choices";
import { putLateFormulas } from "./drawSheet";
import { copyMark, journalPart, journalXml, type Journal, type JournalSheet } from "./journal";
import { outbox, settingBytes, type Outbox } from "./outbox";
import { fitTables, makeTables } from "./tables";

/** The journal as it stands afterwards is returned; `at` is the time now. */
export async function swapSheets(
  context: Excel.RequestContext,
  prepared: readonly Prepared[],
  journal: Journal,
  at: number,
): Promise<Journal> {
  const { worksheets } = context.workbook;
  const box = outbox(context);
  const part = journalPart(context.workbook);
  const swapping: Journal = {
    ...journal,
    at,
    phase: "swapping",
    sheets: prepared.map(({ plan, asideId, written, standingTables }) => ({
      ...plan.journal,
      asideId,
      written,
      tablesBefore: standingTables,
    })),
  };
  const done: Journal = { ...swapping, phase: "done" };
  await box.room(2 * journalXml(done).length + prepared.length * 25 * settingBytes);

  for (const { plan } of prepared) {
    const { live, journal: sheet } = plan;
    if (live === null || sheet.old === null) continue;
    const worksheet = worksheets.getItem(live.id);
    worksheet.names.add(copyMark, `="${journal.writer}"`).visible = false;
    const copy = worksheet.copy("End");
    copy.name = sheet.old;
    copy.visibility = "VeryHidden";
    worksheet.names.getItem(copyMark).delete();
  }
  part.setXml(journalXml(swapping));

  const later = prepared.map((each) => exchange(worksheets, each));
  for (const [index, make] of later.entries()) {
    make();
    const each = prepared[index];
    if (each !== undefined) await putLate(box, worksheets, each);
  }
  for (const { plan } of prepared) {
    if (plan.live !== null) continue;
    const sheet = worksheets.getItem(plan.journal.aside);
    sheet.name = plan.journal.name;
    if (plan.journal.mark?.kind !== listsMark.kind) sheet.visibility = "Visible";
  }
  for (const sheet of done.sheets) putStamp(context, sheet);
  part.setXml(journalXml(done));
  await box.send();
  return done;
}

/** Puts the new contents over the old ones; returns what makes the tables that are not there yet. */
function exchange(
  worksheets: Excel.WorksheetCollection,
  { plan, extent, standingTables }: Prepared,
): () => void {
  const { live, journal, drawn } = plan;
  if (live === null) return () => undefined;
  const sheet = worksheets.getItem(live.id);
  if (live.hasFilter) sheet.autoFilter.remove();
  const wanted = fitTables(sheet, standingTables, drawn.tables.map(wantedTable));
  copyOver(worksheets.getItem(journal.aside), sheet, extent);
  return () => {
    makeTables(sheet, wanted);
  };
}

/** All cells of `extent`, blank ones too, with everything that is in them. */
export function copyOver(
  from: Excel.Worksheet,
  to: Excel.Worksheet,
  { rows, columns }: { readonly rows: number; readonly columns: number },
): void {
  const target = to.getRangeByIndexes(0, 0, rows, columns);
  target.unmerge();
  target.copyFrom(from.getRangeByIndexes(0, 0, rows, columns), "All", false, false);
}

async function putLate(
  box: Outbox,
  worksheets: Excel.WorksheetCollection,
  { plan, late }: Prepared,
): Promise<void> {
  if (late.length === 0) return;
  const sheet = worksheets.getItem(plan.live?.id ?? plan.journal.aside);
  await putLateFormulas(box, sheet, late);
}

/** Marks the sheet as ours. */
function putStamp(
  { workbook }: Excel.RequestContext,
  { name, mark, stamp, stampBefore, written }: JournalSheet,
): void {
  if (mark === null || stamp === null || written === null) return;
  const formula = stampFormula({ sheet: name, mark, written });
  if (stampBefore !== null) {
    workbook.names.getItem(stamp).formula = formula;
    return;
  }
  workbook.names.add(stamp, formula).visible = false;
}
