import { describe, expect, test } from "@jest/globals";
import { coverageOf, type Coverage } from "../../../src/core/bookcheck/coverage";
import { findingsOfCoverage, gapWords } from "../../../src/core/bookcheck/coverageFindings";
import { openingState } from "../../../src/core/bookcheck/openingState";
import { countedOpening, probeOpenings } from "../../../src/core/bookcheck/probeOpenings";
import { rowOutcomes } from "../../../src/core/bookcheck/rowOutcomes";
import type { KitBook } from "../../../src/core/kitbook/kitBook";
import { starterItems } from "../../../src/core/kitbook/starter/items";
import { starterTypes } from "../../../src/core/kitbook/starter/starterKitBook";
import { usDollar } from "../../../src/core/money/currency";
import { checkItems, type ItemRow } from "../../../src/core/pricing/item";
import { brief, compiled, type Notation } from "../kitbook/rows";
import { showLength } from "../takeoff/notation";
import { openingOf, starter, typeIn } from "./openings";

const covered = (book: KitBook, items: readonly ItemRow[] = []): Coverage =>
  coverageOf({ book, items: checkItems(items, usDollar).items, show: showLength });
const bookOf = (notation: Notation, headings: readonly string[] = []): KitBook =>
  compiled(notation, headings).book;

describe("the starter", () => {
  const coverage = covered(starter, starterItems);

  // Common practice, no source: eleven combinations of post and door height.
  test("has no plate for these heights, which no limit stops", () => {
    const open = coverage.gaps.filter(({ stoppedBy }) => stoppedBy === null);
    const ofSliding = open.filter(({ type }) => type === "Sliding door");
    expect(ofSliding.map((gap) => gapWords(gap, showLength))).toEqual([
      `Post height 9'-0" by Height 9'-0"`,
      `Post height 10'-0" by Height 9'-0"`,
      `Post height 11'-0" by Height 7'-0"`,
      `Post height 11'-0" by Height 8'-0"`,
      `Post height 11'-0" by Height 9'-0"`,
      `Post height 11'-0" by Height 10'-0"`,
      `Post height 12'-0" by Height 9'-0"`,
    ]);
    expect(open).toHaveLength(2 * ofSliding.length);
  });

  test("stops doors that are taller than their posts, so that their plates are not missed", () => {
    const stopped = coverage.gaps.filter(({ stoppedBy }) => stoppedBy !== null);
    expect(stopped.length).toBeGreaterThan(5);
    for (const { down, across, stoppedBy } of stopped) {
      expect(Number(across)).toBeGreaterThan(Number(down));
      expect(stoppedBy).toMatch(/taller than its posts/);
    }
  });

  test("has every item it names, with cost and weight, and names every item", () => {
    const { named, notInTable, withoutCost, withoutWeight, openRows } = coverage.items;
    expect([notInTable, withoutCost, withoutWeight, openRows]).toEqual([[], [], [], []]);
    const codes = new Set<unknown>(named.map(({ code }) => code));
    expect(starterItems.map(({ code }) => code.value).filter((code) => !codes.has(code))).toEqual(
      [],
    );
  });

  test("has no part that is never needed, and only limits that guard a size are idle", () => {
    expect(
      coverage.idle.map(({ source, what, isProven }) => [source.section, what, isProven]),
    ).toEqual([
      ["limits", 'guide_lap < 1"', true],
      ["limits", "track_piece > track_section_length", true],
      ["limits", 'guide_lap < 1"', true],
    ]);
  });
});

describe("items", () => {
  const item = (code: string, unitCost: number | null, weight: number | null): ItemRow => ({
    code: { value: code, place: { sheet: "Items", row: 0, column: 0 } },
    unitCost: { value: unitCost, place: null },
    weight: { value: weight, place: null },
  });
  const book = bookOf({
    sizes: ['Door | anchor | IF(floor = "wood", "SCREW", "BOLT") | text'],
    parts: [
      "Door | Bag | 1 | NUT | | 1",
      "Door | Bag | 1 | =anchor | | 1",
      'Door | Bag | 1 | =CHART("plate", width) | | 1',
      'Door | Bag | 1 | ="P" & height | | 1',
    ],
    charts: ["plate | next up | 5' | | PLATE 5", "plate | next up | 9' | | PLATE 9"],
  });
  const { items } = covered(book, [
    item("nut", 1, 1),
    item("SCREW", null, 1),
    item("PLATE 5", 2, null),
    item("SPARE", 1, 1),
  ]);

  test("are gathered from codes, sizes and charts", () => {
    expect(items.named.map(({ code }) => code)).toEqual([
      "NUT",
      "SCREW",
      "BOLT",
      "PLATE 5",
      "PLATE 9",
    ]);
  });

  test("are told where the table lacks them, their cost or their weight", () => {
    expect(items.notInTable.map(({ code }) => code)).toEqual(["BOLT", "PLATE 9"]);
    expect(items.withoutCost.map(({ code }) => code)).toEqual(["SCREW"]);
    expect(items.withoutWeight.map(({ code }) => code)).toEqual(["PLATE 5"]);
    expect(items.neverNamed.map(({ code }) => code)).toEqual(["SPARE"]);
  });

  test("of the starter are nobody's own, so a book that needs none of them is not told so", () => {
    expect(covered(book, starterItems).items.neverNamed).toEqual([]);
  });

  test("that are put together cannot be told, and their rows are", () => {
    expect(items.openRows.map(({ number }) => number)).toEqual([4]);
  });
});

