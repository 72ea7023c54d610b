import { expect, test } from "@jest/globals";
import { arrowHeads, markBox, markRuns, meshPath } from "../../../src/core/base/markShapes";
import type { Mark } from "../../../src/core/base/picture";

const line = (group: string | null, arrows: "none" | "end" | "both" = "none"): Mark => ({
  kind: "line",
  stroke: "thin",
  group,
  from: { x: 0, y: 5 },
  to: { x: 20, y: 5 },
  arrows,
});

test("marks of one group that follow each other are one run, in the order of drawing", () => {
  const runs = markRuns([line(null), line("a"), line("a"), line("b"), line(null), line("a")]);
  expect(runs.map(({ group, marks }) => [group, marks.length])).toEqual([
    [null, 1],
    ["a", 2],
    ["b", 1],
    [null, 1],
    ["a", 1],
  ]);
});

test("an arrow has its tip at the end of the line, and points along it", () => {
  const [end, start, ...more] = arrowHeads(line(null, "both") as never);
  expect(more).toEqual([]);
  expect(end?.[0]).toEqual({ x: 20, y: 5 });
  expect(start?.[0]).toEqual({ x: 0, y: 5 });
  expect(end?.slice(1).every(({ x }) => x < 20 && x > 10)).toBe(true);
  expect(start?.slice(1).every(({ x }) => x > 0 && x < 10)).toBe(true);
  expect(arrowHeads(line(null, "end") as never)).toHaveLength(1);
  expect(arrowHeads(line(null) as never)).toEqual([]);
});

test("a line without a length has no arrow", () => {
  const point = { ...line(null, "both"), to: { x: 0, y: 5 } };
  expect(arrowHeads(point as never)).toEqual([]);
});

test("a circle fills the box around it", () => {
  const circle: Mark = {
    kind: "circle",
    stroke: "thin",
    group: "a",
    center: { x: 5, y: 6 },
    radius: 2,
  };
  expect(markBox(circle)).toEqual({ x: 3, y: 4, width: 4, height: 4 });
});

test("a mesh has wires inside its box only, and none in a box without a width", () => {
  const path = meshPath({ x: 10, y: 10, width: 40, height: 20 });
  const numbers = [...path.matchAll(/[ML](\S+) (\S+?)(?=[ML]|$)/g)];
  expect(numbers.length).toBeGreaterThan(4);
  for (const [, x, y] of numbers) {
    expect(Number(x)).toBeGreaterThanOrEqual(10);
    expect(Number(x)).toBeLessThanOrEqual(50);
    expect(Number(y)).toBeGreaterThanOrEqual(10);
    expect(Number(y)).toBeLessThanOrEqual(30);
  }
  expect(meshPath({ x: 0, y: 0, width: 0, height: 5 })).toBe("");
});
