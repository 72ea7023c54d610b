/**
 * After the swap: the old sheets are kept where a person typed into them, else deleted, and the new
 * ones get their widths, page set-up, pictures and charts. Can be done again from the journal at any
 * time.
 */
import { keptSheetName } from "../../workbook/sheetNames";
import { isStampName } from "../../workbook/sheetStamp";
import { areaOf, loadArea, loadBands } from "./bands";
import { clearLayout, putLayout, putPrint, settingsIn } from "./dress";
import { loadFloating, putFloating, type ChartsSeen, type StandingFloats } from "./floating";
import { hasExcelApi } from "./inExcel";
import { copyMark, deleteSheet, journalPart, type Journal, type JournalSheet } from "./journal";
import { outbox, settingBytes } from "./outbox";
import { readOverview, type Overview, type StandingSheet } from "./overview";
import { isSheetAsWritten, loadTyped } from "./typed";

/** Where old sheets were kept, by the name of the sheet that replaced them. */
export type Kept = ReadonlyMap<string, string>;

/** What some hosts refuse, and sheets can do without. */
export type Extras = { readonly print: boolean; readonly charts: boolean };

/** `chartsSeen` are the charts that an earlier try found; it is filled with those of the first one. */
export async function finish(
  context: Excel.RequestContext,
  journal: Journal,
  extras: Extras,
  chartsSeen: ChartsSeen,
): Promise<Kept> {
  const { worksheets } = context.workbook;
  const overview = await readOverview(context);
  const { touched, standing } = await lookAtSheets(context, journal, overview, extras.charts);
  const kept = new Map<string, string>();
  const taken = [...overview.ids.keys()];
  for (const { name } of touched) {
    const free = keptSheetName(name, taken);
    taken.push(free);
    kept.set(name, free);
  }

  const box = outbox(context);
  for (const { sheet, worksheet } of standing) {
    await box.room((settingsIn(sheet.dress) + 10) * settingBytes);
    if (sheet.was === "replaced") {
      clearLayout(worksheet, sheet.dress);
      putLayout(worksheet, sheet.dress);
    }
    if (extras.print) putPrint(worksheet, sheet.dress.print);
  }
  await putFloating(box, standing, chartsSeen);
  const inOrder = [...touched].sort((one, other) => one.position - other.position);
  for (const [before, each] of inOrder.entries()) {
    const { name, old, position, scopedNames, unseen } = each;
    const worksheet = worksheets.getItem(old);
    worksheet.position = position + 1 + before;
    for (const stamp of scopedNames) worksheet.names.getItem(stamp).delete();
    for (const picture of unseen) picture.delete();
    worksheet.visibility = "Visible";
    worksheet.name = kept.get(name) ?? name;
  }
  const olds = new Set(touched.map(({ old }) => old));
  for (const { was, aside, old } of journal.sheets) {
    for (const name of [was === "replaced" ? aside : null, old]) {
      const id = name === null || olds.has(name) ? undefined : overview.ids.get(name);
      if (id !== undefined) deleteSheet(worksheets.getItem(id));
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
  /** New pictures that came along with them. */
  readonly unseen: readonly Excel.Shape[];
};

type Sheets = {
  /** Old sheets that are not what we wrote: a person typed or commented there. */
  readonly touched: readonly Touched[];
  /** The sheets that were written, as they stand now. */
  readonly standing: readonly StandingFloats[];
};

async function lookAtSheets(
  context: Excel.RequestContext,
  journal: Journal,
  overview: Overview,
  withCharts: boolean,
): Promise<Sheets> {
  const { worksheets } = context.workbook;
  const standing = journal.sheets.flatMap((sheet): StandingFloats[] => {
    const live = currentSheet(sheet, overview);
    return live === null ? [] : [loadFloating(sheet, worksheets.getItem(live.id), withCharts)];
  });
  const asked = standing.flatMap(({ sheet, worksheet: live }) => {
    const id = sheet.old === null ? undefined : overview.ids.get(sheet.old);
    if (sheet.old === null || id === undefined) return [];
    const worksheet = worksheets.getItem(id);
    return [
      {
        sheet,
        old: sheet.old,
        worksheet,
        used: loadArea(worksheet.getUsedRange(true)),
        live: live.load("position"),
        shapes: sheet.pictures.length === 0 ? null : worksheet.shapes.load("items/name"),
        names: worksheet.names.load("items/name"),
        comments: hasExcelApi("1.10") ? worksheet.comments.getCount() : null,
        notes: hasExcelApi("1.18") ? worksheet.notes.load("items/content") : null,
      },
    ];
  });
  if (asked.length > 0 || standing.some(({ isAsked }) => isAsked)) await context.sync();
  const bands = await loadBands(
    context,
    asked.map(({ used, worksheet }) => ({ ...areaOf(used), sheet: worksheet })),
    loadTyped,
  );
  const touched = asked.flatMap(
    ({ sheet, old, live, shapes, names, comments, notes }, index): Touched[] => {
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
      const added = new Set(sheet.pictures.map(({ name }) => name));
      const unseen = (shapes?.items ?? []).filter(({ name }) => added.has(name));
      return [{ name: sheet.name, old, position: live.position, scopedNames, unseen }];
    },
  );
  return { touched, standing };
}
