import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { inches, pounds } from "../../../../src/core/base/units";
import {
  hangerLoad,
  largestDeflection,
  largestMoment,
  momentAt,
  travelBeyond,
  type MovingLeaf,
} from "../../../../src/core/pricing/loads/movingLoads";

const leafOf = (first: number, second: number, spacing: number, from: number, to: number) => ({
  loads: [pounds(first), pounds(second)] as const,
  spacing: inches(spacing),
  from: inches(from),
  to: inches(to),
});

/** A leaf somewhere on a track of hangers at 0, 50, 120 and 200. */
const hangers = [0, 50, 120, 200].map(inches);
const anyLeaf = fc
  .tuple(
    fc.integer({ min: 0, max: 500 }),
    fc.integer({ min: 1, max: 500 }),
    fc.integer({ min: 1, max: 90 }),
    fc.integer({ min: 0, max: 100 }),
    fc.integer({ min: 0, max: 100 }),
  )
  .map(([first, second, spacing, from, travel]): MovingLeaf => {
    const to = Math.min(200 - spacing, from + travel);
    return leafOf(first, second, spacing, Math.min(from, to), to);
  });

/** The same figures the slow way: the leaf is stepped along and statics done at each step. */
function stepped(leaf: MovingLeaf, steps: number) {
  const atHangers = hangers.map(() => 0);
  const moments = hangers.slice(1).map(() => 0);
  const sinks = hangers.slice(1).map(() => 0);
  for (let step = 0; step <= steps; step += 1) {
    const first = leaf.from + ((leaf.to - leaf.from) * step) / steps;
    const points = [
      { at: first, load: leaf.loads[0] },
      { at: first + leaf.spacing, load: leaf.loads[1] },
    ];
    const onHangers = hangers.map(() => 0);
    for (const [index, right] of hangers.slice(1).entries()) {
      const left = hangers[index] ?? 0;
      const length = right - left;
      const inside = points.filter(({ at }) => at >= left && at < right);
      const leftReaction = inside.reduce(
        (sum, { at, load }) => sum + (load * (right - at)) / length,
        0,
      );
      const all = inside.reduce((sum, { load }) => sum + load, 0);
      onHangers[index] = (onHangers[index] ?? 0) + leftReaction;
      onHangers[index + 1] = (onHangers[index + 1] ?? 0) + all - leftReaction;
      for (const { at } of inside) {
        const before = inside.filter((point) => point.at < at);
        const moment =
          leftReaction * (at - left) -
          before.reduce((sum, point) => sum + point.load * (at - point.at), 0);
        moments[index] = Math.max(moments[index] ?? 0, moment);
      }
      const sink = inside.reduce((sum, { at, load }) => {
        const near = Math.min(at - left, right - at);
        return sum + (load * near * (3 * length ** 2 - 4 * near ** 2)) / 48;
      }, 0);
      sinks[index] = Math.max(sinks[index] ?? 0, sink);
    }
    const last = points.filter(({ at }) => at === 200).reduce((sum, { load }) => sum + load, 0);
    onHangers[3] = (onHangers[3] ?? 0) + last;
    for (const [index, load] of onHangers.entries()) {
      atHangers[index] = Math.max(atHangers[index] ?? 0, load);
    }
  }
  return { atHangers, moments, sinks };
}

describe("the worst over the whole travel", () => {
  test("is never less than any step along the way, and is reached by one", () => {
    fc.assert(
      fc.property(anyLeaf, (leaf) => {
        const slow = stepped(leaf, 400);
        const near = (fast: number, slowly: number, scale: number) => {
          expect(fast).toBeGreaterThanOrEqual(slowly - 1e-6 * scale);
          expect(fast).toBeLessThanOrEqual(slowly + 0.02 * scale);
        };
        const load = leaf.loads[0] + leaf.loads[1];
        hangers.forEach((_, index) => {
          near(hangerLoad(leaf, hangers, index), slow.atHangers[index] ?? 0, load);
        });
        hangers.slice(1).forEach((to, index) => {
          const span = { from: hangers[index] ?? to, to };
          near(largestMoment(leaf, span), slow.moments[index] ?? 0, load * 20);
          near(largestDeflection(leaf, span, 1), slow.sinks[index] ?? 0, load * 2e4);
        });
      }),
      { numRuns: 60 },
    );
  });

  test("a joint feels no more than the worst of its span, and at the worst place just that", () => {
    fc.assert(
      fc.property(anyLeaf, fc.integer({ min: 51, max: 119 }), (leaf, at) => {
        const span = { from: inches(50), to: inches(120) };
        expect(momentAt(leaf, span, inches(at))).toBeLessThanOrEqual(
          largestMoment(leaf, span) * (1 + 1e-9) + 1e-9,
        );
      }),
      { numRuns: 100 },
    );
  });

  test("a joint at a hanger bends nothing", () => {
    const span = { from: inches(0), to: inches(50) };
    expect(momentAt(leafOf(100, 100, 20, 0, 100), span, inches(50))).toBe(0);
  });
});

describe("travel past the outermost hanger", () => {
  test.each([
    ["stays between", leafOf(1, 1, 40, 5, 155), 0],
    ["reaches the last hanger", leafOf(1, 1, 40, 5, 160), 0],
    ["runs past the last", leafOf(1, 1, 40, 5, 190), 30],
    ["starts before the first", leafOf(1, 1, 40, -7, 100), 7],
  ])("%s", (_what, leaf, beyond) => {
    expect(travelBeyond(leaf, hangers)).toBe(beyond);
  });

  test("with no hanger nothing carries any of it", () => {
    expect(travelBeyond(leafOf(1, 1, 40, 10, 60), [])).toBe(90);
  });
});
