/** Charts of the fake host: what they are made of, and the properties that are set on them. */
import { sheetReference } from "../../src/core/base/cell";
import { areaAddress } from "./areas";
import { nextId, type FakeChart, type FakeSeries, type FakeSheet } from "./book";
import {
  badArgument,
  denied,
  hostObject,
  notThere,
  plainProperties,
  refuse,
  textOf,
  wholeOf,
  type HostMembers,
  type HostObject,
} from "./hostObject";
import { placeOf } from "./rangeObject";
import type { World } from "./world";

export function chartsObject(world: World, sheet: FakeSheet): HostObject {
  const { book } = world;
  const open = (): void => {
    if (sheet.isProtected) denied();
  };
  const found = (key: unknown): HostObject => {
    const known = sheet.charts.find(({ id, name }) => id === key || name === key);
    return known === undefined ? notThere() : chartObject(known, sheet, open);
  };
  return hostObject({
    kind: "charts",
    items: () => sheet.charts.map((chart) => chartObject(chart, sheet, open)),
    get: { count: () => sheet.charts.length },
    call: {
      getItem: found,
      getCount: () => sheet.charts.length,
      add: (type, source, by) => {
        open();
        if (!book.makesCharts) refuse("NotImplemented", "No charts here.");
        if (textOf(by) !== "Columns") badArgument("Not in the fake.");
        const chart: FakeChart = {
          id: nextId(book, "C"),
          name: `Chart ${sheet.charts.length + 1}`,
          looks: { chartType: textOf(type) },
          series: [{ looks: {}, values: addressOf(source), names: "" }],
        };
        sheet.charts.push(chart);
        return chartObject(chart, sheet, open);
      },
    },
  });
}

const addressOf = (range: unknown): string => {
  const { sheet, area } = placeOf(range);
  return `=${sheetReference(sheet.name)}!${areaAddress(area)}`;
};

function chartObject(chart: FakeChart, sheet: FakeSheet, open: () => void): HostObject {
  const part = (path: string, names: readonly string[]): Pick<HostMembers, "get" | "set"> => {
    const { get, set } = plainProperties(
      chart.looks,
      names.map((name) => path + name),
      open,
    );
    const short = <Value>(members: Readonly<Record<string, Value>> = {}): Record<string, Value> =>
      Object.fromEntries(
        Object.entries(members).map(([name, value]) => [name.slice(path.length), value]),
      );
    return { get: short(get), set: short(set) };
  };
  const own = part("", ["left", "top", "width", "height", "displayBlanksAs"]);
  const axis = (path: string): HostObject =>
    hostObject({
      kind: "chartAxis",
      ...part(`${path}.`, [
        "reversePlotOrder",
        "position",
        "tickLabelPosition",
        "majorTickMark",
        "numberFormat",
        "minimum",
      ]),
    });
  return hostObject({
    kind: "chart",
    id: chart.id,
    get: { ...own.get, id: () => chart.id, name: () => chart.name },
    set: {
      ...own.set,
      name: (value) => {
        open();
        chart.name = textOf(value);
      },
    },
    link: {
      title: () =>
        hostObject({
          kind: "chartTitle",
          ...part("title.", ["text"]),
          link: {
            format: () =>
              hostObject({
                kind: "chartTitleFormat",
                link: {
                  font: () => hostObject({ kind: "font", ...part("title.font.", ["size"]) }),
                },
              }),
          },
        }),
      legend: () => hostObject({ kind: "chartLegend", ...part("legend.", ["position"]) }),
      axes: () =>
        hostObject({
          kind: "chartAxes",
          link: { categoryAxis: () => axis("categoryAxis"), valueAxis: () => axis("valueAxis") },
        }),
      series: () => seriesList(chart, open),
    },
    call: {
      delete: () => {
        open();
        if (!sheet.charts.includes(chart)) notThere();
        sheet.charts = sheet.charts.filter((each) => each !== chart);
      },
    },
  });
}

const seriesList = (chart: FakeChart, open: () => void): HostObject =>
  hostObject({
    kind: "seriesCollection",
    items: () => chart.series.map((each) => seriesObject(each, open)),
    call: {
      getItemAt: (index) => {
        const known = chart.series[wholeOf(index)];
        return known === undefined ? notThere() : seriesObject(known, open);
      },
      add: (name) => {
        open();
        const added: FakeSeries = { looks: { name: textOf(name) }, values: "", names: "" };
        chart.series.push(added);
        return seriesObject(added, open);
      },
    },
  });

function seriesObject(series: FakeSeries, open: () => void): HostObject {
  return hostObject({
    kind: "series",
    ...plainProperties(series.looks, ["name", "gapWidth", "invertIfNegative"], open),
    link: {
      format: () =>
        hostObject({
          kind: "seriesFormat",
          link: {
            fill: () =>
              hostObject({
                kind: "chartFill",
                call: {
                  setSolidColor: (colour) => {
                    open();
                    series.looks["fill"] = textOf(colour);
                  },
                },
              }),
            line: () =>
              hostObject({
                kind: "chartLine",
                ...plainProperties(series.looks, ["color", "weight"], open),
              }),
          },
        }),
    },
    call: {
      setValues: (range) => {
        open();
        series.values = addressOf(range);
      },
      setXAxisValues: (range) => {
        open();
        series.names = addressOf(range);
      },
    },
  });
}
