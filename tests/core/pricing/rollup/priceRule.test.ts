import { describe, expect, test } from "@jest/globals";
import { percent } from "../../../../src/core/pricing/rates/percent";
import { readPricePercent, type TypedPercent } from "../../../../src/core/pricing/rollup/priceRule";

const place = { sheet: "Jobs", row: 3, column: 5 };
const read = (
  kind: TypedPercent["kind"],
  typed: string | number,
  target: number | null = 250_000,
) =>
  readPricePercent({ kind, typed, place, job: "North" }, target === null ? null : percent(target));
const codes = (...of: Parameters<typeof read>) => read(...of).findings.map(({ code }) => code);

describe("a typed markup, margin or bond", () => {
  test.each([
    ["markup", 0.3333, 333_300],
    ["margin", "25 %", 250_000],
    ["bond", "1.5%", 15_000],
    ["margin", 0, 0],
    ["markup", -0.05, -50_000],
    ["margin", 0.9, 900_000],
  ] as const)("%s %s is taken without a word", (kind, typed, value) => {
    expect(read(kind, typed, null)).toMatchObject({ percent: value });
    expect(codes(kind, typed, null).filter((code) => code !== "margin-looks-like-markup")).toEqual(
      [],
    );
  });

  test.each([
    ["margin", "plenty", "percent-not-a-number"],
    ["margin", 1, "margin-out-of-range"],
    ["margin", "125 %", "margin-out-of-range"],
    ["markup", "1001 %", "percent-out-of-range"],
    ["markup", -0.95, "percent-out-of-range"],
    ["bond", "9.1%", "percent-out-of-range"],
    ["bond", -0.01, "percent-out-of-range"],
    ["margin", " ", "percent-missing"],
  ] as const)("%s %s gives no price: %s", (kind, typed, code) => {
    const { percent: none, findings } = read(kind, typed);
    expect(none).toBeNull();
    expect(findings).toHaveLength(1);
    expect(findings[0]).toMatchObject({ code, level: "stop", place, job: "North" });
    expect(findings[0]?.message).not.toMatch(/[{}]/);
  });

  test.each([
    ["markup", "25%", 250_000, "markup-is-the-target-margin", "note"],
    ["margin", "33.3%", 250_000, "margin-is-the-target-markup", "note"],
    ["margin", "60%", 250_000, "margin-looks-like-markup", "note"],
    ["markup", 25, null, "percent-read-as", "note"],
    ["margin", 0.0025, null, "percent-tiny", "warn"],
  ] as const)("%s %s is taken and doubted: %s", (kind, typed, target, code, level) => {
    const { findings } = read(kind, typed, target);
    expect(findings.map((finding) => [finding.code, finding.level])).toEqual([[code, level]]);
    expect(findings[0]?.message).not.toMatch(/[{}]/);
  });

  test("says what the typed percentage would come to", () => {
    expect(read("markup", "25%").findings[0]?.message).toBe(
      "A markup of 25 % is the same number as the target margin, but gives a margin of 20 % only. " +
        "For the target margin use a markup of 33.3 %, or price by margin.",
    );
  });
});
