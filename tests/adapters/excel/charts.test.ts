/** Charts in Excel: made over the cells that they show, replaced with their sheet, a person's left alone. */
import { describe, expect, test } from "@jest/globals";
import { excelRig } from "./excelRig";
import { margins, marginsMark, sheetNamed, writtenIn } from "./floatingDrawings";

const schedule = { sheets: [{ name: "Schedule" }] };

const theirs = (id: string, name: string) => ({
  id,
  name,
  looks: { chartType: "Pie" },
  series: [{ looks: {}, values: "=Margins!$B$2:$B$3", names: "" }],
});

describe.each(["1.9", "1.15"])("with ExcelApi %s", (version) => {
  test("a chart shows the names and numbers of its sheet, the first on top", async () => {
    const rig = await excelRig(schedule, version);
    const [sheet] = await writtenIn(rig, margins({ North: 0.25, South: 0.125 }));
    expect(sheet).toEqual({ name: "Margins", mark: marginsMark, was: "new", keptAs: null });
    const { charts } = sheetNamed(rig, "Margins");
    expect(charts).toHaveLength(1);
    expect(charts[0]?.name).toBe("Cribsheet chart 1");
    expect(charts[0]?.looks).toMatchObject({
      chartType: "BarClustered",
      "title.text": "Margin and target",
      "legend.position": "Bottom",
      "categoryAxis.reversePlotOrder": true,
      "categoryAxis.position": "Maximum",
      "valueAxis.numberFormat": "0.0%",
      "valueAxis.minimum": 0,
      // The first column is twenty characters wide; six rows are above.
      left: 108.75,
      top: 90,
      width: 400,
      height: 200,
    });
    expect(
      charts[0]?.series.map(({ looks, values, names }) => [looks["name"], values, names]),
    ).toEqual([
      ["Margin", "=Margins!B2:B3", "=Margins!A2:A3"],
      ["Target", "=Margins!C2:C3", "=Margins!A2:A3"],
    ]);
    const fills = charts[0]?.series.map(({ looks }) => looks["fill"]);
    expect(new Set(fills).size).toBe(2);
  });

  test("a loss leaves the ends of the axis to Excel", async () => {
    const rig = await excelRig(schedule, version);
    await writtenIn(rig, margins({ North: -0.05 }));
    expect(sheetNamed(rig, "Margins").charts[0]?.looks["valueAxis.minimum"]).toBeUndefined();
  });

  test("writing again makes it anew for the rows there are now; a person's charts stay", async () => {
    const rig = await excelRig(schedule, version);
    await writtenIn(rig, margins({ North: 0.25 }));
    await rig.rename("Margins", "What we keep");
    sheetNamed(rig, "What we keep").charts.push(theirs("{X1}", "Chart 7"));
    sheetNamed(rig, "Schedule").charts.push(theirs("{X2}", "Cribsheet chart 1"));
    await writtenIn(rig, margins({ North: 0.25, South: 0.125, West: 0.3 }));
    const { charts } = sheetNamed(rig, "What we keep");
    expect(charts.map(({ name }) => name)).toEqual(["Chart 7", "Cribsheet chart 1"]);
    expect(charts[1]?.series.map(({ values }) => values)).toEqual([
      "='What we keep'!B2:B4",
      "='What we keep'!C2:C4",
    ]);
    expect(sheetNamed(rig, "Schedule").charts.map(({ id }) => id)).toEqual(["{X2}"]);
  });

  test("a sheet that is kept keeps its chart, over its own cells", async () => {
    const rig = await excelRig(schedule, version);
    await writtenIn(rig, margins({ North: 0.25 }));
    await rig.type("Margins", "D2", "ask the owner");
    const [sheet] = await writtenIn(rig, margins({ North: 0.3 }));
    const kept = sheetNamed(rig, sheet?.keptAs ?? "");
    expect(kept.charts.map(({ series }) => series[0]?.values)).toEqual(["='Margins (kept)'!B2"]);
    expect(sheetNamed(rig, "Margins").charts).toHaveLength(1);
  });

  test("an Excel that makes none has the sheet all the same, and the outcome says so", async () => {
    const rig = await excelRig(schedule, version);
    rig.book.makesCharts = false;
    const [sheet] = await writtenIn(rig, margins({ North: 0.25 }));
    expect(sheet).toMatchObject({ was: "new", charts: "none" });
    expect(sheetNamed(rig, "Margins").charts).toEqual([]);
    expect(rig.book.parts).toEqual([]);
  });
});
