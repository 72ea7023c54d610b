/** An owner's ranges: as typed, for a job, for the picture of swings and for the simulation. */
import { describe, expect, test } from "@jest/globals";
import type { CellValue } from "../../../../src/core/base/cell";
import {
  changeFault,
  rangesOfJob,
  simulationRangesIn,
  starterRanges,
  swingsIn,
  type OwnerRange,
} from "../../../../src/core/pricing/chances/ownerRanges";
import { percent } from "../../../../src/core/pricing/rates/percent";
import { checkRanges, type RangeRow } from "../../../../src/core/pricing/rates/rangeRows";
import { rangeMean } from "../../../../src/core/pricing/chances/ranges";
import { plainJob } from "../jobs";

const row = (
  subject: string,
  job: string,
  [low, likely, high]: readonly [CellValue, CellValue, CellValue],
  shape = "",
): RangeRow => {
  const typed = (value: CellValue, column: number) => ({
    value,
    place: { sheet: "Ranges", row: 3, column },
  });
  return {
    subject: typed(subject, 0),
    job: typed(job, 1),
    low: typed(low, 2),
    likely: typed(likely, 3),
    high: typed(high, 4),
    shape: typed(shape, 5),
  };
};
const read = (...rows: readonly RangeRow[]): readonly OwnerRange[] => checkRanges(rows).ranges;
const job = { job: "North", input: plainJob };

describe("as typed", () => {
  test("percentages as text and as a spreadsheet keeps them; a blank likely change is none", () => {
    expect(read(row("Material: Track", "North", ["-5 %", null, 0.1], "Uniform"))).toEqual([
      {
        subject: "material",
        family: "Track",
        job: "North",
        low: -50_000,
        likely: 0,
        high: 100_000,
        shape: "uniform",
      },
    ]);
  });

  test("wages by that word, and by the one that sheets of before have", () => {
    const typed = read(row("Wages", "", [0, 0, 0.1]), row("rate", "", [0, 0, 0.2]));
    expect(typed.map(({ subject }) => subject)).toEqual(["rate", "rate"]);
  });

  test.each<readonly [string, RangeRow, string]>([
    ["another subject", row("weather", "", [0, 0, 0.1]), "range-subject-unknown"],
    ["a family of hours", row("hours: Track", "", [0, 0, 0.1]), "range-subject-unknown"],
    ["ends the wrong way round", row("hours", "", [0.2, 0.1, 0]), "range-wrong"],
    ["a likely change outside", row("hours", "", [0.1, null, 0.2]), "range-wrong"],
    ["more than all of it less", row("hours", "", ["-120 %", 0, 0]), "range-wrong"],
    ["beyond ten times more", row("hours", "", [0, 0, "1001 %"]), "range-wrong"],
    ["words for an end", row("hours", "", ["some", 0, 0.1]), "range-wrong"],
    ["a shape that nobody knows", row("hours", "", [0, 0, 0.1], "lumpy"), "range-wrong"],
  ])("%s is a finding at its cell, and the row is not used", (_what, typed, code) => {
    const { ranges, findings } = checkRanges([typed]);
    expect(ranges).toEqual([]);
    expect(findings).toEqual([
      expect.objectContaining({
        code,
        level: "warn",
        place: { sheet: "Ranges", row: 3, column: 0 },
      }),
    ]);
  });

  test("every starter range can be used", () => {
    expect(starterRanges.map(changeFault)).toEqual(starterRanges.map(() => null));
  });
});

test("a job's own range goes before everyone's, a family's before all families'", () => {
  const ranges = read(
    row("material: Track", "", [0, 0, 0.02]),
    row("material", "north", [0, 0, 0.03]),
    row("material", "South", [0, 0, 0.04]),
    row("material", "", [0, 0, 0.01]),
    row("hours", "", [0, 0, 0.05]),
    row("hours", "", [0, 0, 0.06]),
  );
  const highs = (name: string) =>
    rangesOfJob(ranges, { job: name, input: plainJob }).map((one) => [
      one.family || one.subject,
      one.high,
    ]);
  expect(highs("North")).toEqual([
    ["Fasteners", 30_000],
    ["Track", 30_000],
    ["hours", 60_000],
    ["rate", 0],
    ["freight", 0],
    ["price", 0],
  ]);
  expect(highs("East").slice(0, 2)).toEqual([
    ["Fasteners", 10_000],
    ["Track", 20_000],
  ]);
});

test("a lower price is a discount among the swings", () => {
  const ranges = rangesOfJob(read(row("price", "", ["-4 %", 0, "1 %"])), job);
  expect(swingsIn(ranges).at(-1)).toEqual({
    factor: { kind: "discount" },
    low: percent(-10_000),
    high: percent(40_000),
  });
});

test("factors of the simulation have the mean of the range: a tenth more and a tenth less is as estimated", () => {
  const typed = read(
    row("hours", "", ["-10 %", 0, "10 %"], "triangular"),
    row("freight", "", [0, "10 %", "20 %"], "uniform"),
    row("material: Track", "", ["-6 %", 0, "12 %"]),
  );
  const ranges = simulationRangesIn(rangesOfJob(typed, job));
  expect(rangeMean(ranges.hours)).toBeCloseTo(1, 12);
  expect(rangeMean(ranges.freight)).toBeCloseTo(1.1, 12);
  // (low + 4 likely + high) / 6
  expect(rangeMean(ranges.material.get("Track") ?? ranges.hours)).toBeCloseTo(1.01, 12);
  expect(rangeMean(ranges.material.get("Fasteners") ?? ranges.hours)).toBe(1);
});
