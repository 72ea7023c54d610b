import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { inches, minutes } from "../../../src/core/base/units";
import {
  jobHours,
  otherWork,
  type JobWork,
  type OpeningWork,
} from "../../../src/core/pricing/hours";
import {
  heightFactorFor,
  starterLabourRules,
  type LabourRules,
} from "../../../src/core/pricing/rates/labourRules";

const rules: LabourRules = {
  perOpening: [{ name: "adjust", minutes: minutes(10) }],
  perJob: [
    { name: "mobilise", minutes: minutes(90), basis: "job" },
    { name: "travel", minutes: minutes(30), basis: "person and day" },
    { name: "induction", minutes: minutes(15), basis: "person" },
    { name: "set up", minutes: minutes(20), basis: "day" },
  ],
  heights: [
    { above: inches(96), factor: 1.25 },
    { above: inches(120), factor: 1.5 },
  ],
  crew: [
    { role: "lead", people: 1 },
    { role: "installer", people: 2 },
  ],
  day: minutes(480),
  learning: null,
  basis: "invented for the test",
};

/** `"D1"` of 20 + 30 minutes in two bags. */
const opening = (change: Partial<OpeningWork> = {}): OpeningWork => ({
  mark: "D1",
  quantity: 1,
  workingHeight: inches(84),
  rows: [
    { bag: "Jamb", item: "JAMB", minutesEach: minutes(20), times: 1 },
    { bag: "Track", item: "PLATE", minutesEach: minutes(10), times: 3 },
  ],
  ...change,
});
const job = (openings: readonly OpeningWork[], siteFactor = 1): JobWork => ({
  job: "North",
  openings,
  siteFactor,
});
const none: LabourRules = { ...rules, perOpening: [], perJob: [] };

describe("the hours of an opening", () => {
  const stepsOf = (work: JobWork, by = rules) => {
    const [only] = jobHours(work, by).openings;
    return { says: only?.steps.map(({ says }) => says), minutes: only?.minutes };
  };

  test("are its rows and its fixed minutes, explained", () => {
    expect(stepsOf(job([opening()]))).toEqual({
      says: ["JAMB: 20 min x 1 = 20 min", "PLATE: 10 min x 3 = 30 min", "adjust = 10 min"],
      minutes: 60,
    });
  });

  test("grow by working height, then by site, then by how many are alike", () => {
    const work = job([opening({ workingHeight: inches(108), quantity: 4 })], 1.2);
    expect(stepsOf(work)).toEqual({
      says: [
        "JAMB: 20 min x 1 = 20 min",
        "PLATE: 10 min x 3 = 30 min",
        "adjust = 10 min",
        "above 96 in: 60 min x 1.25 = 75 min",
        "site: 75 min x 1.2 = 90 min",
        "4 alike: 90 min x 4 = 360 min",
      ],
      minutes: 360,
    });
  });

  test("shrink with repeats where the firm sets a learning curve", () => {
    const learning = { model: "unit", rate: 0.9 } as const;
    const { says, minutes: all } = stepsOf(job([opening({ quantity: 4 })]), { ...rules, learning });
    const repeats = 1 + 0.9 + 3 ** Math.log2(0.9) + 0.81;
    expect(all).toBeCloseTo(60 * repeats, 9);
    expect(says?.at(-1)).toBe(
      "4 alike = 3.56 times the first by the 90 % unit curve (Crawford): 60 min x 3.56 = 213.37 min",
    );
  });
});

describe("the factor of a working height", () => {
  test.each([
    [null, undefined],
    [84, undefined],
    [96, undefined],
    [96.1, 1.25],
    [120, 1.25],
    [144, 1.5],
  ])("%s in: %s", (height, factor) => {
    const found = heightFactorFor(height === null ? null : inches(height), rules.heights);
    expect(found?.factor).toBe(factor);
  });
});

