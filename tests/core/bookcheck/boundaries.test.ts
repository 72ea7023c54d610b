import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import {
  boundaryTable,
  withField,
  type BoundaryTable,
} from "../../../src/core/bookcheck/boundaries";
import { itemsAt, rowOutcomes } from "../../../src/core/bookcheck/rowOutcomes";
import type { FormulaValue } from "../../../src/core/formulas/value";
import type { KitBook } from "../../../src/core/kitbook/kitBook";
import { starterTypes } from "../../../src/core/kitbook/starter/starterKitBook";
import { compiled, type Notation } from "../kitbook/rows";
import { showLength } from "../takeoff/notation";
import { openingOf, starter, typeIn } from "./openings";

function tableOf(
  type: string,
  field: string,
  fields: Readonly<Record<string, FormulaValue>> = {},
  book: KitBook = starter,
): BoundaryTable {
  const opening = openingOf(type, fields);
  const domain = { from: 0, to: 400 };
  return boundaryTable({
    book,
    type: typeIn(book, type),
    opening,
    field,
    domain,
    show: showLength,
  });
}

/** Where an item changes, with the side the value goes with: `60 below`. */
const changesOf = (table: BoundaryTable, item: string): readonly string[] =>
  table.boundaries
    .filter(({ items }) => items.some((change) => change.item === item))
    .map(({ value, goesWith }) => `${value} ${goesWith}`);

describe("a sliding door's width", () => {
  const table = tableOf("Sliding door", "width");

  // Common practice, no source: one panel up to and including 5 ft, one section of track up to 6 ft.
  test("has its boundaries at 5 ft and 8 ft exactly, and says which side they go with", () => {
    expect(changesOf(table, "PANEL")).toEqual(["60 below"]);
    expect(changesOf(table, "CLAMP PANEL")).toEqual(["60 below"]);
    expect(changesOf(table, "TRACK")).toEqual(["96 below"]);
  });

  test("shows the counts on all sides", () => {
    const [atFive] = table.boundaries.filter(({ value }) => value === 60);
    expect(atFive?.items).toContainEqual({ item: "CLAMP PANEL", below: 0, at: 0, above: 6 });
    expect(atFive?.sizes).toContainEqual({ name: "panels", below: "1", at: "1", above: "2" });
    expect(atFive?.rows.length).toBeGreaterThan(5);
  });

  test("shows where limits begin and end to speak", () => {
    const spoken = table.boundaries.flatMap(({ value, limits }) =>
      limits.map(({ level, speaks }) => [value, level, speaks.below, speaks.at, speaks.above]),
    );
    expect(spoken).toEqual([
      [24, "stop", true, false, false],
      [72, "note", false, false, true],
      [96, "note", true, true, false],
      [192, "warn", false, false, true],
      [192.03125, "stop", false, true, true],
    ]);
  });

  test("is proven to have no other", () => {
    expect(table.isProven).toBe(true);
  });
});

test("a chart's entry is a window of heights, as wide as the nominal heights are rounded", () => {
  expect(changesOf(tableOf("Sliding door", "height"), "PLATE 7-7")).toEqual([
    "83.96875 above",
    "84.03125 above",
  ]);
  expect(changesOf(tableOf("Sliding door", "height"), "CLAMP PANEL")).toEqual(["96 below"]);
});

test("a field that no row reads has no boundary", () => {
  const table = tableOf("Hinged door", "tail_run");
  expect(table.boundaries).toEqual([]);
  expect(table.start.items.get("PANEL")).toBe(1);
});

const bookOf = (notation: Notation): KitBook => compiled(notation).book;
const nuts = (quantity: string, more: Notation = {}): KitBook =>
  bookOf({ parts: [`Door | Bag | 1 | NUT | | ${quantity}`], ...more });

