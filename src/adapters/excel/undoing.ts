/** Undoes a writing that did not come to its end, from what the journal tells. */
import { keptSheetName } from "../../workbook/sheetNames";
import { withOtherNames } from "../../workbook/formulaNames";
import { journalPart, journalXml, type Journal, type JournalSheet } from "./journal";
import { outbox, settingBytes } from "./outbox";
import { readOverview, type Overview } from "./overview";
import { putLateFormulas, type LateFormula } from "./drawSheet";
import { oldContents, type OldContents } from "./oldContents";
import { addressOf } from "./runs";
import { copyOver } from "./swapping";
import { fitTables, makeTables } from "./tables";

/** The ids of sheets that were there before the swap; `null` when that is not known any more. */
type Known = ReadonlySet<string> | null;

/** Takes away what was prepared; if contents were being exchanged, puts the old ones back first. */
export async function undo(
  context: Excel.RequestContext,
  journal: Journal,
  known: Known,
): Promise<void> {
  const overview = await readOverview(context);
  if (journal.phase === "swapping") await putBack(context, journal, overview, known);
  await clearAway(context, journal, overview, known);
}

async function clearAway(
  context: Excel.RequestContext,
  journal: Journal,
  overview: Overview,
  known: Known,
): Promise<void> {
  const { worksheets } = context.workbook;
  const aside = journal.sheets.flatMap((sheet) => [sheet.aside, sheet.old]);
  const ids = aside.flatMap((name) => (name === null ? [] : (overview.ids.get(name) ?? [])));
  const strays = await strayCopies(context, journal, overview, known);
  for (const id of [...ids, ...strays]) worksheets.getItem(id).delete();
  journalPart(context.workbook).delete();
  await context.sync();
}

/**
 * Copies of the old sheets that did not get their name aside any more: they came after `known`, and
 * the mark of the sheet came along into their own scope.
 */
async function strayCopies(
  context: Excel.RequestContext,
  { sheets }: Journal,
  overview: Overview,
  known: Known,
): Promise<readonly string[]> {
  if (known === null) return [];
  const stamps = sheets.flatMap(({ old, stamp }) =>
    old === null || stamp === null ? [] : [stamp],
  );
  const unknown = overview.sheets.filter(({ id, stamp }) => !known.has(id) && stamp === null);
  const asked = unknown.flatMap(({ id }) =>
    stamps.map((stamp) => ({
      id,
      name: context.workbook.worksheets.getItem(id).names.getItemOrNullObject(stamp).load("name"),
    })),
  );
  if (asked.length === 0) return [];
  await context.sync();
  return [...new Set(asked.flatMap(({ id, name }) => (name.isNullObject ? [] : [id])))];
}

/** Copies the old contents back and takes new sheets away; then only clearing away is left. */
async function putBack(
  context: Excel.RequestContext,
  journal: Journal,
  overview: Overview,
  known: Known,
): Promise<void> {
  const { workbook } = context;
  const olds = await oldContents(context, journal, overview, known === null);
  const box = outbox(context);
  const taken = [...overview.ids.keys()];
  for (const old of olds) {
    await box.room(40 * settingBytes);
    if (old.isTouched) {
      const name = keptSheetName(old.liveName, taken);
      taken.push(name);
      old.live.copy("After", old.live).name = name;
    }
    const before = old.sheet.tablesBefore;
    const missing = fitTables(old.live, old.liveTables, before);
    copyOver(old.copy, old.live, old.extent);
    makeTables(old.live, missing);
    await putLateFormulas(box, old.live, ownFormulas(old));
    if (old.sheet.stamp !== null && old.sheet.stampBefore !== null) {
      workbook.names.getItem(old.sheet.stamp).formula = old.sheet.stampBefore;
    }
  }
  for (const sheet of journal.sheets) {
    const id = newSheetId(sheet, overview, known);
    if (id !== null) workbook.worksheets.getItem(id).delete();
  }
  journalPart(workbook).setXml(journalXml({ ...journal, phase: "building" }));
  await box.send();
}

/** Formulas that name the copy or its tables, since Excel made them do so, as they were before. */
function ownFormulas({
  sheet,
  liveName,
  copyName,
  copyTables,
  formulas,
}: OldContents): readonly LateFormula[] {
  const sheets = new Map([[copyName.toLowerCase(), liveName]]);
  const tables = new Map(
    copyTables.flatMap(({ name, area }): [string, string][] => {
      const before = sheet.tablesBefore.find((each) => addressOf(each.area) === addressOf(area));
      return before === undefined ? [] : [[name.toLowerCase(), before.name]];
    }),
  );
  return formulas.flatMap((each): LateFormula[] => {
    const formula = withOtherNames(each.formula, sheets, tables);
    return formula === each.formula ? [] : [{ ...each, formula }];
  });
}

/** A new sheet that already has its name: it carries its mark, or came after all that are known. */
function newSheetId(sheet: JournalSheet, overview: Overview, known: Known): string | null {
  if (sheet.was === "replaced") return null;
  const found = overview.sheets.find(({ name }) => name === sheet.name);
  if (found === undefined) return null;
  const isOurs =
    (sheet.stamp !== null && found.stamp?.name === sheet.stamp) ||
    (known !== null && !known.has(found.id));
  return isOurs ? found.id : null;
}
