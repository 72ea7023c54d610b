import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { compareTrials } from "../../../src/core/bookcheck/compareTrials";
import { tryOpening, type Trial } from "../../../src/core/bookcheck/trial";
import type { FormulaValue } from "../../../src/core/formulas/value";
import type { LengthStyle } from "../../../src/core/lengths/writeLength";
import { starterTypes } from "../../../src/core/kitbook/starter/starterKitBook";
import { compiled } from "../kitbook/rows";
import { showLength } from "../takeoff/notation";
import { openingOf, starter, typeIn } from "./openings";

const feet: LengthStyle = { kind: "feet-inches", denominator: 16 };

const tried = (type: string, fields: Readonly<Record<string, FormulaValue>> = {}): Trial =>
  tryOpening(starter, typeIn(starter, type), openingOf(type, fields), showLength);
const partsOf = (trial: Trial, item: string) =>
  trial.parts.filter((part) => part.itemTyped === item);

describe("trying a sliding door 8 ft wide", () => {
  const trial = tried("Sliding door");

  test("shows every size with the numbers that made it", () => {
    expect(trial.sizes.find(({ name }) => name === "panels")).toMatchObject({
      text: "2",
      worked: { formula: "IF(leaf_width <= 5', 1, 2)", numbers: `leaf_width = 8'-0"` },
    });
    expect(trial.sizes.map(({ source }) => source.number)).toEqual(
      trial.sizes.map(({ source }) => source.number).toSorted((one, other) => one - other),
    );
  });

  test("shows what each part counts, and why", () => {
    expect(partsOf(trial, "CLAMP PANEL")).toMatchObject([
      {
        deed: "counts",
        each: 6,
        item: "CLAMP PANEL",
        quantity: { formula: "2 * clamp_sets", numbers: "clamp_sets = 3" },
        when: { formula: "panels > 1", numbers: "panels = 2" },
      },
    ]);
    expect(partsOf(trial, "PANEL")).toMatchObject([{ size: [48, 84], each: 2, step: 40 }]);
    expect(trial.isCounted).toBe(true);
  });

  test("shows which limits speak and which are silent", () => {
    expect(trial.limits.filter(({ deed }) => deed === "speaks").map(({ level }) => level)).toEqual([
      "note",
      "note",
    ]);
    expect(trial.limits.length).toBeGreaterThan(10);
  });
});

test("a part that is not needed says so", () => {
  expect(partsOf(tried("Sliding door", { width: 48 }), "SPLICE")).toMatchObject([
    { deed: "not needed", item: null, each: 0 },
  ]);
});

test("a part that cannot be worked out says why, and the opening is not counted", () => {
  const trial = tried("Sliding door", { post_height: 90 });
  expect(partsOf(trial, '=CHART("track plate", post_nominal, door_nominal)')).toMatchObject([
    { deed: "fails", fault: expect.stringContaining(`no entry for 7'-6" by 7'-0"`) as unknown },
  ]);
  expect(trial.isCounted).toBe(false);
});

test("a limit that stops keeps the opening from being counted, and its parts are shown all the same", () => {
  const trial = tried("Hinged door", { width: 61 });
  expect(trial.isCounted).toBe(false);
  expect(partsOf(trial, "HINGE")).toMatchObject([{ deed: "counts", each: 3 }]);
});

test("rows that do not work at all are told beside the others", () => {
  const { book } = compiled({
    parts: ["Door | Bag | 1 | NUT | | 1", "Door | Bag | 1 | BOLT | | widht"],
  });
  const trial = tryOpening(book, typeIn(book, "Door"), openingOf("Door"), showLength);
  expect(trial.parts).toHaveLength(1);
  expect(trial.broken).toMatchObject([{ source: { section: "parts", number: 2 } }]);
  expect(trial.isCounted).toBe(false);
});

describe("between two sizes", () => {
  const changes = compareTrials(
    tried("Sliding door", { width: 60 }),
    tried("Sliding door", { width: 60.25 }),
    feet,
  );

  test("the rows that change are told in words", () => {
    expect(changes).toContainEqual(
      expect.objectContaining({ what: "panels", one: "1", other: "2" }),
    );
    expect(changes).toContainEqual(
      expect.objectContaining({ what: "SPLICE", one: "not needed", other: `1 SPLICE (5'-0 1/4")` }),
    );
  });

  test("the others are not", () => {
    expect(changes.map(({ what }) => what)).not.toContain("HINGE");
    expect(changes.map(({ what }) => what)).not.toContain("TROLLEY");
  });

  test("there is nothing where there is no difference, and one way back is the other way turned", () => {
    const widths = fc.integer({ min: 20, max: 200 });
    fc.assert(
      fc.property(fc.constantFrom(...starterTypes), widths, widths, (type, first, second) => {
        const [one, other] = [tried(type, { width: first }), tried(type, { width: second })];
        expect(compareTrials(one, one, feet)).toEqual([]);
        const turned = compareTrials(other, one, feet).map((change) => ({
          ...change,
          one: change.other,
          other: change.one,
        }));
        expect(compareTrials(one, other, feet)).toEqual(turned);
      }),
      { numRuns: 40 },
    );
  });
});
