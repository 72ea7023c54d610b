/** What lies over the cells of the sheets that were written: our pictures and charts, new and old. */
import { isChartName, putChart, settingsInChart } from "./charts";
import { askCorners } from "./corners";
import type { JournalSheet } from "./journal";
import { settingBytes, type Outbox } from "./outbox";
import { isPictureName, showPicture } from "./pictures";

/** A sheet that was written, with what is asked about it. */
export type StandingFloats = {
  readonly sheet: JournalSheet;
  readonly worksheet: Excel.Worksheet;
  /** Whether anything of ours may lie over its cells. Else neither is loaded. */
  readonly isAsked: boolean;
  readonly shapes: Excel.ShapeCollection;
  /** `null` where charts are left out. */
  readonly charts: Excel.ChartCollection | null;
};

/** The charts on each sheet, by the sheet's name, when they were first looked at. */
export type ChartsSeen = Map<string, ReadonlySet<string>>;

export function loadFloating(
  sheet: JournalSheet,
  worksheet: Excel.Worksheet,
  withCharts: boolean,
): StandingFloats {
  const shapes = worksheet.shapes;
  const charts = withCharts ? worksheet.charts : null;
  const isAsked = sheet.was === "replaced" || sheet.pictures.length > 0 || sheet.charts.length > 0;
  if (isAsked) {
    shapes.load("items/name");
    charts?.load("items/id,items/name");
  }
  return { sheet, worksheet, isAsked, shapes, charts };
}

/**
 * Takes away what shows the old counts, shows the new pictures and makes the charts. What a person
 * put there stays.
 */
export async function putFloating(
  box: Outbox,
  standing: readonly StandingFloats[],
  chartsSeen: ChartsSeen,
): Promise<void> {
  const asked = standing
    .filter(({ isAsked }) => isAsked)
    .map((each) => ({
      ...each,
      corners: askCorners(each.worksheet, [...each.sheet.pictures, ...each.sheet.charts]),
    }));
  // Rows have their heights only now.
  if (asked.some(({ sheet }) => sheet.pictures.length + sheet.charts.length > 0)) await box.send();
  for (const { sheet, worksheet, shapes, charts, corners } of asked) {
    const places = corners();
    const added = new Map(sheet.pictures.map((picture, at) => [picture.name, { picture, at }]));
    for (const shape of shapes.items.filter(({ name }) => isPictureName(name))) {
      await box.room(8 * settingBytes);
      const found = added.get(shape.name);
      const corner = found === undefined ? undefined : places[found.at];
      if (found === undefined || corner === undefined) shape.delete();
      else showPicture(shape, found.picture, corner);
    }
    if (charts === null) continue;
    for (const chart of staleCharts(sheet.name, charts, chartsSeen)) {
      await box.room(settingBytes);
      chart.delete();
    }
    for (const [at, plan] of sheet.charts.entries()) {
      const corner = places[sheet.pictures.length + at];
      if (corner === undefined) continue;
      await box.room(settingsInChart(plan) * settingBytes);
      putChart(worksheet, plan, at + 1, corner);
    }
  }
}

/** Ours from before, and one that an earlier try made and Excel then refused its name. */
function staleCharts(
  sheet: string,
  { items }: Excel.ChartCollection,
  chartsSeen: ChartsSeen,
): readonly Excel.Chart[] {
  const before = chartsSeen.get(sheet) ?? new Set(items.map(({ id }) => id));
  chartsSeen.set(sheet, before);
  const nameless = items.filter(({ id, name }) => !before.has(id) && !isChartName(name));
  // Of two, one is a person's, and nothing tells which.
  const orphans = nameless.length === 1 ? nameless : [];
  return [...items.filter(({ name }) => isChartName(name)), ...orphans];
}
