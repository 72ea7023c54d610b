import { describe, expect, test } from "@jest/globals";
import { brokenLines, oneLineOf } from "../../src/sheets/wrapped";

describe("words on one line", () => {
  test("stand as they are where they fit", () => {
    expect(oneLineOf("Alder A-1", 200, 12)).toBe("Alder A-1");
  });

  test.each(["M".repeat(32_767), "i".repeat(32_767), "🚪".repeat(16_383)])(
    "are as many as fit, even of a cell that is full (%#)",
    (words) => {
      const lines = (count: number): number =>
        brokenLines(`${Array.from(words).slice(0, count).join("")}…`, 200, 12).length;
      const fitting = Array.from(oneLineOf(words, 200, 12)).length - 1;
      expect(oneLineOf(words, 200, 12)).toBe(`${Array.from(words).slice(0, fitting).join("")}…`);
      expect([lines(fitting), lines(fitting + 1)]).toEqual([1, 2]);
    },
  );

  test("are only the sign of the rest where not even one fits", () => {
    expect(oneLineOf("Alder", 5, 12)).toBe("…");
  });
});
