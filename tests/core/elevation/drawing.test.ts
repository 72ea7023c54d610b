import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { drawElevation } from "../../../src/core/elevation/drawElevation";
import type { Elevation, Shape } from "../../../src/core/elevation/elevation";
import {
  elevationPicture,
  paneFrame,
  paperFrame,
} from "../../../src/core/elevation/elevationPicture";
import { elevationWords } from "../../../src/core/elevation/elevationWords";
import { readHand } from "../../../src/core/elevation/hand";
import { mirrored } from "../../../src/core/elevation/mirror";
import { outlineBox } from "../../../src/core/elevation/outlineBox";
import { formulaError } from "../../../src/core/formulas/value";
import { boxAround } from "../../../src/core/base/picture";
import { textWidth } from "../../../src/core/base/textWidth";
import { packJob } from "../../../src/core/bags/bags";
import { packedOpening, starterCases } from "../bags/starterOpenings";
import { anyOpenings, rowsOf } from "../takeoff/anyOpenings";
import { estimateRows, showLength, type OpeningWords } from "../takeoff/notation";

const drawn = (type: string, sizes: string, words: OpeningWords = {}): Elevation =>
  drawElevation(packedOpening(type, sizes, words));

const boxesOf = ({ shapes }: Elevation, kind: Shape["kind"]) =>
  shapes.filter((shape) => shape.kind === kind).map(({ outline }) => outlineBox(outline));

const measuresOf = ({ measures }: Elevation): Readonly<Record<string, number>> =>
  Object.fromEntries(measures.map(({ name, length }) => [name, length]));

describe("an elevation is drawn to scale", () => {
  test("panels stand side by side in the leaf, each in its counted size", () => {
    const panels = boxesOf(drawn("Sliding door", "9' x 8' on 9'"), "panel");
    expect(panels).toMatchObject([
      { x: 0, y: 0, width: 54, height: 96 },
      { x: 54, y: 0, width: 54, height: 96 },
    ]);
  });

  test("the track is as long as its sections, which meet at a joint", () => {
    const elevation = drawn("Sliding door", "9' x 8' on 9'");
    expect(boxesOf(elevation, "track")).toMatchObject([
      { x: 0, width: 108 },
      { x: 108, width: 108 },
    ]);
    expect(boxesOf(elevation, "joint")).toMatchObject([{ x: 108, width: 0 }]);
  });

  test("a bi-parting door has its leaves left and right of the middle", () => {
    const elevation = drawn("Bi-parting sliding door", "12' x 8' on 10'");
    expect(boxesOf(elevation, "panel").map(({ x }) => x)).toEqual([0, 36, 72, 108]);
    expect(boxAround(boxesOf(elevation, "track"))).toMatchObject({ x: -72, width: 288 });
    const stiles = boxesOf(elevation, "meetingStile").map(({ x, width }) => [x, x + width]);
    expect(stiles).toEqual([
      [70, 72],
      [72, 74],
    ]);
  });

  test("measures say the schedule's sizes", () => {
    expect(measuresOf(drawn("Sliding door", "9' x 8' on 9'", { tailRun: "10'" }))).toEqual({
      width: 108,
      "tail run": 120,
      panel: 54,
      height: 96,
      "post height": 108,
      track: 108,
      "track in all": 216,
    });
  });

  test("every measure is as long as its line, save one that goes on beyond the picture", () => {
    fc.assert(
      fc.property(anyOpenings, (given) => {
        for (const { takeOff } of estimateRows(rowsOf(given)).jobs) {
          for (const opening of packJob(takeOff).openings) {
            for (const { from, to, length, isCut } of drawElevation(opening).measures) {
              const line = Math.abs(to - from);
              if (isCut) expect(length).toBeGreaterThan(line);
              else expect(line).toBeCloseTo(length, 9);
            }
          }
        }
      }),
      { numRuns: 25 },
    );
  });

  test("a tail run far longer than the door is cut, and still says its length", () => {
    const { measures } = drawn("Sliding door", "4' x 7' on 8'", { tailRun: "300'" });
    expect(measures.find(({ name }) => name === "tail run")).toMatchObject({
      length: 3600,
      isCut: true,
    });
  });

  test("one scale for across and up, in any frame, with nothing beyond its edges", () => {
    fc.assert(
      fc.property(anyOpenings, fc.constantFrom(paperFrame, paneFrame), (given, frame) => {
        for (const { takeOff } of estimateRows(rowsOf(given)).jobs) {
          for (const opening of packJob(takeOff).openings) {
            const elevation = drawElevation(opening);
            const picture = elevationPicture(elevation, showLength, frame);
            expect(picture.width).toBeLessThanOrEqual(frame.width + 0.01);
            expect(picture.height).toBeLessThanOrEqual(frame.height + 0.01);
            for (const mark of picture.marks) {
              if (mark.kind !== "words") continue;
              const half = textWidth(mark.words, mark.size) / 2;
              const along = mark.upright ? mark.center.y : mark.center.x;
              const size = mark.upright ? picture.height : picture.width;
              expect(along - half).toBeGreaterThanOrEqual(0);
              expect(along + half).toBeLessThanOrEqual(size);
            }
            const [panel] = boxesOf(elevation, "panel");
            const mark = picture.marks.find(
              (each) => each.kind === "box" && each.fill === "mesh" && each.group !== null,
            );
            if (panel === undefined || mark?.kind !== "box") throw new Error("No panel");
            expect(mark.width / panel.width).toBeCloseTo(mark.height / panel.height, 9);
          }
        }
      }),
      { numRuns: 25 },
    );
  });
});

describe("the hand", () => {
  test.each([
    ["right", "right"],
    ["L.H.", "left"],
    [" Left-Hand ", "left"],
    ["RH", "right"],
    ["both", null],
    ["", null],
    [3, null],
    [null, null],
    [formulaError("missing", "x"), null],
  ])("%j is read as %s", (cell, hand) => {
    expect(readHand(cell)).toBe(hand);
  });

  test.each(starterCases)("a left %s, %s, is the mirror image of a right one", (type, sizes) => {
    const right = drawn(type, sizes, { hand: "right", tailRun: "20'" });
    const left = drawn(type, sizes, { hand: "left", tailRun: "20'" });
    expect(left).toEqual(mirrored(right));
    expect(mirrored(mirrored(right))).toEqual(right);
    expect(left.shapes).not.toEqual(right.shapes);
  });

  test("a right-hand door opens to the right, a left-hand one to the left", () => {
    const way = (hand: string): number => {
      const travel = drawn("Sliding door", "4' x 7' on 8'", { hand }).shapes.find(
        ({ kind }) => kind === "travel",
      );
      if (travel?.outline.form !== "line") throw new Error("No travel");
      return Math.sign(travel.outline.to.x - travel.outline.from.x);
    };
    expect(way("right")).toBe(1);
    expect(way("left")).toBe(-1);
  });

  test("one that is not given is drawn right, and the picture says so", () => {
    const elevation = drawn("Sliding door", "4' x 7' on 8'");
    expect(elevation).toMatchObject({ hand: "right", isHandAssumed: true });
    expect(elevationWords(elevation, showLength)).toContain("The schedule names no hand");
  });
});

test("words are estimated wider for wider letters, and never as nothing", () => {
  expect(textWidth("iii", 10)).toBeLessThan(textWidth("WWW", 10));
  expect(textWidth("木", 10)).toBe(10);
  expect(textWidth("A", 10, true)).toBeGreaterThan(textWidth("A", 10));
});