describe("the hours of a job", () => {
  test("add what comes with the job, by job, person and day, untouched by factors", () => {
    // 3 people x 480 min a day = 1,440; 30 openings of 60 min x 1.2 = 2,160: two days.
    const hours = jobHours(job([opening({ quantity: 30 })], 1.2), rules);
    expect(hours.days).toBe(2);
    expect(hours.fixed.map(({ says }) => says)).toEqual([
      "mobilise: 90 min = 90 min",
      "travel: 30 min x 6 (per person and day) = 180 min",
      "induction: 15 min x 3 (per person) = 45 min",
      "set up: 20 min x 2 (per day) = 40 min",
    ]);
    expect(hours.minutes).toBeCloseTo(2160 + 90 + 180 + 45 + 40, 9);
    expect(hours.hundredths).toBe(4192); // 2,515 min = 41.916... h
  });

  test("are shared over the crew by people, and nothing is lost", () => {
    const { roles, hundredths } = jobHours(job([opening()]), none);
    expect(roles).toEqual([
      { role: "lead", hundredths: 28 },
      { role: "installer", hundredths: 55 },
    ]);
    expect(hundredths).toBe(83);
  });

  test("are told by bag, with all factors in them", () => {
    const hours = jobHours(job([opening({ quantity: 2 })], 1.5), rules);
    expect(hours.bags).toEqual([
      { bag: "Jamb", minutes: 60, rows: [] },
      { bag: "Track", minutes: 90, rows: [] },
      { bag: otherWork, minutes: 30 + 90 + 90 + 45 + 20, rows: [] },
    ]);
  });

  test("of no openings are the job's own fixed times without a day on the site", () => {
    const hours = jobHours(job([]), rules);
    expect([hours.days, hours.minutes]).toEqual([0, 90 + 45]);
  });

  test("name each item whose minutes are not known, once", () => {
    const rows = [
      { bag: "Track", item: "TRACK", minutesEach: null, times: 1 },
      { bag: "Track", item: "STOP", minutesEach: minutes(5), times: 1 },
    ];
    const hours = jobHours(job([opening({ rows }), opening({ rows, mark: "D2" })]), none);
    expect(hours.minutes).toBe(10);
    expect(hours.findings).toMatchObject([{ code: "minutes-not-known", level: "note" }]);
    expect(hours.findings[0]?.message).toContain("TRACK");
  });

  test("the starter's times say that they are invented", () => {
    expect(starterLabourRules.basis).toContain("invented");
    expect(jobHours(job([opening()]), starterLabourRules).hundredths).toBeGreaterThan(0);
  });
});

describe("any job", () => {
  const anyOpening = fc.record({
    mark: fc.constant("D"),
    quantity: fc.integer({ min: 1, max: 40 }),
    workingHeight: fc.option(fc.integer({ min: 60, max: 200 }).map(inches)),
    rows: fc.array(
      fc.record({
        bag: fc.constantFrom("A", "B"),
        item: fc.constantFrom("X", "Y"),
        minutesEach: fc.option(
          fc.integer({ min: 0, max: 600 }).map((tenths) => minutes(tenths / 10)),
        ),
        times: fc.integer({ min: 0, max: 12 }),
      }),
      { maxLength: 5 },
    ),
  });
  const learning = fc.option(
    fc.record({
      model: fc.constantFrom("unit", "average"),
      rate: fc.integer({ min: 51, max: 100 }).map((hundredths) => hundredths / 100),
    }),
  );

  test("adds up: openings and fixed times, bags, and roles all make the whole", () => {
    fc.assert(
      fc.property(fc.array(anyOpening, { maxLength: 6 }), learning, (openings, curve) => {
        const hours = jobHours(job(openings, 1.1), { ...rules, learning: curve });
        const sum = (parts: readonly { readonly minutes: number }[]) =>
          parts.reduce((total, part) => total + part.minutes, 0);
        expect(sum(hours.openings) + sum(hours.fixed)).toBeCloseTo(hours.minutes, 6);
        expect(sum(hours.bags)).toBeCloseTo(hours.minutes, 6);
        const shared = hours.roles.reduce((total, role) => total + role.hundredths, 0);
        expect(shared).toBe(hours.hundredths);
        expect(Math.abs(hours.hundredths / 100 - hours.minutes / 60)).toBeLessThanOrEqual(0.005001);
      }),
    );
  });
});
