/** Undoes a writing that did not come to its end, from what the journal tells. */
import { keptSheetName } from "../../workbook/sheetNames";
import { isStampName } from "../../workbook/sheetStamp";
import { withOtherNames } from "../../workbook/formulaNames";
import { currentSheet } from "./finishing";
import {
  copyMark,
  deleteSheet,
  journalPart,
  journalXml,
  type Journal,
  type JournalSheet,
} from "./journal";
import { outbox, settingBytes } from "./outbox";
import { readOverview, type Overview } from "./overview";
import { putLateFormulas, type LateFormula } from "./drawSheet";
import { oldContents, type OldContents } from "./oldContents";
import { addressOf } from "./runs";
import { copyOver } from "./swapping";
import { fitTables, makeTables } from "./tables";

/**
 * Takes away what was prepared; if contents were being exchanged, puts the old ones back first.
 * `isLongAgo`: a person may have typed since it broke off.
 */
export async function undo(
  context: Excel.RequestContext,
  journal: Journal,
  isLongAgo: boolean,
): Promise<void> {
  if (journal.phase === "swapping") {
    await putBack(context, journal, await readOverview(context), isLongAgo);
  }
  await clearAway(context, journal, await readOverview(context));
}

/**
 * Deletes the sheets aside, the pictures that nobody has seen, and what copying sheets left: marks,
 * and a copy that got no other name.
 */
async function clearAway(
  { workbook }: Excel.RequestContext,
  journal: Journal,
  overview: Overview,
): Promise<void> {
  const { worksheets } = workbook;
  const scoped = overview.sheets.map((sheet) => ({
    sheet,
    names: worksheets.getItem(sheet.id).names.load("items/name,items/formula"),
  }));
  const pictured = journal.sheets.flatMap((sheet) => {
    const standing = sheet.was === "replaced" ? currentSheet(sheet, overview) : null;
    // On a protected sheet they stay, unseen, until the next writing.
    if (standing === null || standing.isProtected || sheet.pictures.length === 0) return [];
    const shapes = worksheets.getItem(standing.id).shapes.load("items/name");
    return [{ shapes, names: new Set(sheet.pictures.map(({ name }) => name)) }];
  });
  await workbook.context.sync();
  for (const { shapes, names } of pictured) {
    for (const shape of shapes.items) if (names.has(shape.name)) shape.delete();
  }
  for (const { sheet, names } of scoped) {
    const isMarked = names.items.some(
      ({ name, formula }) => name === copyMark && formula === `="${journal.writer}"`,
    );
    if (isMarked && sheet.stamp === null) {
      deleteSheet(worksheets.getItem(sheet.id));
      continue;
    }
    for (const item of names.items) {
      if (item.name === copyMark || isStampName(item.name)) item.delete();
    }
  }
  for (const { aside, old } of journal.sheets) {
    for (const name of [aside, old]) {
      const id = name === null ? undefined : overview.ids.get(name);
      if (id !== undefined) deleteSheet(worksheets.getItem(id));
    }
  }
  journalPart(workbook).delete();
  await workbook.context.sync();
}

/** Copies the old contents back and takes new sheets away; then only clearing away is left. */
async function putBack(
  context: Excel.RequestContext,
  journal: Journal,
  overview: Overview,
  isLongAgo: boolean,
): Promise<void> {
  const { workbook } = context;
  const olds = await oldContents(context, journal, overview, isLongAgo);
  const box = outbox(context);
  const taken = [...overview.ids.keys()];
  for (const old of olds) {
    await box.room(40 * settingBytes);
    const keptName = keptSheetName(old.liveName, taken);
    if (old.isProtected) {
      if (old.isAsBefore) continue;
      // It was exchanged and then protected: what it held before stays beside it.
      taken.push(keptName);
      old.copy.visibility = "Visible";
      old.copy.name = keptName;
      continue;
    }
    if (old.isTouched) {
      taken.push(keptName);
      old.live.copy("After", old.live).name = keptName;
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
    const id = newSheetId(sheet, overview);
    if (id !== null) deleteSheet(workbook.worksheets.getItem(id));
    const isStampNew = sheet.stampBefore === null && sheet.stamp !== null;
    if (isStampNew && overview.names.includes(sheet.stamp)) {
      workbook.names.getItem(sheet.stamp).delete();
    }
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

/** A new sheet that has its name already: known by its mark, or by its id. */
function newSheetId(sheet: JournalSheet, overview: Overview): string | null {
  if (sheet.was === "replaced") return null;
  const found = overview.sheets.find(({ name }) => name === sheet.name);
  const isMarked = sheet.stamp !== null && found?.stamp?.name === sheet.stamp;
  return found !== undefined && (isMarked || found.id === sheet.asideId) ? found.id : null;
}
