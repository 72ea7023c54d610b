import { describe, expect, test } from "@jest/globals";
import { cellText } from "../../../src/core/base/cell";
import { marginTable } from "../../../src/core/pricing/marginTable";
import { marginsSheet } from "../../../src/sheets/owner/marginsSheet";
import { shownValue } from "../../../src/workbook/drawing";
import { estimateOf, pricesOf, ratesOf } from "../../core/pricing/pricedJobs";
import { disagreeing, recalculated } from "../recalculated";

const prices = pricesOf(
  estimateOf([
    { job: "North", mark: "D1" },
    { job: "=South", mark: "D1", quantity: 3 },
    { job: "West", mark: "D1", width: "wide" },
    { job: "East", mark: "D1", type: "hinged door", width: "3'" },
    { job: "East", mark: "D2", width: "wide" },
  ]),
  ratesOf({ method: "markup", methodValue: "20 %" }, { method: "typed", methodValue: 100 }),
);
const table = marginTable(prices);
const drawing = marginsSheet(table, "$");
const column = (index: number) =>
  drawing.rows.slice(3, 3 + table.rows.length).map(({ cells }) => {
    const cell = cells[index] ?? null;
    return cell === null ? null : shownValue(cell);
  });

describe("the margins sheet", () => {
  test("has each job once, what is most at risk first", () => {
    expect(column(0)).toEqual(table.rows.map(({ job }) => job));
    expect(column(0)[0]).toBe("North");
    expect(new Set(column(0)).size).toBe(4);
  });

  test("comes to the same in another engine, jobs without a price among them", () => {
    const sheet = recalculated(drawing);
    expect(sheet.formulas.length).toBe(table.rows.length * 4 + 6);
    expect(disagreeing(sheet)).toEqual([]);
  });

  test("follows a price that is tried on it, down to the total", () => {
    const before = table.total.price / 100;
    const shown = recalculated(drawing).typing(3, 2, (table.rows[0]?.price ?? 0) / 100 + 500);
    expect(Number(shown(3 + table.rows.length, 2))).toBeCloseTo(before + 500, 6);
  });

  test("says which jobs' figures are only a least", () => {
    const least = column(0).filter((_, index) =>
      cellText(column(11)[index] ?? null).startsWith("NOT"),
    );
    expect([...least].sort()).toEqual(["East", "West"]);
  });

  test("stands with no jobs at all", () => {
    expect(disagreeing(recalculated(marginsSheet(marginTable([]), "$")))).toEqual([]);
  });
});
