import { describe, expect, test } from "@jest/globals";
import { writeSize } from "../../src/core/lengths/writeLength";
import { searchLines } from "../../src/pane/jobs/searchLines";
import { estimateOpening } from "../core/takeoff/notation";

const lines = estimateOpening("8' x 7' on 8'").jobs[0]?.material.lines ?? [];
const found = (search: string): readonly string[] =>
  searchLines(lines, search, ({ line }) =>
    writeSize(line.size, { kind: "feet-inches", denominator: 16 }),
  ).flatMap((family) => family.lines.map(({ line }) => line.item));

describe("the search for lines", () => {
  test("finds all lines for nothing, in their order and by family", () => {
    expect(found("  ")).toEqual(lines.map(({ line }) => line.item));
    const families = searchLines(lines, "", () => "").map(({ family }) => family);
    expect(new Set(families).size).toBe(families.length);
  });

  test.each([
    ["a code in any case", "trolley", "TROLLEY"],
    ["words of the description in any order", "mesh WIRE", "PANEL"],
    ["a size as it is shown", `7'-0"`, "PANEL"],
    ["a size in inches", "84", "PANEL"],
  ])("finds %s", (_, search, item) => {
    expect(found(search)).toContain(item);
  });

  test("wants every word", () => {
    expect(found("mesh trolley")).toEqual([]);
  });
});
