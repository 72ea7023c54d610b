/** Hanging loads of counted openings, from the parts of the leaf to the verdict. */
import { describe, expect, test } from "@jest/globals";
import type { CellValue } from "../../../../src/core/base/cell";
import {
  jobLoads,
  loadRules,
  type JobLoads,
} from "../../../../src/core/pricing/loads/openingLoads";
import type { RateKey } from "../../../../src/core/pricing/rates/rateRows";
import { rateReader } from "../../../../src/core/pricing/rates/rates";
import { dollars, estimateOf, ratesOf, type OpeningWords } from "../pricedJobs";

type Entered = Readonly<Partial<Record<RateKey, CellValue>>>;

function loadsOf(opening: Omit<OpeningWords, "mark">, entered: Entered = {}): JobLoads {
  const result = estimateOf([{ mark: "A-1", ...opening }]);
  const [job] = result.jobs;
  if (job === undefined) throw new Error("no job");
  return jobLoads(
    job.takeOff,
    result.items,
    loadRules(rateReader(ratesOf(entered), "North", dollars)),
  );
}
function only(loads: JobLoads) {
  const [one] = loads.openings;
  if (one === undefined) throw new Error("nothing hangs");
  return one;
}

/** 8 ft x 7 ft on a post of 8 ft, with a tail post: three hangers, one leaf of two panels. */
const wide = {};
/** All of it far away from any limit. */
const generous: Entered = {
  trolleyCarries: 5000,
  hangerCarries: 5000,
  trackBends: 1_000_000,
  jointBends: 1_000_000,
  sinksOver: 1,
  trackInertia: 1,
};

describe("the leaf's weight", () => {
  test("is that of its parts by the items, piece by piece", () => {
    const { parts, leafWeight, leaves } = only(loadsOf(wide));
    const weightOf = (name: string) => parts.parts.find((part) => part.name === name)?.weight;
    // The starter's: 1.45 lb/sq ft, 1.1 and 1.2 lb/ft, 8.5, 2.4 and 0.25 lb each.
    expect(weightOf("PANEL")).toBeCloseTo(8 * 7 * 1.45, 9);
    expect(weightOf("SPLICE")).toBeCloseTo(8 * 1.1, 9);
    expect(weightOf("ANGLE")).toBeCloseTo(8 * 1.2, 9);
    expect([weightOf("STILE"), weightOf("TROLLEY"), weightOf("CLAMP PANEL")]).toEqual([
      8.5, 4.8, 1.5,
    ]);
    expect(parts.notWeighed).toEqual([]);
    expect(leaves).toBe(1);
    expect(leafWeight).toBeCloseTo(
      parts.parts.reduce((sum, part) => sum + (part.weight ?? 0), 0),
      9,
    );
  });

  test("has nothing of what stands still", () => {
    const names = only(loadsOf(wide)).parts.parts.map(({ name }) => name);
    for (const standing of [
      "JAMB",
      "STRIKE",
      "TRACK",
      "CLAMP TRACK",
      "GUIDE",
      "BRACKET",
      "FA 1/4",
    ]) {
      expect(names).not.toContain(standing);
    }
  });

  test("takes panels by mesh and frame where both are entered: ISO 9044's 0.736 lb/sq ft", () => {
    const entered = { meshOpening: 1.5, meshWire: 0.135, frameWeight: 1.2 };
    const { parts } = only(loadsOf(wide, entered));
    const sum = (end: string) =>
      parts.parts
        .filter(({ name }) => name.endsWith(end))
        .reduce((all, { weight }) => all + (weight ?? 0), 0);
    expect(sum(": mesh") / (8 * 7)).toBeCloseTo(0.736, 3);
    expect(sum(": frame")).toBeCloseTo(2 * 2 * (4 + 7) * 1.2, 9);
    expect(parts.parts.some(({ name }) => name === "PANEL")).toBe(false);
  });

  test("of a bi-parting door is each leaf's own", () => {
    const { leaves, leafWeight, parts, loads } = only(
      loadsOf({ type: "bi-parting sliding door", width: "12'", postHeight: "10'" }),
    );
    expect(leaves).toBe(2);
    expect((leafWeight ?? 0) * 2).toBeCloseTo(parts.weight, 9);
    expect(loads?.trolleys).toHaveLength(4);
  });
});