describe("a row that does nothing", () => {
  const parts = (when: string, quantity = "1") => `Door | Bag | 1 | NUT | | ${quantity} | ${when}`;
  const verdict = (notation: Notation, headings: readonly string[] = []) =>
    covered(bookOf(notation, headings)).idle.map(({ isProven }) =>
      isProven ? "never" : "not seen",
    );

  test.each([
    ["a condition that is false", parts("FALSE")],
    ["a quantity of nothing", parts("", "0")],
    ["contradictory sizes", parts("AND(width > 6', width < 4')")],
    ["contradictory sizes through a size of the book", parts("AND(leaf > 6', width < 4')")],
    ["a contradiction beside another field", parts("AND(width > 6', width < 4', height > 7')")],
    [
      "a contradiction deep in ANDs",
      parts("AND(height > 7', AND(tail_run > 5', width > 6'), width < 4')"),
    ],
    ["words that contradict", parts('AND(floor = "wood", floor = "concrete")')],
    ["a yes that is a no", parts("AND(tail_post, NOT(tail_post))")],
    ["a number between two whole ones", parts("AND(ROUND(width, 0) > 5, ROUND(width, 0) < 6)")],
    ["a count that is always 0", parts("", "ROUNDDOWN(MIN(width, 11) / 12, 0)")],
    ["a chart that never answers so", parts('CHART("plate", floor) = "X"')],
  ])("is proven to: %s", (_what, part) => {
    const notation = {
      sizes: ["Door | leaf | width / 2 | length"],
      parts: [part, "Door | Bag | 1 | BOLT | | 1"],
      charts: ["plate | exact | wood | | Y", "plate | exact | sand | | Z"],
    };
    expect(verdict(notation)).toEqual(["never"]);
  });

  test.each([
    ["two sizes that contradict one another", "AND(width > height, height > width)"],
    ["a curve", "width * width < 0 - 1"],
    ["a column of the firm's own", "bars + bars = 77.3"],
    ["a word that is put together", 'LEFT(floor, 3) = "zzzz"'],
  ])("is only not seen to do anything: %s", (_what, when) => {
    expect(verdict({ parts: [parts(when)] }, ["Bars"])).toEqual(["not seen"]);
  });

  test.each([
    ["exactly one size", "width = 5'-7 13/64\""],
    ["a size that is seldom", "AND(width > 5'-7 1/64\", width < 5'-7 1/32\")"],
    ["a size that is left out", "ISBLANK(tail_run)"],
    ["a word", 'floor = "sand"'],
    ["no word", 'floor = ""'],
    ["a number that is not 0", "width - 5'"],
  ])("is not one that some opening needs: %s", (_what, when) => {
    expect(verdict({ parts: [parts(when)] })).toEqual([]);
  });

  test("for several types is idle only where it is in all of them", () => {
    const sizes = ["Door | wide | width > 5' | yes/no", "Gate | wide | FALSE | yes/no"];
    const gate = "Gate | Bag | 1 | BOLT | | 1";
    expect(verdict({ sizes, parts: ["Door, Gate | Bag | 1 | NUT | | 1 | wide", gate] })).toEqual(
      [],
    );
    expect(
      verdict({
        sizes,
        parts: ["Door | Bag | 1 | NUT | | 1 | NOT(wide)", "Gate | Bag | 1 | NUT | | 1 | wide"],
      }),
    ).toEqual(["never"]);
  });
});

describe("sizes, charts and types", () => {
  const coverage = covered(
    bookOf({
      sizes: [
        "Door | used | width | length",
        "Door | said | width | length",
        "Door | idle | width | length",
        "Gate | alone | width | length",
      ],
      parts: ["Door | Bag | 1 | NUT | | IF(used > 1', 2, 1)"],
      limits: ["Door | width > 9' | note | It is {said} wide."],
      charts: ["plate | exact | 7' | | P"],
    }),
  );

  test("that nobody uses are told", () => {
    expect(coverage.unusedSizes.map(({ name }) => name)).toEqual(["idle", "alone"]);
    expect(coverage.unusedCharts).toEqual(["plate"]);
    expect(coverage.typesWithoutParts).toEqual(["Gate"]);
  });

  test("become findings at their cells", () => {
    const findings = findingsOfCoverage(coverage, showLength).map(brief);
    expect(findings).toContain("sizes!A3 size-unused");
    expect(findings).toContain("parts!A1 item-not-in-table");
  });
});

test("a chart whose keys go through a calculation is asked for the right size", () => {
  const { gaps } = covered(
    bookOf({
      sizes: ["Door | leaf | width / 2 - 1 | length"],
      parts: ['Door | Bag | 1 | =CHART("plate", leaf) | | 1'],
      limits: ["Door | width > 10' | stop | Too wide"],
      charts: ["plate | exact | 4' | | P4", "plate | exact | 6' | | P6"],
    }),
  );
  expect(gaps.map((gap) => [gapWords(gap, showLength), gap.stoppedBy])).toEqual([
    [`leaf 5'-0"`, "Too wide"],
  ]);
});

test("openings made up for tries are the same each time, and the book counts one of each type", () => {
  for (const name of starterTypes) {
    const type = typeIn(starter, name);
    expect(probeOpenings(starter, type, 20)).toEqual(probeOpenings(starter, type, 20));
    const outcomes = rowOutcomes(starter, type, [countedOpening(starter, type)], showLength);
    expect(openingState(outcomes, 0, showLength).isCounted).toBe(true);
  }
  expect(openingOf("Door").type).toBe("Door");
});
