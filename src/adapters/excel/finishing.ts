/**
 * After the swap: the old sheets are kept where a person typed into them, else deleted, and the new
 * ones get their widths and page set-up. Can be done again from the journal at any time.
 */
import { keptSheetName } from "../../workbook/sheetNames";
import { pictureName } from "../../workbook/pictureWords";
import { isStampName } from "../../workbook/sheetStamp";
import { areaOf, loadArea, loadBands } from "./bands";
import { clearLayout, putLayout, putPrint, settingsIn } from "./dress";
import { hasExcelApi } from "./inExcel";
import { copyMark, journalPart, type Journal, type JournalSheet } from "./journal";
import { outbox, settingBytes } from "./outbox";
import { readOverview, type Overview, type StandingSheet } from "./overview";
import { isSheetAsWritten, loadTyped } from "./typed";

/** Where old sheets were kept, by the name of the sheet that replaced them. */
export type Kept = ReadonlyMap<string, string>;

/** `withPrint`: set up pages too, which some hosts refuse. */
export async function finish(
  context: Excel.RequestContext,
  journal: Journal,
  withPrint: boolean,
): Promise<Kept> {
  const { worksheets } = context.workbook;
  const overview = await readOverview(context);
  const { touched, stalePictures } = await lookAtOld(context, journal, overview);
  const kept = new Map<string, string>();
  const taken = [...overview.ids.keys()];
  for (const { name } of touched) {
    const free = keptSheetName(name, taken);
    taken.push(free);
    kept.set(name, free);
  }

  const box = outbox(context);
  for (const sheet of journal.sheets) {
    const standing = currentSheet(sheet, overview);
    if (standing === null) continue;
    await box.room((settingsIn(sheet.dress) + 10) * settingBytes);
    const worksheet = worksheets.getItem(standing.id);
    if (sheet.was === "replaced") {
      clearLayout(worksheet, sheet.dress);
      putLayout(worksheet, sheet.dress);
    }
    if (withPrint) putPrint(worksheet, sheet.dress.print);
  }
  // What a file brought along shows the old counts: here words stand in the place of pictures.
  for (const picture of stalePictures) {
    await box.room(settingBytes);
    picture.delete();
  }
  const inOrder = [...touched].sort((one, other) => one.position - other.position);
  for (const [before, { name, old, position, scopedNames }] of inOrder.entries()) {
    const worksheet = worksheets.getItem(old);
    worksheet.position = position + 1 + before;
    for (const stamp of scopedNames) worksheet.names.getItem(stamp).delete();
    worksheet.visibility = "Visible";
    worksheet.name = kept.get(name) ?? name;
  }
  const olds = new Set(touched.map(({ old }) => old));
  for (const { was, aside, old } of journal.sheets) {
    for (const name of [was === "replaced" ? aside : null, old]) {
      const id = name === null || olds.has(name) ? undefined : overview.ids.get(name);
      if (id !== undefined) worksheets.getItem(id).delete();
    }
  }
  for (const name of overview.brokenStamps) context.workbook.names.getItem(name).delete();
  journalPart(context.workbook).delete();
  await box.send();
  return kept;
}

/** The sheet by its mark, or else by its name. */
export const currentSheet = (sheet: JournalSheet, overview: Overview): StandingSheet | null =>
  overview.sheets.find(({ stamp }) => stamp !== null && stamp.name === sheet.stamp) ??
  overview.sheets.find(({ name }) => name === sheet.name) ??
  null;

type Touched = {
  readonly name: string;
  readonly old: string;
  readonly position: number;
  /** Names that came along when the sheet was copied. */
  readonly scopedNames: readonly string[];
};

type OldSheets = {
  /** Those that are not what we wrote: a person typed or commented there. */
  readonly touched: readonly Touched[];
  /** Pictures of ours on the sheets that were replaced. */
  readonly stalePictures: readonly Excel.Shape[];
};

async function lookAtOld(
  context: Excel.RequestContext,
  journal: Journal,
  overview: Overview,
): Promise<OldSheets> {
  const { worksheets } = context.workbook;
  const asked = journal.sheets.flatMap((sheet) => {
    const id = sheet.old === null ? undefined : overview.ids.get(sheet.old);
    const live = currentSheet(sheet, overview);
    if (sheet.old === null || id === undefined || live === null) return [];
    const worksheet = worksheets.getItem(id);
    return [
      {
        sheet,
        old: sheet.old,
        worksheet,
        used: loadArea(worksheet.getUsedRange(true)),
        live: worksheets.getItem(live.id).load("position"),
        shapes: worksheets.getItem(live.id).shapes.load("items/name"),
        names: worksheet.names.load("items/name"),
        comments: hasExcelApi("1.10") ? worksheet.comments.getCount() : null,
        notes: hasExcelApi("1.18") ? worksheet.notes.load("items/content") : null,
      },
    ];
  });
  if (asked.length === 0) return { touched: [], stalePictures: [] };
  await context.sync();
  const bands = await loadBands(
    context,
    asked.map(({ used, worksheet }) => ({ ...areaOf(used), sheet: worksheet })),
    loadTyped,
  );
  const stalePictures = asked.flatMap(({ shapes }) =>
    shapes.items.filter(({ name }) => name.startsWith(pictureName)),
  );
  const touched = asked.flatMap(
    ({ sheet, old, live, names, comments, notes }, index): Touched[] => {
      const { writtenBefore, carried } = sheet;
      const isAsWritten = isSheetAsWritten(bands[index] ?? [], writtenBefore, carried);
      const others =
        hasExcelApi("1.18") && notes !== null
          ? notes.items.filter(({ content }) => !sheet.notes.includes(content))
          : [];
      const said = (comments?.value ?? 0) + others.length;
      if (isAsWritten && said === 0) return [];
      const scopedNames = names.items
        .map(({ name }) => name)
        .filter((name) => isStampName(name) || name === copyMark);
      return [{ name: sheet.name, old, position: live.position, scopedNames }];
    },
  );
  return { touched, stalePictures };
}
