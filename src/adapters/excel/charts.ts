/** Our charts: made anew after the cells that they show, from what the journal tells of them. */
import { cellText } from "../../core/base/cell";
import { chartFill, chartFills, chartName, startsAtZero } from "../../workbook/chartLooks";
import type { DrawnChart } from "../../workbook/drawing";
import { numberFormatCodes } from "../../workbook/looks";
import type { SheetSnapshot } from "../../workbook/snapshot";
import { anchorAt, type Anchor, type Corner } from "./corners";

export type ChartPlan = DrawnChart &
  Anchor & {
    /** The words over each of `valueColumns`. */
    readonly headings: readonly string[];
    readonly startsAtZero: boolean;
  };

export const chartPlans = (drawn: SheetSnapshot): readonly ChartPlan[] =>
  (drawn.charts ?? []).map((chart) => ({
    ...chart,
    ...anchorAt(drawn, chart.row, chart.column),
    headings: chart.valueColumns.map((column) =>
      cellText(drawn.rows[chart.headingRow]?.[column]?.value ?? null),
    ),
    startsAtZero: startsAtZero(chart, drawn.rows),
  }));

/** About how many settings `putChart` sends. */
export const settingsInChart = ({ valueColumns }: ChartPlan): number =>
  20 + 10 * valueColumns.length;

export const isChartName = (name: string): boolean => name.startsWith(chartName);

/** Puts chart `number` of the sheet, from 1, with its corner at that of a cell. */
export function putChart(
  sheet: Excel.Worksheet,
  plan: ChartPlan,
  number: number,
  { left, top }: Corner,
): void {
  const { firstRow, lastRow, nameColumn, valueColumns, headings } = plan;
  const down = (column: number): Excel.Range =>
    sheet.getRangeByIndexes(firstRow, column, lastRow - firstRow + 1, 1);
  const chart = sheet.charts.add("BarClustered", down(valueColumns[0] ?? nameColumn), "Columns");
  chart.name = `${chartName}${number}`;
  for (const [index, column] of valueColumns.entries()) {
    const heading = headings[index] ?? "";
    const series = index === 0 ? chart.series.getItemAt(0) : chart.series.add(heading);
    series.name = heading;
    series.setValues(down(column));
    series.setXAxisValues(down(nameColumn));
    series.format.fill.setSolidColor(`#${chartFill(index)}`);
    series.format.line.color = `#${chartFills[0]}`;
    series.format.line.weight = 0.5;
    series.gapWidth = 60;
    series.invertIfNegative = false;
  }
  chart.title.text = plan.title;
  chart.title.format.font.size = 12;
  chart.legend.position = "Bottom";
  chart.displayBlanksAs = "NotPlotted";
  const { categoryAxis, valueAxis } = chart.axes;
  // The first name stands on top, as it does on the sheet, and the numbers below the bars.
  categoryAxis.reversePlotOrder = true;
  categoryAxis.position = "Maximum";
  categoryAxis.tickLabelPosition = "Low";
  categoryAxis.majorTickMark = "None";
  valueAxis.numberFormat = numberFormatCodes[plan.format];
  if (plan.startsAtZero) valueAxis.minimum = 0;
  chart.left = left;
  chart.top = top;
  chart.width = plan.width;
  chart.height = plan.height;
}
