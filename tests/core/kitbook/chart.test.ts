import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { chartLookup, type ChartMatch } from "../../../src/core/kitbook/chart";
import { compiled, onePart } from "./rows";

/** `"7' 8' PLATE"`: down, across (`-` for none) and value of each entry. */
function lookup(match: ChartMatch, entries: readonly string[]) {
  const charts = entries.map((entry) => {
    const [down = "", across = "", value = ""] = entry.split(" ");
    return `chart | ${match} | ${down} | ${across.replace("-", "")} | ${value}`;
  });
  const { book, findings } = compiled({ charts, parts: [onePart] });
  expect(findings).toEqual([]);
  const [chart] = book.charts;
  if (chart === undefined) throw new Error("No chart");
  return chartLookup(chart);
}

describe("a chart that matches exactly", () => {
  const find = lookup("exact", ["7' 6' A", "7' 8' B", "2134mm 8' M"]);

  test.each([
    [84, 72, "A"],
    [84, 96, "B"],
    [84.00000000000001, 96, "B"],
    [2134 / 25.4, 96, "M"],
    [84.5, 72, undefined],
    [72, 84, undefined],
    [null, 72, undefined],
    [84, null, undefined],
    ["7'", 72, undefined],
  ])("gives for %p by %p %p", (down, across, value) => {
    expect(find(down, across)).toBe(value);
  });
});

describe("a chart that takes the next entry up", () => {
  const find = lookup("next up", ["7' - SEVEN", "9' - NINE"]);

  test.each([
    [1, "SEVEN"],
    [84, "SEVEN"],
    [84.01, "NINE"],
    [108, "NINE"],
    [108.01, undefined],
    ["84", undefined],
  ])("gives for %p %p", (down, value) => {
    expect(find(down, null)).toBe(value);
  });

  test("finds nothing where the next key has no entry on the other way", () => {
    const plates = lookup("next up", ["7' 6' A", "8' 8' B"]);
    expect(plates(84, 72)).toBe("A");
    expect(plates(90, 72)).toBeUndefined();
  });

  test("matches words exactly on a way that has only words", () => {
    const rails = lookup("next up", ["Wood 6' W", "Steel 6' S", "Steel 8' T"]);
    expect(rails("STEEL", 73)).toBe("T");
    expect(rails("wood", 73)).toBeUndefined();
  });

  test("always gives the smallest key that is not below", () => {
    const keys = fc.uniqueArray(fc.integer({ min: 0, max: 500 }), { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(keys, fc.double({ min: 0, max: 600, noNaN: true }), (numbers, wanted) => {
        const steps = chartLookup({
          name: "steps",
          match: "next up",
          twoWay: false,
          entries: numbers.map((down) => ({
            down,
            across: null,
            value: `at ${down}`,
            place: null,
            basis: "",
          })),
        });
        const expected = Math.min(...numbers.filter((number) => number >= wanted));
        const found = Number.isFinite(expected) ? `at ${expected}` : undefined;
        // A number that shows as a key is that key, so a hair above one may give it.
        const near = numbers.find((number) => Math.abs(number - wanted) < 1e-9);
        expect([found, `at ${near ?? ""}`]).toContain(steps(wanted, null));
      }),
    );
  });
});

test("yes and no are found as words and as answers", () => {
  const find = lookup("exact", ["yes - Y", "FALSE - N"]);
  expect([find(true, null), find("Yes", null), find(false, null)]).toEqual(["Y", "Y", "N"]);
});

test("a chart with a bad key is not used where another entry could be taken for the missing one", () => {
  const parts = [onePart, 'Door | Bag | 1 | =CHART("rail", width) | | 1'];
  const rail = (match: string) => [`rail | ${match} | 60 | | A`, `rail | ${match} | | | B`];
  const broken = (match: string) =>
    compiled({ charts: rail(match), parts }).book.types[0]?.broken.length;
  expect(broken("next up")).toBe(1);
  expect(broken("exact")).toBe(0);
});
