import { describe, expect, test } from "@jest/globals";
import { readFormula } from "../../../src/core/formulas/read";
import { run } from "./running";

describe("a length in a formula is worth its inches", () => {
  test.each([
    [`5'`, 60],
    [`5 '`, 60],
    [`5 ft`, 60],
    [`5ft`, 60],
    [`5 feet`, 60],
    [`1 foot`, 12],
    [`5 FT.`, 60],
    [`5'-0"`, 60],
    [`5'0"`, 60],
    [`5' 0"`, 60],
    [`5' 6"`, 66],
    [`5'-6"`, 66],
    [`5'6"`, 66],
    [`7' 0 1/2"`, 84.5],
    [`7'-0 1/2"`, 84.5],
    [`7'-1/2"`, 84.5],
    [`7' 1/2"`, 84.5],
    [`6'-11-1/2"`, 83.5],
    [`6'-11 1/2"`, 83.5],
    [`6' 11.5"`, 83.5],
    [`5 ft 6 in`, 66],
    [`5 ft 6 1/2 in`, 66.5],
    [`60"`, 60],
    [`60 in`, 60],
    [`60 inches`, 60],
    [`60''`, 60],
    [`1.5"`, 1.5],
    [`1 1/2"`, 1.5],
    [`1/2"`, 0.5],
    [`3/16"`, 0.1875],
    [`1/2 ft`, 6],
    [`7½"`, 7.5],
    [`7 ½"`, 7.5],
    [`½"`, 0.5],
    [`5'-7½"`, 67.5],
    [`1524 mm`, 60],
    [`1524mm`, 60],
    [`152.4 cm`, 60],
    [`1.524 m`, 60],
    [`25.4 mm`, 1],
    [`5.1'`, 61.2],
    [`.5'`, 6],
    // As word processors write them.
    [`5’-6”`, 66],
    [`5′ 6″`, 66],
    [`5'–6"`, 66],
  ])("%s", (text, inches) => {
    expect(run(text)).toBe(inches);
    expect(readFormula(text)).toMatchObject({ value: { tree: { isLength: true } } });
  });

  test.each([
    [`5' - x`, 54],
    [`5'-x`, 54],
    [`x-2"`, 4],
    [`x - 2"`, 4],
    [`x-1/2"`, 5.5],
    [`84 - 1/2"`, 83.5],
    [`7' - 6'`, 12],
    [`7'-6'`, 12],
    [`7' - 25.4 mm`, 83],
    [`7' - (6")`, 78],
    [`7' + 6"`, 90],
    [`7'*2`, 168],
    [`7'/2`, 42],
    [`-5'`, -60],
    [`5' <= 60"`, true],
    [`10 / 2"`, 5],
    [`2 * 1/2"`, 1],
    [`x / 2"`, 3],
    [`x&" ft"`, "6 ft"],
    [`IF(x=6,"a","b")`, "a"],
    [`3/4`, 0.75],
    [`3-1/2`, 2.5],
  ])("%s is arithmetic", (text, answer) => {
    expect(run(text, { x: 6 })).toBe(answer);
  });
});

describe("what can be read in two ways is refused, with both ways to write it", () => {
  test.each([
    // what is typed, what the first way is worth, and the second
    [`7'-6`, 90, 78],
    [`7' - 6`, 90, 78],
    [`7' -6`, 90, 78],
    [`7' - 6"`, 90, 78],
    [`7'- 6"`, 90, 78],
    [`7 ft - 6 in`, 90, 78],
    [`7'-6 1/2`, 90.5, 77.5],
    [`3-1/2"`, 3.5, 2.5],
    [`3 -1/2"`, 3.5, 2.5],
    [`83-1/2 in`, 83.5, 82.5],
    [`120 / 3 ft`, 120 / 36, 480],
    [`5/4 mm`, 5 / (20 / 127), 1.25 * (5 / 127)],
    [`1/2"^2`, 0.5, 0.5],
    [`x / 1/2"`, 0.5, 0.5],
    [`x^1/2"`, 0.5, 0.5],
  ])("%s", (text, one, other) => {
    const read = readFormula(text);
    expect(read).toMatchObject({ ok: false, error: { code: "formula-length-ambiguous" } });
    const message = read.ok ? "" : read.error.message;
    const ways = /Write (.+) for .+, or (.+) for .+\.$/.exec(message);
    expect(run(ways?.[1] ?? "")).toBeCloseTo(one, 12);
    expect(run(ways?.[2] ?? "")).toBeCloseTo(other, 12);
  });

  test.each([
    [`7' 6`, "own mark", 90],
    [`7'6`, "own mark", 90],
    [`7' 6'`, "own mark", 90],
    [`5' 14"`, "below 12", 74],
    [`5.5' 6"`, "whole", 72],
    [`1 1/2`, "need a mark", 1.5],
    [`1 5/4"`, "smaller than its bottom", 1.5],
    [`5'-5/4"`, "smaller than its bottom", 1.5],
  ])("%s is not a length: %s", (text, why, suggested) => {
    const read = readFormula(text);
    expect(read).toMatchObject({ ok: false, error: { code: "formula-length-unclear" } });
    const message = read.ok ? "" : read.error.message;
    expect(message).toContain(why);
    expect(run(/Write (\S+(?: \d\/\d")?)(?: or .+)?\.$/.exec(message)?.[1] ?? "")).toBe(suggested);
  });
});
