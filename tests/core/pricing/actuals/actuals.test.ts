import { describe, expect, test } from "@jest/globals";
import { cents, minutes, pieces } from "../../../../src/core/base/units";
import {
  bagDifferences,
  costDifferences,
  jobOutcome,
  type JobActuals,
} from "../../../../src/core/pricing/actuals/actuals";
import { suggestMinutes, suggestSpares } from "../../../../src/core/pricing/actuals/suggestions";

/** `"Track 100 120"` reads: 100 estimated, 120 actual; a dash was not typed. */
const read = (text: string) => {
  const [name = "", estimated = "", actual = ""] = text.split(" ");
  return { name, estimated: Number(estimated), actual: actual === "-" ? null : Number(actual) };
};
const job = (
  name: string,
  parts: { costs?: string[]; bags?: string[]; rows?: number[]; pieces?: string[] },
): JobActuals => ({
  job: name,
  costs: (parts.costs ?? []).map(read).map(({ name: of, estimated, actual }) => ({
    name: of,
    estimated: cents(estimated),
    actual: actual === null ? null : cents(actual),
  })),
  bags: (parts.bags ?? []).map(read).map(({ name: bag, estimated, actual }) => ({
    bag,
    estimated: minutes(estimated),
    actual: actual === null ? null : minutes(actual),
    rows: parts.rows ?? [3, 4, 5],
  })),
  pieces: (parts.pieces ?? []).map(read).map(({ name: item, estimated, actual }) => ({
    item,
    counted: pieces(estimated),
    used: actual === null ? null : pieces(actual),
  })),
});

describe("actual against estimate", () => {
  const north = job("North", { costs: ["Track 10000 11000", "Labour 5000 4000", "Freight 900 -"] });
  const south = job("South", { costs: ["Track 2000 2500"] });

  test("by family, over every job in which it was typed", () => {
    expect(costDifferences([north, south])).toEqual([
      {
        name: "Track",
        estimated: 12000,
        actual: 13500,
        over: 1500,
        share: 0.125,
        jobs: ["North", "South"],
      },
      { name: "Labour", estimated: 5000, actual: 4000, over: -1000, share: -0.2, jobs: ["North"] },
    ]);
  });

  test("of one job, with the estimate standing in for what was not typed", () => {
    expect(jobOutcome(north)).toEqual({
      job: "North",
      estimated: 15_900,
      actual: 15_900,
      over: 0,
      notTyped: ["Freight"],
    });
  });

  test("by bag, and without a share where nothing was estimated", () => {
    expect(bagDifferences([job("North", { bags: ["Jamb 0 15", "Track 60 -"] })])).toEqual([
      { name: "Jamb", estimated: 0, actual: 15, over: 15, share: null, jobs: ["North"] },
    ]);
  });
});

describe("suggested minutes", () => {
  const rows = [
    { row: "parts 3", number: 3, bag: "Track", item: "TRACK", minutes: "20" },
    { row: "parts 4", number: 4, bag: "Track", item: "PLATE", minutes: "6 * hangers" },
    { row: "parts 5", number: 5, bag: "Jamb", item: "JAMB", minutes: "12" },
  ];

  test("are in proportion to what the bag took, for each of its rows", () => {
    const jobs = [
      job("North", { bags: ["Track 100 130"] }),
      job("South", { bags: ["Track 100 110"] }),
    ];
    expect(suggestMinutes(jobs, rows)).toEqual([
      {
        kind: "minutes",
        row: "parts 3",
        item: "TRACK",
        from: "20",
        to: "24",
        because: "Track took 240 min where 200 min were estimated, in 2 jobs: times 1.2",
      },
      expect.objectContaining({ row: "parts 4", from: "6 * hangers", to: "(6 * hangers) * 1.2" }),
    ]);
  });

  test.each([
    ["a bag that took nearly as long as estimated", "Track 100 104"],
    ["a bag that nobody timed", "Track 100 -"],
    ["a bag that nothing was estimated for", "Track 0 30"],
    ["a bag that no row is of", "Guide 100 200"],
  ])("are none for %s", (_what, bag) => {
    expect(suggestMinutes([job("North", { bags: [bag] })], rows)).toEqual([]);
  });

  test("are none for rows that only other opening types have, or jobs that nobody timed", () => {
    const jobs = [
      job("North", { bags: ["Track 100 130"], rows: [3] }),
      job("South", { bags: ["Track 100 -"], rows: [4] }),
    ];
    expect(suggestMinutes(jobs, rows).map(({ row }) => row)).toEqual(["parts 3"]);
  });

  test("go down as well as up", () => {
    const [only] = suggestMinutes([job("North", { bags: ["Jamb 100 75"] })], rows);
    expect(only).toMatchObject({ row: "parts 5", from: "12", to: "9" });
  });
});

describe("suggested spares", () => {
  const items = [{ item: "HN", sparesPercent: 2 }];

  test.each([
    ["cover the job that needed most", ["HN 100 104", "HN 200 230"], "15"],
    ["are a whole percentage, rounded up", ["HN 300 310"], "4"],
    ["are exact where the share is whole: 7 of 140", ["HN 140 147"], "5"],
    ["go down to none where no job needed any", ["HN 100 99"], "0"],
  ])("%s", (_what, pairs, to) => {
    const jobs = pairs.map((pair, index) => job(`Job ${index}`, { pieces: [pair] }));
    expect(suggestSpares(jobs, items)).toMatchObject([
      { kind: "spares", row: "HN", from: "2", to },
    ]);
  });

  test("say what they are from", () => {
    const jobs = [job("North", { pieces: ["HN 300 310"] })];
    expect(suggestSpares(jobs, items)[0]?.because).toBe(
      "310 used where 300 were counted, in 1 job; the most in one was 3.3 % more",
    );
  });

  test.each([
    ["the spares already do", ["HN 100 102"]],
    ["nobody typed what was used", ["HN 100 -"]],
    ["the job counted none", ["HN 0 3"]],
    ["another item was used", ["CB 10 20"]],
  ])("are none where %s", (_what, pairs) => {
    expect(suggestSpares([job("North", { pieces: pairs })], items)).toEqual([]);
  });
});
