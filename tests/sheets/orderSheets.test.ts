import { expect, test } from "@jest/globals";
import { orderDrawings } from "../../src/app/orders/orderDrawings";
import { shownValue } from "../../src/workbook/drawing";
import { countedDemo, orderOf } from "../app/orders/orderFiles";
import { recalculated } from "./recalculated";

test("every live formula of an order comes to the same in another spreadsheet engine", async () => {
  const drawings = orderDrawings(orderOf([await countedDemo()]));
  const kinds = drawings.map(({ mark }) => mark?.kind);
  expect(kinds).toEqual(
    expect.arrayContaining(["order", "allocation", "order needs", "cut list", "left over"]),
  );
  for (const drawing of drawings.filter(({ mark }) => mark?.kind !== "order needs")) {
    for (const { drawn, found } of recalculated(drawing).formulas) {
      expect(Number(found)).toBeCloseTo(Number(drawn), 6);
    }
  }
});

test("the suppliers' sheets add up to the order's total", async () => {
  const order = orderOf([await countedDemo()]);
  const totals = orderDrawings(order)
    .filter(({ mark }) => mark?.kind === "order")
    .map(({ rows }) => rows.at(-1)?.cells[6] ?? null)
    .map((cell) => (cell === null ? 0 : Number(shownValue(cell))));
  const sum = totals.reduce((all, each) => all + each, 0);
  expect(Math.round(sum * 100)).toBe(order.plan.total);
});

test("bars are drawn to scale: the pieces of a bar are as long beside it as they are cut", async () => {
  const order = orderOf([await countedDemo()]);
  const cutList = orderDrawings(order).find(({ mark }) => mark?.kind === "cut list");
  const [cuts] = order.plan.cutPlans;
  const [bar] = cuts?.bars ?? [];
  const boxes = (cutList?.pictures?.[0]?.marks ?? []).flatMap((mark) =>
    mark.kind === "box" ? [mark.width] : [],
  );
  const whole = boxes.at(-1) ?? 0;
  expect(boxes).toHaveLength((bar?.pieces.length ?? 0) + 1);
  expect(boxes.slice(0, -1).map((width) => width / whole)).toEqual(
    (bar?.pieces ?? []).map(({ length }) => expect.closeTo(length / (bar?.length ?? 1), 9)),
  );
});
