import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import type { Box, Picture } from "../../src/core/base/picture";
import {
  layersOf,
  placeAfterKey,
  placeAt,
  type DrawnPlace,
} from "../../src/pane/opening/placesInPicture";

const place = (group: string, box: Box): DrawnPlace => ({ group, box, marks: [] });
const panel = place("panel", { x: 0, y: 0, width: 100, height: 100 });
const clamp = place("clamp", { x: 48, y: 20, width: 2, height: 4 });
const other = place("other clamp", { x: 51, y: 20, width: 2, height: 4 });
const post = place("post", { x: -10, y: 0, width: 4, height: 100 });

describe("what is pointed at", () => {
  const at = (x: number, y: number, reach = 3): string | null =>
    placeAt([panel, clamp, other, post], { x, y }, reach);

  test("is the small part before the large one that it sits on", () => {
    expect(at(49, 22)).toBe("clamp");
    expect(at(46.5, 22)).toBe("clamp");
    expect(at(20, 60)).toBe("panel");
  });

  test("is the nearest of small parts", () => {
    expect(at(50.2, 22)).toBe("clamp");
    expect(at(50.8, 22)).toBe("other clamp");
  });

  test("is nothing out of reach of all", () => {
    expect(at(-30, 50)).toBeNull();
    expect(at(-12, 50)).toBe("post");
  });

  test("is what has the spot in it before what is only near", () => {
    expect(at(-7, 50, 8)).toBe("post");
  });
});

test("keys reach every place both ways, whatever lies where", () => {
  const boxes = fc.record({
    x: fc.integer({ min: 0, max: 20 }),
    y: fc.integer({ min: 0, max: 20 }),
    width: fc.integer({ min: 0, max: 9 }),
    height: fc.integer({ min: 0, max: 9 }),
  });
  fc.assert(
    fc.property(fc.array(boxes, { minLength: 1, maxLength: 12 }), (given) => {
      const places = given.map((box, index) => place(String(index), box));
      for (const [forth, back] of [
        ["ArrowRight", "ArrowLeft"],
        ["ArrowDown", "ArrowUp"],
      ] as const) {
        let at = "0";
        for (let next: string | null = at; next !== null; next = placeAfterKey(places, at, back)) {
          at = next;
        }
        const way = [at];
        for (let next = placeAfterKey(places, at, forth); next !== null;) {
          way.push(next);
          expect(placeAfterKey(places, next, back)).toBe(at);
          at = next;
          next = placeAfterKey(places, at, forth);
        }
        expect(new Set(way).size).toBe(places.length);
      }
      expect(placeAfterKey(places, "0", "x")).toBeNull();
    }),
  );
});

test("what lies over the places is drawn over them", () => {
  const mark = (group: string | null, x: number): Picture["marks"][number] => ({
    kind: "box",
    stroke: "thin",
    group,
    x,
    y: 0,
    width: 1,
    height: 1,
    fill: "none",
  });
  const marks = [mark(null, 0), mark("a", 1), mark("a", 5), mark("b", 2), mark(null, 3)];
  const { under, places, over } = layersOf({
    width: 9,
    height: 9,
    marks,
    title: "",
    description: "",
  });
  expect(under.flatMap((run) => run.marks)).toEqual(marks.slice(0, 1));
  expect(places.map(({ group, box }) => [group, box])).toEqual([
    ["a", { x: 1, y: 0, width: 5, height: 1 }],
    ["b", { x: 2, y: 0, width: 1, height: 1 }],
  ]);
  expect(over.flatMap((run) => run.marks)).toEqual(marks.slice(4));
});
