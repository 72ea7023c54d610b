/** Weights on the sheets of a firm that works in millimetres: in kilograms, with formulas that hold. */
import { expect, test } from "@jest/globals";
import { cellText } from "../../src/core/base/cell";
import { hardwareSheet } from "../../src/sheets/hardware/hardwareSheet";
import { loadingSheet } from "../../src/sheets/crew/loadingSheet";
import type { Drawing } from "../../src/workbook/drawing";
import { estimateRows, scheduleRow } from "../core/takeoff/notation";
import { valuesOf } from "./packedJobs";
import { recalculated } from "./recalculated";

// 1 lb = 0.45359237 kg exactly: international yard and pound agreement of 1959; NIST SP 811.
const kilograms = (pounds: number): number => pounds * 0.45359237;

const { jobs, items } = estimateRows([
  scheduleRow("8' x 7' on 8'", { mark: "A-1", quantity: 20, tailRun: "5'" }),
  scheduleRow("6' x 9' on 8'", { mark: "A-2" }),
]);
const weight = jobs.reduce((sum, { material }) => sum + material.weight, 0);
const lengths = { kind: "mm" } as const;

const hardware = (): Drawing =>
  hardwareSheet({ jobs, lengths, withCosts: true, currencySign: "$", items: null, basis: "" });

/** What the column of that heading shows in the row whose cell in column `at` starts with `words`. */
function figureIn(drawing: Drawing, heading: string, at: number, words: string): number {
  const rows = valuesOf(drawing);
  const column = rows.flatMap((row) =>
    row.flatMap((cell, index) => (cell === heading ? index : [])),
  );
  expect(column).toHaveLength(1);
  const row = rows.find((cells) => cellText(cells[at] ?? null).includes(words));
  return Number(row?.[column[0] ?? 0]);
}

function expectToHold(drawing: Drawing): void {
  const { formulas } = recalculated(drawing);
  expect(formulas.length).toBeGreaterThan(0);
  for (const { drawn, found } of formulas) {
    if (typeof drawn === "number") expect(Number(found)).toBeCloseTo(drawn, 6);
  }
}

test("the hardware sheet weighs in kilograms, and its formulas hold", () => {
  const drawing = hardware();
  const total = figureIn(drawing, "Weight (kg)", 1, ": material");
  expect(total).toBeCloseTo(kilograms(weight), 2);
  expect(valuesOf(drawing).flat()).toContain("Weight (kg per unit)");
  expectToHold(drawing);
});

test("the loading list weighs in kilograms, and its formulas hold", () => {
  const drawing = loadingSheet({ jobs, items, lengths });
  for (const words of [": all that is loaded", "To order by the hardware"]) {
    expect(figureIn(drawing, "Weight (kg)", 1, words)).toBeCloseTo(kilograms(weight), 6);
  }
  expectToHold(drawing);
});
