import { describe, expect, test } from "@jest/globals";
import { answersLength } from "../../../src/core/formulas/lengthAnswer";
import { readFormula } from "../../../src/core/formulas/read";

const lengths = new Set(["width", "height"]);

function isLength(text: string): boolean {
  const read = readFormula(text);
  if (!read.ok) throw new Error(read.error.message);
  return answersLength(read.value.tree, (name) => lengths.has(name));
}

describe("a length is answered by", () => {
  test.each([
    "width",
    "7'",
    '-(2")',
    "width + 1",
    "2 * width",
    "width / 2",
    "ROUND(height * 16, 0) / 16",
    "IF(leaves = 1, width, height)",
    "IFS(a, 5', b, 6')",
    'SWITCH(a, "x", width, "y", height)',
    "MAX(0, width)",
    "MOD(width, 2')",
  ])("%s", (text) => {
    expect(isLength(text)).toBe(true);
  });
});

describe("no length is answered by", () => {
  test.each([
    "leaves",
    "7",
    "width / 2'",
    "width * height",
    "width > 2'",
    "ROUNDUP(width / 2', 0)",
    "IF(width > 2', 1, 2)",
    "IFS(width > 2', 1)",
    "SWITCH(width, 2', 1, 0)",
    'LEFT("width")',
    "width ^ 2",
    "50%",
    'CHART("c", width)',
  ])("%s", (text) => {
    expect(isLength(text)).toBe(false);
  });
});
