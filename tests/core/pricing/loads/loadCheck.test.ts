import { describe, expect, test } from "@jest/globals";
import { inches, pounds } from "../../../../src/core/base/units";
import {
  checkLoads,
  worstVerdict,
  type LoadCapacities,
} from "../../../../src/core/pricing/loads/loadCheck";
import {
  trackLoads,
  trolleyLoads,
  type HungLeaf,
  type HungTrack,
  type TrackLoads,
} from "../../../../src/core/pricing/loads/trackLoads";

/** A leaf of 240 lb, 96 in wide, that opens by its width over hangers at 0, 96 and 192. */
const leaf: HungLeaf = {
  weight: pounds(240),
  width: inches(96),
  trolleys: [inches(12), inches(84)],
  closed: inches(0),
  open: inches(96),
};
const track: HungTrack = {
  hangers: [0, 192, 96].map(inches),
  joints: [inches(120)],
  weightPerFoot: null,
  inertia: 0.4,
  jolt: 1,
};
const none: LoadCapacities = {
  trolley: null,
  hanger: null,
  track: null,
  joint: null,
  deflectionOver: null,
};
const opening = { job: "North", mark: "D1" };

function loadsOf(leaves: readonly HungLeaf[], on: HungTrack): TrackLoads {
  const loads = trackLoads(leaves, on);
  if (!loads.ok) throw new Error(loads.error.code);
  return loads.value;
}
const codes = (leaves: readonly HungLeaf[], on: HungTrack, capacities: LoadCapacities) =>
  checkLoads(loadsOf(leaves, on), capacities, opening).findings.map(({ code }) => code);

describe("the weight on the trolleys", () => {
  test("is half and half about the middle", () => {
    expect(trolleyLoads(leaf, 1)).toEqual({ ok: true, value: [120, 120] });
  });

  test("goes by levers where the centre of gravity is elsewhere", () => {
    expect(trolleyLoads({ ...leaf, centre: inches(30) }, 1)).toEqual({
      ok: true,
      value: [180, 60],
    });
  });

  test.each([
    ["outside the trolleys", { centre: inches(90) }],
    ["with both trolleys at one place", { trolleys: [inches(48), inches(48)] as const }],
  ])("cannot be carried %s", (_where, change) => {
    expect(trolleyLoads({ ...leaf, ...change }, 2)).toEqual({
      ok: false,
      error: { code: "leaf-tips", leaf: 2 },
    });
  });
});

describe("the loads of an opening", () => {
  test("put most on the hanger that the leaf passes", () => {
    const { hangers } = loadsOf([leaf], track);
    // Middle hanger: one trolley over it, the other 72 in away on a 96 in span.
    expect(hangers.map(({ at }) => at)).toEqual([0, 96, 192]);
    expect(hangers.map(({ load }) => load)).toEqual([
      // closed: trolleys at 12 and 84
      expect.closeTo(120 * (84 / 96 + 12 / 96), 9),
      expect.closeTo(120 * (1 + 24 / 96), 9),
      // open: trolleys at 108 and 180
      expect.closeTo(120 * (12 / 96 + 84 / 96), 9),
    ]);
  });

  test("grow with the jolt factor, in proportion", () => {
    const [still, jolted] = [loadsOf([leaf], track), loadsOf([leaf], { ...track, jolt: 1.5 })];
    still.hangers.forEach(({ load }, index) => {
      expect(jolted.hangers[index]?.load).toBeCloseTo(load * 1.5, 9);
    });
    expect(jolted.spans[0]?.moment).toBeCloseTo((still.spans[0]?.moment ?? 0) * 1.5, 9);
  });

  test("count the track's own weight: half of each span beside a hanger, w l^2 / 8 between", () => {
    const heavy = loadsOf([], { ...track, weightPerFoot: 6 });
    expect(heavy.hangers.map(({ load }) => load)).toEqual([24, 48, 24]);
    expect(heavy.spans[0]?.moment).toBeCloseTo((0.5 * 96 ** 2) / 8, 9);
    // AISC Table 3-23, uniform load: 5 w l^4 / (384 E I).
    expect(heavy.spans[0]?.deflection).toBeCloseTo((5 * 0.5 * 96 ** 4) / (384 * 29e6 * 0.4), 12);
    // M = w x (l - x) / 2 at the joint, 24 in from the middle hanger.
    expect(heavy.joints[0]?.moment).toBeCloseTo((0.5 * 24 * 72) / 2, 9);
  });

  test("of two leaves add up, since each travels by itself", () => {
    const other = { ...leaf, closed: inches(96), open: inches(0) };
    const [one, two] = [loadsOf([leaf], track), loadsOf([leaf, other], track)];
    one.hangers.forEach(({ load }, index) => {
      expect(two.hangers[index]?.load).toBeCloseTo(load * 2, 9);
    });
    expect(two.trolleys).toHaveLength(4);
  });

  test("leave out deflection where the inertia is not known, and joints off the track", () => {
    const loads = loadsOf([leaf], { ...track, inertia: null, joints: [inches(250)] });
    expect(loads.spans.map(({ deflection }) => deflection)).toEqual([null, null]);
    expect(loads.joints).toEqual([{ at: 250, moment: null }]);
  });
});

