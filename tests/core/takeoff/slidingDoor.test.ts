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

test("without a tail post there are two hangers, and a warning", () => {
  const result = estimateOpening("4' x 7' on 8'", { tailPost: "no" });
  expect(itemsOf(result)["PLATE 8-7"]).toBe(2);
  expect(codesOf(result, "warn")).toContain("limit");
});
