/** Prepares the new contents on sheets that nobody sees. Until the swap, the workbook is as it was. */
import { areaOf, fromFirstCell, loadArea, loadBands, type Area } from "./bands";
import type { ListPlaces } from "./choices";
import { putLayout, settingsIn } from "./dress";
import { drawCells, putExtras, type LateFormula } from "./drawSheet";
import { journalXml, type Journal } from "./journal";
import { outbox, settingBytes } from "./outbox";
import type { SheetPlan, WritePlan } from "./planning";
import { makeTables, tableArea, type StandingTable } from "./tables";
import { loadTyped, writtenFingerprintOf } from "./typed";

/** A sheet that is prepared, and what stands where it goes. */
export type Prepared = {
  readonly plan: SheetPlan;
  /** The id of the sheet on which it is prepared. */
  readonly asideId: string | null;
  readonly late: readonly LateFormula[];
  /** The fingerprint of what we write; the empty text for a sheet without a mark. */
  readonly written: string;
  /** The cells that the old contents and the new ones cover, from the first cell on. */
  readonly extent: Area;
  readonly standingTables: readonly StandingTable[];
};

/**
 * Tells `onSheet` of each sheet that is prepared. `null` when `isStopped` said so between two sheets:
 * what is prepared must then be undone.
 */
export async function buildSheets(
  context: Excel.RequestContext,
  { sheets, styles, isLate }: WritePlan,
  journal: Journal,
  places: ListPlaces,
  onSheet: (count: number) => void,
  isStopped: () => boolean,
): Promise<readonly Prepared[] | null> {
  const { workbook } = context;
  const box = outbox(context);
  const xml = journalXml(journal);
  await box.room(xml.length + sheets.length * 3 * settingBytes);
  workbook.customXmlParts.add(xml);
  for (const { journal: sheet } of sheets) {
    workbook.worksheets.add(sheet.aside).visibility = "VeryHidden";
  }
  const late: (readonly LateFormula[])[] = [];
  for (const [index, plan] of sheets.entries()) {
    if (isStopped()) return null;
    const worksheet = workbook.worksheets.getItem(plan.journal.aside);
    late.push(await drawCells(box, worksheet, plan.drawn, styles, isLate));
    onSheet(index + 1);
  }
  for (const { journal: sheet, drawn } of sheets) {
    const worksheet = workbook.worksheets.getItem(sheet.aside);
    await putExtras(box, worksheet, drawn, places);
    if (sheet.was === "replaced") continue;
    await box.room((settingsIn(sheet.dress) + 5 * drawn.tables.length) * settingBytes);
    putLayout(worksheet, sheet.dress);
    makeTables(worksheet, drawn.tables.map(wantedTable));
  }
  if (isStopped()) return null;
  return await lookBack(context, sheets, late);
}

export const wantedTable = (table: SheetPlan["drawn"]["tables"][number]): StandingTable => ({
  name: table.name,
  area: tableArea(table),
});

/** Reads what was prepared as Excel has it now, and how large that is which it replaces. */
async function lookBack(
  context: Excel.RequestContext,
  sheets: readonly SheetPlan[],
  late: readonly (readonly LateFormula[])[],
): Promise<readonly Prepared[]> {
  const { worksheets, tables } = context.workbook;
  worksheets.load("items/id,items/name");
  const asked = sheets.map((plan, index) => ({
    plan,
    late: late[index] ?? [],
    drawn: { ...drawnArea(plan), sheet: worksheets.getItem(plan.journal.aside) },
    used: plan.live === null ? null : loadArea(worksheets.getItem(plan.live.id).getUsedRange()),
    tables: (plan.live?.tables ?? []).map((name) => ({
      name,
      range: loadArea(tables.getItem(name).getRange()),
    })),
  }));
  const marked = asked.filter(({ plan }) => plan.journal.mark !== null);
  // What is asked along with an answer that proves too large is lost with it.
  const bytes = marked.reduce((sum, { plan }) => sum + bytesToRead(plan), 0);
  if (marked.length === 0 || bytes > sureBytes) await context.sync();
  const bands = await loadBands(
    context,
    marked.map(({ drawn }) => drawn),
    loadTyped,
  );
  const ids = new Map(worksheets.items.map(({ name, id }) => [name, id]));
  return asked.map((each): Prepared => {
    const index = marked.indexOf(each);
    return {
      plan: each.plan,
      asideId: ids.get(each.plan.journal.aside) ?? null,
      late: each.late,
      written:
        index < 0 ? "" : writtenFingerprintOf(bands[index] ?? [], each.late, each.plan.drawn),
      extent: fromFirstCell(each.drawn, ...(each.used === null ? [] : [areaOf(each.used)])),
      standingTables: each.tables.map(({ name, range }) => ({ name, area: areaOf(range) })),
    };
  });
}

/** An answer of this many bytes is surely small enough. */
const sureBytes = 1_000_000;

/** About what an answer with the values and the formulas of a sheet takes. */
const bytesToRead = ({ drawn: { rows } }: SheetPlan): number =>
  rows.flat().reduce((sum, cell) => {
    const text = typeof cell?.value === "string" ? cell.value.length : 0;
    return sum + 20 + 2 * text + (cell?.formula?.length ?? 0);
  }, 0);

/** From the first cell on; one cell at least. */
const drawnArea = ({ drawn: { rows } }: SheetPlan): Area => ({
  row: 0,
  column: 0,
  rows: Math.max(rows.length, 1),
  columns: Math.max(1, ...rows.map((cells) => cells.length)),
});
