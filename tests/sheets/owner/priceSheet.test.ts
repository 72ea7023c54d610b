import { describe, expect, test } from "@jest/globals";
import { cellText } from "../../../src/core/base/cell";
import type { MeasureStyle } from "../../../src/core/measures/measures";
import { priceSheet } from "../../../src/sheets/owner/priceSheet";
import { shownValue, type Drawing } from "../../../src/workbook/drawing";
import { estimateOf, pricesOf, ratesOf, type OpeningWords } from "../../core/pricing/pricedJobs";
import { disagreeing, recalculated } from "../recalculated";

const openings: readonly OpeningWords[] = [
  { mark: "D1", quantity: 2 },
  { mark: "D2", type: "hinged door", width: "3'" },
];

function sheetOf(
  rates: Parameters<typeof ratesOf>[0],
  marks = openings,
  style: MeasureStyle = "pounds",
) {
  const [price] = pricesOf(estimateOf(marks), ratesOf(rates), style);
  if (price === undefined) throw new Error("No job was priced");
  return { price, drawing: priceSheet(price, "$", style) };
}

const texts = ({ rows }: Drawing): string =>
  rows
    .flatMap(({ cells }) => cells.map((cell) => cellText(cell === null ? null : shownValue(cell))))
    .join("\n");
const rowOf = ({ rows }: Drawing, label: string): number =>
  rows.findIndex(({ cells: [first] }) => first?.kind === "text" && first.text === label);

describe("the formulas of a price sheet come to our cents in another engine", () => {
  test.each([
    ["by margin", { method: "margin", methodValue: "24 %" }],
    [
      "by markup, to the nearest unit",
      { method: "markup", methodValue: "31 %", roundWay: "nearest" },
    ],
    ["typed", { method: "typed", methodValue: 7654.32, roundTo: 0 }],
    ["with a bond on the price", { bond: "1.5 %", method: "margin", methodValue: "20 %" }],
    [
      "with tax that we pay and tax that we charge",
      { taxPaid: "8.25 %", taxCharged: "6 %", taxable: "40 %" },
    ],
    [
      "with everything that a firm may add",
      { equipment: 350, subcontract: 1200.5, allowance: 99.99, contingency: "7 %" },
    ],
    ["with spares from stock", { sparesPaidBy: "stock" }],
    ["with neither overhead nor contingency", { overhead: null, contingency: null }],
  ])("%s", (_what, rates) => {
    const sheet = recalculated(sheetOf(rates).drawing);
    expect(sheet.formulas.length).toBeGreaterThan(10);
    expect(disagreeing(sheet)).toEqual([]);
  });
});

describe("a number tried on the sheet", () => {
  test("goes through to the price as it would from the rates", () => {
    const dear = sheetOf({ leadRate: 60, roundTo: 0 });
    const { drawing, price } = sheetOf({ leadRate: 41.5, roundTo: 0 });
    const wage = rowOf(drawing, "Labour: lead installer");
    const shown = recalculated(drawing).typing(wage, 3, 60);
    const priceRow = rowOf(drawing, "Price");
    expect(price.rollUp.price).not.toBe(dear.price.rollUp.price);
    expect(Number(shown(priceRow, 4))).toBeCloseTo(dear.price.rollUp.price / 100, 6);
  });
});

describe("what a price sheet says", () => {
  const { drawing } = sheetOf({});

  test("stands under a caution, and is not for the customer", () => {
    expect(texts(drawing)).toContain("A hanging door can fall");
    expect(texts(drawing)).toContain("not for the customer");
    expect(drawing.mark).toEqual({ kind: "price", subject: "North" });
  });

  test("names markup and margin with their formulas", () => {
    expect(texts(drawing)).toMatch(/Markup\n[^]*markup = profit \/ cost/);
    expect(texts(drawing)).toMatch(/Margin\n[^]*margin = profit \/ price/);
  });

  test("says in red what is not in the price", () => {
    const partly = sheetOf({}, [...openings, { mark: "D3", width: "wide" }]).drawing;
    const row = partly.rows.findIndex(({ cells: [first] }) => first?.look === "stop");
    expect(partly.rows[row]?.cells[0]).toMatchObject({
      text: expect.stringMatching(/^NOT COMPLETE: .*opening D3/),
    });
    expect(texts(drawing)).not.toContain("NOT COMPLETE");
  });

  test("has the hours of each bag, of each opening and of the job, which add up", () => {
    const hours = rowOf(drawing, "Hours");
    const value = (row: number): number => {
      const cell = drawing.rows[row]?.cells[1] ?? null;
      return cell === null ? 0 : Number(shownValue(cell));
    };
    const rows = drawing.rows.slice(hours + 1, rowOf(drawing, "Shipment")).map((_, at) => at);
    expect(hours).toBeGreaterThan(rowOf(drawing, "Margin"));
    expect(rowOf(drawing, "  Latch side")).toBeGreaterThan(hours);
    const sum = rows.reduce((all, at) => all + value(hours + 1 + at), 0);
    expect(sum).toBeCloseTo(value(hours), 2);
  });

  test("does not repeat beside a rate that can be typed over what it was", () => {
    const { drawing: full } = sheetOf({
      bond: "1.5 %",
      taxPaid: "8.25 %",
      taxCharged: "6 %",
      taxable: "40 %",
      method: "markup",
      methodValue: "31 %",
    });
    const first = rowOf(full, "Line") + 1;
    const last = rowOf(full, "Price with tax");
    const how = full.rows.slice(first, last).map(({ cells }) => cells[5] ?? null);
    const said = how.map((cell) => (cell === null ? "" : cellText(shownValue(cell)))).join("\n");
    expect(said).toContain("of material, labour");
    expect(said).not.toMatch(/%|\b10\b/);
  });
});

test("in metric units the money is the same, and weights are in kilograms, those of rates in pounds too", () => {
  const rates = { freight0: 46, freightLeast: null, palletCarries: 100_000, palletWeight: 50 };
  const [inPounds, inMetric] = (["pounds", "metric"] as const).map((style) =>
    sheetOf(rates, openings, style),
  );
  if (inPounds === undefined || inMetric === undefined) throw new Error("No sheets");
  expect(inMetric.price.rollUp.lines.map(({ amount }) => amount)).toEqual(
    inPounds.price.rollUp.lines.map(({ amount }) => amount),
  );
  const shipment = (drawing: Drawing) => drawing.rows[rowOf(drawing, "Shipment")]?.cells ?? [];
  const [, weight, unit] = shipment(inMetric.drawing);
  expect(weight?.kind === "number" && weight.number).toBeCloseTo(
    inPounds.price.shipment.weight * 0.45359237,
    9,
  );
  expect(unit?.kind === "text" && unit.text).toBe("kg");
  expect(texts(inMetric.drawing)).toMatch(/\d lb \([\d,.]+ kg\) .*per hundredweight/);
  expect(disagreeing(recalculated(inMetric.drawing))).toEqual([]);
});
