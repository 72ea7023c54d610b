import { describe, expect, test } from "@jest/globals";
import { workedCheck } from "../kitbook/workedCheck";
import { codesOf, countsOf, estimateOpening, itemsOf } from "./notation";

/** All facts of the trade in this file: common practice, no source. */
describe("a sliding door 8 ft wide and 7 ft high on 7 ft posts, with a tail post, on concrete", () => {
  const result = estimateOpening("8' x 7' on 7'");

  test("needs exactly this hardware", () => {
    expect(itemsOf(result)).toEqual(workedCheck);
  });

  test("has two panels of half its width", () => {
    expect(countsOf(result)["PANEL (48 x 84)"]).toBe(2);
  });

  test("is counted without a stop", () => {
    expect(codesOf(result, "stop")).toEqual([]);
    expect(result.complete).toBe(true);
  });
});

describe("boundaries", () => {
  test.each([
    ["5'", 1],
    [`5'-0 1/64"`, 2],
    ["1524 mm", 1],
    ["1525 mm", 2],
  ])("a leaf %s wide has %d panels", (width, panels) => {
    expect(itemsOf(estimateOpening(`${width} x 7' on 8'`))["PANEL"]).toBe(panels);
  });

  test.each([
    ["8'", "8'", 6],
    ["10'", "10'", 8],
  ])("a wide leaf %s high on posts of %s has %d panel clamps", (height, post, clamps) => {
    expect(itemsOf(estimateOpening(`6' x ${height} on ${post}`))["CLAMP PANEL"]).toBe(clamps);
  });

  test.each([
    ["6'", 1],
    ["8'", 1],
    [`8'-1"`, 2],
  ])("a leaf %s wide has %d sections of track", (width, sections) => {
    expect(itemsOf(estimateOpening(`${width} x 7' on 8'`))["TRACK"]).toBe(sections);
  });

  test.each([`6'-1"`, "7'", "8'"])(
    "a leaf %s wide says that practice on the track is not settled",
    (width) => {
      expect(codesOf(estimateOpening(`${width} x 7' on 8'`), "note")).toContain("limit");
    },
  );
});

// Arithmetic: 7 ft is 2133.6 mm, 8 ft 2438.4 mm, 10 ft 3048 mm (1 in = 25.4 mm exactly, NIST SP 811).
describe("metric drawings in whole millimetres", () => {
  test.each([
    ["2134 mm x 2134 mm on 2134 mm", "PLATE 7-7"],
    ["2438 mm x 2438 mm on 2438 mm", "PLATE 8-8"],
    ["2438 mm x 2133 mm on 2438 mm", "PLATE 8-7"],
    ["1829 mm x 2134 mm on 2743 mm", "PLATE 9-7"],
    ["1829 mm x 3048 mm on 3658 mm", "PLATE 12-10"],
    // 16 ft is 4876.8 mm.
    ["4877 mm x 2134 mm on 2134 mm", "PLATE 7-7"],
  ])("%s takes %s", (sizes, plate) => {
    const result = estimateOpening(sizes);
    expect(codesOf(result, "stop")).toEqual([]);
    expect(itemsOf(result)[plate]).toBe(3);
  });

  test.each([
    `8' x 7'-0 1/8" on 7'-0 1/8"`,
    `8' x 7' on 7'-0 1/8"`,
    `8' x 7'-0 1/8" on 7'`,
    "8' x 2137 mm on 8'",
  ])("%s is still refused", (sizes) => {
    expect(codesOf(estimateOpening(sizes), "stop").length).toBeGreaterThan(0);
  });
});

describe("what the kit book stops", () => {
  test.each([
    ["a door taller than its post", "4' x 8' on 7'"],
    ["a leaf under 2 ft", `23" x 7' on 8'`],
    ["a leaf over 16 ft", `16'-1" x 10' on 12'`],
    ["a post height that is missing", "4' x 7'"],
    ["a combination that the chart does not have", "4' x 9' on 12'"],
  ])("%s", (_what, sizes) => {
    const result = estimateOpening(sizes);
    expect(codesOf(result, "stop").length).toBeGreaterThan(0);
    expect(result.complete).toBe(false);
    expect(countsOf(result)).toEqual({});
    expect(result.jobs[0]?.uncounted.map((row) => row.mark)).toEqual(["A-1"]);
  });
});

describe("a stop says in the user's lengths", () => {
  const messages = (sizes: string) =>
    estimateOpening(sizes)
      .findings.filter(({ level }) => level === "stop")
      .map(({ message }) => message);

  test("which combination the chart does not have", () => {
    expect(messages(`8' x 7' on 7'-0 3/16"`)).toEqual([
      `Not counted: the chart "track plate" has no entry for 7'-0 3/16" by 7'-0". Check the sizes of the opening, or add the combination to the kit book's charts.`,
    ]);
  });

  test("which field is missing", () => {
    expect(messages("8' x 7'")).toEqual([
      "Not counted: post height is blank. Type it in the schedule: the kit book needs it for this opening type.",
    ]);
  });
});

test("without a tail post there are two hangers, and a warning", () => {
  const result = estimateOpening("4' x 7' on 8'", { tailPost: "no" });
  expect(itemsOf(result)["PLATE 8-7"]).toBe(2);
  expect(codesOf(result, "warn")).toContain("limit");
});
