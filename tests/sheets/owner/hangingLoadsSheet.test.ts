/** The sheet of hanging loads: figures beside what was entered, and a verdict that follows them. */
import { describe, expect, test } from "@jest/globals";
import { cellText, type CellValue } from "../../../src/core/base/cell";
import { jobLoads, loadRules, type JobLoads } from "../../../src/core/pricing/loads/openingLoads";
import type { RateKey } from "../../../src/core/pricing/rates/rateRows";
import { rateReader } from "../../../src/core/pricing/rates/rates";
import type { MeasureStyle } from "../../../src/core/measures/measures";
import { hangingLoadsSheet } from "../../../src/sheets/owner/hangingLoadsSheet";
import { shownValue, type DrawnCell } from "../../../src/workbook/drawing";
import { starterItems } from "../../../src/core/kitbook/starter/items";
import type { ItemRow } from "../../../src/core/pricing/item";
import { recalculated } from "../recalculated";
import { dollars, estimateOf, ratesOf } from "../../core/pricing/pricedJobs";

type Entered = Readonly<Partial<Record<RateKey, CellValue>>>;

function loadsOf(
  entered: Entered,
  items: readonly ItemRow[] = starterItems,
  style: MeasureStyle = "pounds",
): JobLoads {
  const result = estimateOf(
    [
      { mark: "A-1", width: "4'" },
      { mark: "A-2", width: "12'" },
      { mark: "A-3", width: "3'", type: "hinged door" },
    ],
    items,
  );
  const [job] = result.jobs;
  if (job === undefined) throw new Error("no job");
  return jobLoads(
    job.takeOff,
    result.items,
    loadRules(rateReader(ratesOf(entered), "North", dollars), style),
  );
}

function rowsOf(loads: JobLoads) {
  const { rows } = hangingLoadsSheet([loads]);
  return rows.filter(({ cells: [first] }) => {
    const shown = first === undefined || first === null ? null : shownValue(first);
    return typeof shown === "string" && shown.startsWith("A-");
  });
}
const verdictCell = 16;
const verdicts = (loads: JobLoads): readonly (DrawnCell | null | undefined)[] =>
  rowsOf(loads).map(({ cells }) => cells[verdictCell]);

describe("the verdict", () => {
  test("is a formula over the loads and capacities of its row, and what hangs from nothing has none", () => {
    const cells = verdicts(loadsOf({ trolleyCarries: 60, hangerCarries: 1000 }));
    expect(cells).toEqual([
      expect.objectContaining({ kind: "formula", result: "not checked", look: "note" }),
      expect.objectContaining({ kind: "formula", result: "over", look: "stop" }),
    ]);
    const [first] = cells;
    // A narrow door has one section of track: no joint, so no joint decides.
    expect(first?.kind === "formula" && first.formula).not.toContain("M6");
    expect(first?.kind === "formula" && first.formula).toContain("COUNT(F6,G6)=2");
  });

  test("is words where no load can be worked out, and the parts without a weight are named", () => {
    const noWeight = starterItems.map((item) =>
      item.code.value === "PANEL" ? { ...item, weight: { value: null, place: null } } : item,
    );
    const loads = loadsOf({ trolleyCarries: 60 }, noWeight);
    expect(verdicts(loads)).toEqual([
      expect.objectContaining({ kind: "text", text: "not checked" }),
      expect.objectContaining({ kind: "text", text: "not checked" }),
    ]);
    const [row] = rowsOf(loads);
    const last = row?.cells.at(-1);
    expect(last?.kind === "text" && last.text).toBe("No weight is given for PANEL.");
    expect(loads.findings.map(({ code }) => code)).toEqual([
      "leaf-weight-not-known",
      "leaf-weight-not-known",
    ]);
  });
});

test("the caution stands at the head of the sheet and at the foot of each page", () => {
  const { rows, print } = hangingLoadsSheet([loadsOf({})]);
  const caution = rows[1]?.cells[0];
  expect(caution?.kind === "text" && caution.text).toContain("licensed engineer");
  expect(print.footer).toContain("licensed engineer");
});

test("each job but the first begins a page", () => {
  const [north, south] = [loadsOf({}), { ...loadsOf({}), job: "South" }];
  const { rows, print } = hangingLoadsSheet([north, south]);
  const place = rows.findIndex(
    ({ cells: [first] }) => first?.kind === "text" && first.text === "South",
  );
  expect(print.breaksBefore).toEqual([place]);
});

describe("in metric units", () => {
  // 1 lb = 0.45359237 kg, 1 lbf = 4.4482216152605 N and 1 in = 25.4 mm, all exactly: NIST SP 811.
  const factors = { weight: 0.45359237, bending: 4.4482216152605 * 0.0254, length: 25.4 };
  const entered = {
    trolleyCarries: "60 kg",
    hangerCarries: "1.2 kN",
    trackBends: "500 N·m",
    trackInertia: "40 cm^4",
    sinksOver: 360,
  };
  const drawn = (style: MeasureStyle) => {
    const drawing = hangingLoadsSheet([loadsOf(entered, starterItems, style)], style);
    return { drawing, values: drawing.rows.map(({ cells }) => cells.map(valueIn)) };
  };
  const valueIn = (cell: DrawnCell | null) => (cell === null ? null : shownValue(cell));
  const inPounds = drawn("pounds");
  const inMetric = drawn("metric");

  test("headings, figures, capacities and reasons are, and verdicts are the same", () => {
    const heading = inMetric.values[3] ?? [];
    expect(heading.filter((words) => /, (lb|in-lb|in)$/.test(cellText(words)))).toEqual([]);
    const kinds = heading.map((words) => {
      const [unit = ""] = /(kg|N·m|mm)$/.exec(cellText(words)) ?? [];
      return ({ kg: "weight", "N·m": "bending", mm: "length" } as const)[unit] ?? null;
    });
    expect(kinds.filter((kind) => kind !== null)).toHaveLength(12);
    for (const [row, cells] of inPounds.values.entries()) {
      for (const [column, value] of cells.entries()) {
        const metric = inMetric.values[row]?.[column];
        const kind = kinds[column] ?? null;
        if (typeof value !== "number" || kind === null) continue;
        expect(Number(metric) / (value * factors[kind])).toBeCloseTo(1, 9);
      }
      expect(inMetric.values[row]?.[verdictCell]).toEqual(cells[verdictCell]);
    }
    expect(inMetric.values.flat()).toContain(60);
    const words = inMetric.values.flat().map((value) => cellText(value ?? null));
    expect(words.join("\n")).toMatch(/mm x 2133\.6 mm at [\d.]+ kg per m²/);
    expect(words.join("\n")).toMatch(/hanger at [\d.]+ mm/);
    expect(words.join("\n")).not.toMatch(/\b(lb|in-lb|inches)\b/);
  });

  test("the verdicts are formulas that hold, and follow a typed capacity", () => {
    const { formulas, typing } = recalculated(inMetric.drawing);
    expect(formulas).not.toEqual([]);
    for (const { drawn: result, found } of formulas) expect(found).toBe(String(result));
    const at = inMetric.values.findIndex(([mark]) => mark === "A-1");
    expect(typing(at, 6, 1)(at, verdictCell)).toBe("over");
  });

  test("findings say what is over in them", () => {
    const [finding] = loadsOf({ trolleyCarries: "10 kg" }, starterItems, "metric").findings;
    expect(finding?.found).toMatch(/^[\d.]+ kg$/);
    expect(finding?.message).toContain("the capacity entered is 10 kg.");
  });
});