describe("the loads", () => {
  test("half the leaf on each trolley, and on a hanger no more than leaf and track together", () => {
    const { leafWeight, loads } = only(loadsOf(wide));
    expect(loads?.trolleys.map(({ load }) => load)).toEqual([
      expect.closeTo((leafWeight ?? 0) / 2, 9),
      expect.closeTo((leafWeight ?? 0) / 2, 9),
    ]);
    expect(loads?.hangers.map(({ at }) => at)).toEqual([-1, 97, 191]);
    // Track by its item: 2.6 lb/ft, half of both spans on the middle hanger.
    const track = (2.6 * (192 / 12)) / 2;
    for (const { load } of loads?.hangers ?? []) {
      expect(load).toBeLessThanOrEqual((leafWeight ?? 0) + track);
    }
    // Above 8 ft there are two sections of track, with a joint an inch from the middle hanger.
    const joints = only(loadsOf({ width: "9'" })).loads?.joints ?? [];
    expect(joints.map(({ at }) => at)).toEqual([108]);
  });

  test("bend a span as the AISC beam formula for two equal moving loads says", () => {
    const { leafWeight, loads } = only(loadsOf(wide, { trackWeight: 0 }));
    const [span] = loads?.spans ?? [];
    // Trolleys 48 in apart under a span of 98 in. AISC: for a <= 0.586 l the largest moment is
    // P (l - a/2)^2 / (2 l), P on each trolley (value from memory).
    const each = (leafWeight ?? 0) / 2;
    expect(span?.moment).toBeCloseTo((each * (98 - 24) ** 2) / (2 * 98), 6);
  });

  test("jolts multiply what moves", () => {
    const [still, moving] = [loadsOf(wide), loadsOf(wide, { jolt: 1.25 })].map((loads) =>
      Math.max(...(only(loads).loads?.trolleys ?? []).map(({ load }) => load)),
    );
    expect(moving).toBeCloseTo((still ?? 0) * 1.25, 9);
  });
});

describe("the verdict", () => {
  test("without any capacity is not checked, and one note says so for the job", () => {
    const loads = loadsOf(wide);
    expect(only(loads).checked.verdict).toBe("not checked");
    expect(loads.findings.map(({ code, level }) => [code, level])).toEqual([
      ["no-capacities", "note"],
    ]);
    expect(loads.findings[0]?.message).toContain("No hanging load of North is checked");
  });

  test("within all that was entered", () => {
    const loads = loadsOf(wide, generous);
    expect(only(loads).checked.verdict).toBe("within");
    expect(loads.findings).toEqual([]);
  });

  test.each<readonly [RateKey, CellValue, string]>([
    ["trolleyCarries", 20, "trolley-over-capacity"],
    ["hangerCarries", 20, "hanger-over-capacity"],
    ["trackBends", 100, "track-over-capacity"],
    ["jointBends", 1, "joint-over-capacity"],
    ["sinksOver", 90_000, "deflection-over-capacity"],
  ])("over %s is a stop at the opening's row", (key, value, code) => {
    const loads = loadsOf({ width: "9'" }, { ...generous, [key]: value });
    expect(only(loads).checked.verdict).toBe("over");
    expect(loads.findings.length).toBeGreaterThan(0);
    for (const finding of loads.findings) {
      expect(finding).toMatchObject({ code, level: "stop", mark: "A-1", job: "North" });
      expect(finding.place).toEqual({ sheet: "Schedule", row: 1, column: 0 });
      expect(finding.message).toContain("licensed engineer");
    }
  });

  test("some capacities entered and others not is not checked, and names what is missing", () => {
    const loads = loadsOf(wide, { ...generous, trackBends: null });
    expect(only(loads).checked.verdict).toBe("not checked");
    expect(loads.findings.map(({ message }) => message)).toEqual([
      expect.stringContaining("Not checked: track."),
    ]);
  });

  test("trolleys beyond the middle of the leaf would let it tip", () => {
    const loads = loadsOf(wide, { ...generous, trolleyFromEdge: 60 });
    expect(loads.findings.map(({ code }) => code)).toEqual(["leaf-tips"]);
  });
});

describe("counted again", () => {
  const doors = ["4'", "8'", "9'"].map((width, index) => ({ mark: `D${index}`, width }));
  const result = estimateOf([...doors, { job: "South", mark: "D9", width: "6'" }]);
  const rulesOf = (entered: Entered) => loadRules(rateReader(ratesOf(entered), "North", dollars));
  const of = (entered: Entered, items = result.items) =>
    result.jobs.map(({ takeOff }) => jobLoads(takeOff, items, rulesOf(entered)));

  test("openings that did not change keep the loads that they had", () => {
    const [before, again] = [of(generous), of(generous)];
    expect(again.map(({ openings }) => openings.length)).toEqual([3, 1]);
    for (const [job, { openings }] of again.entries()) {
      for (const [index, one] of openings.entries()) {
        expect(one).toBe(before[job]?.openings[index]);
      }
    }
    expect(again).toEqual(before);
  });

  test("by another capacity, or other items, they have other ones", () => {
    const trolley = (loads: readonly JobLoads[]) => loads[0]?.openings[1]?.checked.verdict;
    expect([of(generous), of({ ...generous, trolleyCarries: 20 })].map(trolley)).toEqual([
      "within",
      "over",
    ]);
    expect(trolley(of(generous))).toBe("within");
    const without = new Map([...result.items].filter(([code]) => !code.startsWith("panel")));
    expect(without.size).toBeLessThan(result.items.size);
    expect(of(generous, without)[0]?.openings[1]?.leafWeight).toBeNull();
  });
});

test("a hinged door hangs from no track", () => {
  const loads = loadsOf({ type: "hinged door", width: "3'" }, generous);
  expect([loads.openings, loads.findings]).toEqual([[], []]);
});