describe("the check against capacities", () => {
  const enough: LoadCapacities = {
    trolley: pounds(120),
    hanger: pounds(150),
    track: 10_000,
    joint: 10_000,
    deflectionOver: 10,
  };

  test("passes loads up to and including the capacity", () => {
    const { verdict, findings } = checkLoads(loadsOf([leaf], track), enough, opening);
    expect([verdict, findings]).toEqual(["within", []]);
  });

  test.each([
    ["trolley-over-capacity", { trolley: pounds(119.9) }, 2],
    ["hanger-over-capacity", { hanger: pounds(149.9) }, 1],
    ["track-over-capacity", { track: 100 }, 2],
    ["joint-over-capacity", { joint: 100 }, 1],
    ["deflection-over-capacity", { deflectionOver: 1e6 }, 2],
  ])("stops once with %s, and says at how many places", (code, change, places) => {
    const checked = checkLoads(loadsOf([leaf], track), { ...enough, ...change }, opening);
    expect(checked.verdict).toBe("over");
    expect(checked.findings).toEqual([
      expect.objectContaining({ code, level: "stop", ...opening }),
    ]);
    const [{ message } = { message: "" }] = checked.findings;
    expect(message).not.toMatch(/[{}]/);
    expect(message.includes("(and at 1 more place)")).toBe(places === 2);
  });

  test("names the place that is furthest over", () => {
    const loads = loadsOf([leaf], { ...track, hangers: [0, 80, 192].map(inches) });
    const moments = loads.spans.map(({ moment }) => moment);
    const [, longer = NaN] = moments;
    expect(longer).toBe(Math.max(...moments));
    const { findings } = checkLoads(loads, { ...enough, track: 100 }, opening);
    const bending = findings.find(({ code }) => code === "track-over-capacity");
    expect(bending?.message).toContain(
      "span 80 to 192 in from the opening's edge on the latch side (and at 1 more place)",
    );
  });

  test("says what was not checked, in one note, and never passes it", () => {
    const checked = checkLoads(loadsOf([leaf], track), none, opening);
    expect(checked.verdict).toBe("not checked");
    expect(checked.findings).toHaveLength(1);
    expect(checked.findings[0]).toMatchObject({ code: "loads-not-checked", level: "note" });
    expect(checked.findings[0]?.message).toContain("trolley, hanger, track, joint, deflection");
  });

  test("stops a leaf that runs past its last hanger, whatever the capacities", () => {
    const short = { ...track, hangers: [0, 96].map(inches) };
    expect(codes([leaf], short, enough)).toContain("leaf-beyond-last-hanger");
    expect(checkLoads(loadsOf([leaf], short), enough, opening).verdict).toBe("over");
  });

  test("stops a leaf that would tip, and notes one whose weight is not known", () => {
    const tipped = trackLoads([{ ...leaf, centre: inches(0) }], track);
    if (tipped.ok) throw new Error("It should tip.");
    expect(checkLoads(tipped.error, enough, opening)).toMatchObject({
      verdict: "over",
      findings: [{ code: "leaf-tips", level: "stop" }],
    });
    expect(checkLoads(null, enough, opening)).toMatchObject({
      verdict: "not checked",
      findings: [{ code: "leaf-weight-not-known", level: "note" }],
    });
  });

  test("comes with its caution, whatever it says", () => {
    for (const loads of [null, loadsOf([leaf], track), { code: "leaf-tips", leaf: 1 } as const]) {
      expect(checkLoads(loads, enough, opening).caution).toContain("licensed engineer");
    }
  });

  test.each([
    [["within", "not checked", "over"], "over"],
    [["within", "not checked"], "not checked"],
    [["within", "within"], "within"],
    [[], "not checked"],
  ] as const)("%j together are %s", (verdicts, worst) => {
    expect(worstVerdict(verdicts)).toBe(worst);
  });
});
