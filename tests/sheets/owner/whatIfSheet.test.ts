import { describe, expect, test } from "@jest/globals";
import { swingEffects, evenSwings } from "../../../src/core/pricing/chances/swings";
import { percent } from "../../../src/core/pricing/rates/percent";
import { costByPrice, discountThatKeeps } from "../../../src/core/pricing/keepTarget";
import { whatIfSheet } from "../../../src/sheets/owner/whatIfSheet";
import { shownValue } from "../../../src/workbook/drawing";
import { estimateOf, pricesOf, ratesOf } from "../../core/pricing/pricedJobs";
import { disagreeing, recalculated } from "../recalculated";

const openings = ["North", "South", "West"].map((job, index) => ({
  job,
  mark: "D1",
  quantity: index + 1,
}));
const jobs = pricesOf(
  estimateOf(openings),
  ratesOf({ contingency: "3.7 %", overhead: "11.3 %", equipment: 123.45 }),
);
const drawing = whatIfSheet(
  jobs.map(({ job, input, rollUp, target }) => {
    const swings = swingEffects(input, rollUp, evenSwings(input, percent(100_000)));
    return { job, input, rollUp, target, swings };
  }),
  "$",
);
const first = 10;

describe("the what-if sheet", () => {
  test("comes to the same in another engine", () => {
    expect(disagreeing(recalculated(drawing))).toEqual([]);
  });

  test("has without changes each job's cost, price that keeps and discount to the cent", () => {
    for (const [index, { job, rollUp, target }] of jobs.entries()) {
      const cells = drawing.rows[first + index]?.cells ?? [];
      const cents = (column: number): number => {
        const cell = cells[column] ?? null;
        return cell === null ? NaN : Math.round(Number(shownValue(cell)) * 1e6) / 1e4;
      };
      const kept = discountThatKeeps(costByPrice(rollUp), rollUp.price, target);
      expect([job, cents(9), cents(12), cents(13)]).toEqual([
        job,
        rollUp.cost,
        kept.price,
        kept.amount,
      ]);
    }
  });

  test("names figures as its changes are named", () => {
    const names = drawing.rows
      .slice(first)
      .flatMap(({ cells: { [6]: cell } }) => (cell?.kind === "text" ? [cell.text] : []));
    expect(names).toEqual(expect.arrayContaining(["Labour hours", "Wages", "Material: Leaf"]));
    expect(names).not.toContain("rate");
  });
});