describe("the boundaries of a book of one row", () => {
  test.each([
    ["IF(width < 5', 1, 2)", ["60 above"]],
    ["IF(width <= 1524 mm, 1, 2)", ["60 below"]],
    ["IF(width = 5', 1, 2)", ["60 neither"]],
    ["ROUNDUP(width / 10', 0)", ["120 below", "240 below", "360 below"]],
    ["ROUNDDOWN(width / 10', 0)", ["120 above", "240 above", "360 above"]],
    ["IF(width * width > 3600, 1, 2)", ["60 below"]],
    ["IF(2' / width > 0.5, 1, 2)", ["48 above"]],
    ["MAX(2, 3 + ROUNDUP(MIN(width, 3') / 1', 0))", ["12 below", "24 below"]],
    ["IF(AND(width > 5', height > 8'), 1, 2)", []],
    ['IF(MOD(width, 300) >= 6", 1, 2)', ["6 above", "300 above", "306 above"]],
  ])("%s", (quantity, boundaries) => {
    expect(changesOf(tableOf("Door", "width", {}, nuts(quantity)), "NUT")).toEqual(boundaries);
  });

  test("that is a curve are found by trying, and the table says so", () => {
    const table = tableOf("Door", "width", {}, nuts("IF(width * width > 5000, 1, 2)"));
    expect(table.isProven).toBe(false);
    expect(table.boundaries.map(({ value }) => value.toFixed(6))).toEqual([
      Math.sqrt(5000).toFixed(6),
    ]);
  });

  test("go through sizes, whatever they are called", () => {
    const book = nuts("panels", {
      sizes: ['Door | leaf | width - 2" | length', "Door | panels | IF(leaf > 5', 2, 1) | count"],
    });
    expect(changesOf(tableOf("Door", "width", {}, book), "NUT")).toEqual(["62 below"]);
  });

  test("are there where a count stops being whole", () => {
    const table = tableOf("Door", "width", {}, nuts("width / 100"));
    expect(table.boundaries.map(({ value, goesWith }) => `${value} ${goesWith}`)).toEqual([
      "100 neither",
      "200 neither",
      "300 neither",
    ]);
    expect(table.start.isCounted).toBe(false);
  });

  test("are told of a field that the firm added", () => {
    const { book } = compiled({ parts: ["Door | Bag | 1 | NUT | | IF(bars > 3, 2, 1)"] }, ["Bars"]);
    expect(changesOf(tableOf("Door", "bars", {}, book), "NUT")).toEqual(["3 below"]);
  });
});

describe("whatever the opening", () => {
  const fields = fc.record({
    width: fc.integer({ min: 24, max: 384 }),
    height: fc.constantFrom(84, 96, 108, 120),
    post_height: fc.constantFrom(null, 84, 96, 120, 144),
    tail_post: fc.constantFrom(true, false, null),
    tail_run: fc.option(fc.integer({ min: 12, max: 300 })),
    transom_height: fc.option(fc.integer({ min: 6, max: 60 })),
    transom: fc.boolean(),
    floor: fc.constantFrom("concrete", "wood", "sand", null),
  });
  const field = fc.constantFrom("width", "height", "post_height", "tail_run", "transom_height");
  const points = fc.array(fc.integer({ min: 1, max: 400 * 64 - 1 }), {
    minLength: 20,
    maxLength: 20,
  });

  test("a try anywhere counts what the table says for there", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...starterTypes),
        fields,
        field,
        points,
        (type, given, name, tried) => {
          const table = tableOf(type, name, given);
          expect(table.isProven).toBe(true);
          const values = [
            ...table.boundaries.map(({ value }) => value),
            ...tried.map((x) => x / 64),
          ];
          const openings = values.map((value) => withField(openingOf(type, given), name, value));
          const outcomes = rowOutcomes(starter, typeIn(starter, type), openings, showLength);
          for (const [row, value] of values.entries()) {
            const passed = table.boundaries.filter((boundary) => boundary.value <= value).at(-1);
            const state =
              passed === undefined
                ? table.start
                : passed.value === value
                  ? passed.states.at
                  : passed.states.above;
            expect([...itemsAt(outcomes, row)]).toEqual([...state.items]);
          }
        },
      ),
      { numRuns: 40 },
    );
  });
});
