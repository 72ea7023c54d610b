import { beforeAll, describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { loadHighsSolver } from "../../../../src/adapters/highs/highsSolver";
import { provenCost } from "./checkBound";
import { checkCutPlan } from "../../../../src/core/purchasing/cutting/checkCutPlan";
import {
  cutPlan,
  cutPlanSteps,
  type CutProgress,
} from "../../../../src/core/purchasing/cutting/cutPlan";
import type { CutPlan, CutProblem } from "../../../../src/core/purchasing/cutting/cutProblem";
import type { Solver } from "../../../../src/core/purchasing/cutting/solver";
import { problemOf, shopInstance, thirteenWidths } from "./instances";

let highs: Solver | null = null;
beforeAll(async () => {
  highs = await loadHighsSolver();
});

/** Each bar in one line: `240: 96 + 96, 48 left`. */
const lines = (plan: CutPlan): readonly string[] =>
  plan.bars.map((bar) => {
    const held = bar.pieces.map((piece) => piece.length).join(" + ");
    return `${bar.length}: ${held}, ${bar.offcut} ${bar.kept ? "kept" : "scrap"}`;
  });

const withoutSolver = (problem: CutProblem): CutPlan => cutPlan(problem, { solver: null });

const smallProblem: fc.Arbitrary<CutProblem> = fc
  .record({
    cut: fc.array(fc.tuple(fc.integer({ min: 1, max: 40 }), fc.integer({ min: 1, max: 4 })), {
      minLength: 1,
      maxLength: 6,
    }),
    stock: fc.array(fc.tuple(fc.integer({ min: 8, max: 60 }), fc.integer({ min: 0, max: 9 })), {
      maxLength: 3,
    }),
    onHand: fc.array(fc.tuple(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 0, max: 2 })), {
      maxLength: 3,
    }),
    kerf: fc.integer({ min: 0, max: 2 }),
    endTrim: fc.integer({ min: 0, max: 3 }),
    shortestOffcut: fc.integer({ min: 0, max: 12 }),
  })
  .map(problemOf);

describe("a bar", () => {
  test("loses a kerf between two pieces and one before what is left", () => {
    const plan = withoutSolver(problemOf({ cut: [[96, 2]], stock: [[240, 5000]], kerf: 1 }));
    expect(lines(plan)).toEqual(["240: 96 + 96, 46 kept"]);
  });

  test("needs no cut behind a last piece that ends where the bar ends", () => {
    const plan = withoutSolver(problemOf({ cut: [[100, 2]], stock: [[201, 5000]], kerf: 1 }));
    expect(lines(plan)).toEqual(["201: 100 + 100, 0 scrap"]);
  });

  test("is eaten up by the blade where less than a kerf is left", () => {
    const plan = withoutSolver(problemOf({ cut: [[100, 2]], stock: [[202, 5000]], kerf: 3 }));
    expect(lines(plan)).toEqual(["202: 100, 99 kept", "202: 100, 99 kept"]);
    const roomier = withoutSolver(problemOf({ cut: [[100, 2]], stock: [[205, 5000]], kerf: 3 }));
    expect(lines(roomier)).toEqual(["205: 100 + 100, 0 scrap"]);
  });

  test("is trimmed when new and not when on hand", () => {
    const problem = problemOf({
      cut: [[100, 2]],
      stock: [[100, 7]],
      onHand: [[100, 1]],
      endTrim: 1,
    });
    const plan = withoutSolver(problem);
    expect(lines(plan)).toEqual(["100: 100, 0 scrap"]);
    expect(plan.unplaced).toEqual([{ job: "A", mark: "M100", length: 100, count: 1 }]);
  });

  test("keeps an offcut from the shortest length worth keeping up", () => {
    const kept = problemOf({ cut: [[60, 1]], stock: [[100, 7]], shortestOffcut: 40 });
    const scrap = problemOf({ cut: [[60, 1]], stock: [[100, 7]], shortestOffcut: 41 });
    expect(lines(withoutSolver(kept))).toEqual(["100: 60, 40 kept"]);
    expect(lines(withoutSolver(scrap))).toEqual(["100: 60, 40 scrap"]);
  });
});

describe("a plan", () => {
  test("cuts offcuts on hand before it buys, and no more of them than there are", () => {
    const plan = withoutSolver(
      problemOf({ cut: [[50, 4]], stock: [[100, 10]], onHand: [[55, 2]], kerf: 0 }),
    );
    expect(lines(plan)).toEqual(["55: 50, 5 kept", "55: 50, 5 kept", "100: 50 + 50, 0 scrap"]);
    expect(plan.cost).toBe(10);
    expect(plan.proven).toBe(true);
  });

  test("takes the length that costs least for the pieces, not the longest", () => {
    const plan = withoutSolver(
      problemOf({
        cut: [[70, 2]],
        stock: [
          [240, 900],
          [150, 500],
        ],
      }),
    );
    expect(lines(plan)).toEqual(["150: 70 + 70, 10 kept"]);
  });

  test("says which pieces no bar can hold and cuts the others", () => {
    const plan = withoutSolver(
      problemOf({
        cut: [
          [300, 2],
          [90, 1],
        ],
        stock: [[240, 900]],
      }),
    );
    expect(plan.unplaced).toEqual([{ job: "A", mark: "M300", length: 300, count: 2 }]);
    expect(lines(plan)).toEqual(["240: 90, 150 kept"]);
    expect(plan.proven).toBe(false);
  });

  test("with nothing to cut is empty and proven", () => {
    const plan = withoutSolver(problemOf({ cut: [], stock: [[240, 900]] }));
    expect(plan).toMatchObject({ bars: [], cost: 0, lowerBound: 0, proven: true, unplaced: [] });
  });

  test("with no bars at all places nothing", () => {
    const plan = withoutSolver(problemOf({ cut: [[5, 1]], stock: [] }));
    expect(plan).toMatchObject({ bars: [], cost: 0, proven: false });
    expect(plan.unplaced).toHaveLength(1);
  });

  test("gives every piece of every mark its place", () => {
    const plan = withoutSolver(
      problemOf({
        cut: [
          [60, 2, "B", "101"],
          [60, 1, "A", "7"],
        ],
        stock: [[120, 10]],
      }),
    );
    expect(plan.bars.map((bar) => bar.pieces.map(({ job, mark }) => `${job} ${mark}`))).toEqual([
      ["A 7", "B 101"],
      ["B 101"],
    ]);
  });
});

describe("with a solver and without", () => {
  test("any plan can be cut and its bound holds by separate code", () => {
    fc.assert(
      fc.property(smallProblem, fc.boolean(), (problem, solved) => {
        const plan = cutPlan(problem, { solver: solved ? highs : null });
        expect(checkCutPlan(problem, plan)).toEqual([]);
        const proven = provenCost(problem, plan);
        expect(proven).not.toBeNull();
        expect(plan.lowerBound).toBeLessThanOrEqual(proven ?? 0);
      }),
      { numRuns: 100 },
    );
  });

  test("no plan is cheaper than the bound, by trying every way to cut", () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const few = { ...problem, pieces: problem.pieces.slice(0, 3) };
        fc.pre(few.pieces.reduce((sum, piece) => sum + piece.count, 0) <= 6);
        const plan = cutPlan(few, { solver: highs });
        if (plan.unplaced.length > 0) return;
        const least = leastCost(few);
        expect(plan.lowerBound).toBeLessThanOrEqual(least);
        expect(plan.cost).toBeGreaterThanOrEqual(least);
        if (plan.proven) expect(plan.cost).toBe(least);
      }),
      { numRuns: 100 },
    );
  });

  test("lengths too fine for a table are rounded on the safe side only", () => {
    const anyFine = fc
      .array(fc.tuple(fc.integer({ min: 20_000, max: 90_000 }), fc.integer({ min: 1, max: 3 })), {
        minLength: 2,
        maxLength: 6,
      })
      .map((cut) => problemOf({ cut, stock: [[195_073, 5000]], kerf: 101 }));
    fc.assert(
      fc.property(anyFine, (problem) => {
        const plan = cutPlan(problem, { solver: highs });
        expect(checkCutPlan(problem, plan)).toEqual([]);
        expect(plan.lowerBound).toBeLessThanOrEqual(provenCost(problem, plan) ?? Infinity);
        expect(plan.cost - plan.lowerBound).toBeLessThanOrEqual(5000);
      }),
      { numRuns: 5 },
    );
  });

  test("the order of pieces, jobs and stock makes no difference", () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const turned = {
          ...problem,
          pieces: problem.pieces.toReversed(),
          stock: problem.stock.toReversed(),
          onHand: problem.onHand.toReversed(),
        };
        expect(withoutSolver(turned)).toEqual(withoutSolver(problem));
      }),
      { numRuns: 100 },
    );
  });

  test("a solver never lowers the bound or leaves a piece uncut", () => {
    fc.assert(
      fc.property(smallProblem, (problem) => {
        const plain = withoutSolver(problem);
        const solved = cutPlan(problem, { solver: highs });
        fc.pre(plain.unplaced.length === 0);
        expect(solved.unplaced).toEqual([]);
        expect(solved.lowerBound).toBeGreaterThanOrEqual(plain.lowerBound);
      }),
      { numRuns: 100 },
    );
  });

  test("a solver that gives no answers leaves the plan as it was", () => {
    const silent: Solver = {
      openLinear: () => ({
        addColumns: () => undefined,
        setRow: () => undefined,
        solve: () => null,
        close: () => undefined,
      }),
      solveWhole: () => null,
    };
    const plan = cutPlan(thirteenWidths, { solver: silent });
    expect(checkCutPlan(thirteenWidths, plan)).toEqual([]);
    expect(plan.proven).toBe(false);
  });

  test("a solver that lies cannot make a wrong plan or a false proof", () => {
    const liar: Solver = {
      openLinear: (rows) => {
        let columns = 0;
        return {
          addColumns: (more) => {
            columns += more.length;
          },
          setRow: () => undefined,
          solve: () => ({
            quantities: Array.from({ length: columns }, (_, index) => (index % 3) * 7.5 - 1),
            prices: rows.map((_, index) => 10 ** (index % 7) * (index % 2 === 0 ? 1 : -1)),
          }),
          close: () => undefined,
        };
      },
      solveWhole: (_, columns) => columns.map((_column, index) => (index % 2) * 1000),
    };
    const plan = cutPlan(thirteenWidths, { solver: liar });
    expect(checkCutPlan(thirteenWidths, plan)).toEqual([]);
    expect(plan.lowerBound).toBeLessThanOrEqual(730_000);
    expect(plan.lowerBound).toBeLessThanOrEqual(provenCost(thirteenWidths, plan) ?? 0);
  });
});

describe("while it is searched", () => {
  test("every step has a whole plan, and neither cost nor bound ever gets worse", () => {
    let before: CutProgress | null = null;
    for (const step of cutPlanSteps(thirteenWidths, { solver: highs })) {
      expect(checkCutPlan(thirteenWidths, step.plan())).toEqual([]);
      if (before !== null) {
        expect(step.cost).toBeLessThanOrEqual(before.cost);
        expect(step.lowerBound).toBeGreaterThanOrEqual(before.lowerBound);
      }
      before = step;
    }
    expect(before?.step).not.toBe("first fit");
  });

  test("stopped at once it keeps first-fit's plan", () => {
    const steps: string[] = [];
    const plan = cutPlan(thirteenWidths, {
      solver: highs,
      shouldStop: () => true,
      onProgress: ({ step }) => steps.push(step),
    });
    expect(steps).toEqual(["first fit"]);
    expect(checkCutPlan(thirteenWidths, plan)).toEqual([]);
    expect(plan.bars.length).toBeGreaterThan(73);
  });

  test("stopped later it keeps the best so far", () => {
    let asked = 0;
    const problem = shopInstance(40, 400, 1);
    const plan = cutPlan(problem, { solver: highs, shouldStop: () => (asked += 1) > 5 });
    expect(checkCutPlan(problem, plan)).toEqual([]);
  });

  test("two runs take the same steps to the same plan", () => {
    const problem = shopInstance(15, 90, 3);
    expect(cutPlan(problem, { solver: highs })).toEqual(cutPlan(problem, { solver: highs }));
  });
});

describe("the checks", () => {
  const problem = problemOf({ cut: [[96, 3]], stock: [[240, 5000]], kerf: 1, onHand: [[97, 1]] });
  const plan = withoutSolver(problem);
  const [shelf, bar] = plan.bars;
  if (shelf === undefined || bar === undefined) throw new Error("The plan has two bars.");

  test.each<[string, CutPlan]>([
    [
      "a bar too short",
      { ...plan, bars: [shelf, { ...bar, pieces: [...bar.pieces, ...bar.pieces] }] },
    ],
    ["a missing piece", { ...plan, bars: [shelf, { ...bar, pieces: bar.pieces.slice(1) }] }],
    ["a bar never offered", { ...plan, bars: [shelf, { ...bar, price: plan.lowerBound }, bar] }],
    ["an offcut too long", { ...plan, bars: [shelf, { ...bar, offcut: bar.length }] }],
    ["an offcut wrongly scrapped", { ...plan, bars: [shelf, { ...bar, kept: !bar.kept }] }],
    ["an offcut used twice", { ...plan, bars: [shelf, shelf, bar] }],
    ["another cost", { ...plan, cost: shelf.price }],
    ["an empty bar", { ...plan, bars: [shelf, bar, { ...bar, pieces: [] }] }],
    ["a proof of nothing", { ...plan, proven: true, lowerBound: shelf.price }],
  ])("see %s", (_, wrong) => {
    expect(checkCutPlan(problem, plan)).toEqual([]);
    expect(checkCutPlan(problem, wrong)).not.toEqual([]);
  });

  test("see a bound that its values do not prove", () => {
    const solved = cutPlan(thirteenWidths, { solver: highs });
    expect(provenCost(thirteenWidths, solved)).toBe(730_000);
    const flat = solved.boundProof.map(({ length }) => ({ length, value: 1 }));
    expect(provenCost(thirteenWidths, { ...solved, boundProof: flat })).toBeLessThan(730_000);
  });
});

/** The least cost over every way to cut, piece after piece onto any bar; `Infinity` for none. */
function leastCost({ pieces, stock, onHand, saw }: CutProblem): number {
  const lengths = pieces.flatMap(({ length, count }) =>
    Array.from({ length: count }, () => length),
  );
  const offered = [
    ...onHand.flatMap(({ length, count }) =>
      Array.from({ length: count }, () => ({ room: length + saw.kerf, price: 0 })),
    ),
    ...lengths.flatMap(() =>
      stock.map(({ length, price }) => ({ room: length - saw.endTrim + saw.kerf, price })),
    ),
  ];
  let least = Infinity;
  const place = (at: number, left: readonly number[], cost: number): void => {
    if (cost >= least) return;
    const length = lengths[at];
    if (length === undefined) {
      least = cost;
      return;
    }
    const tried = new Set<string>();
    offered.forEach(({ room, price }, index) => {
      const free = left[index] ?? 0;
      const isOpen = free < room;
      const key = `${free} ${isOpen ? "" : price}`;
      if (free < length + saw.kerf || tried.has(key)) return;
      tried.add(key);
      const next = left.with(index, free - length - saw.kerf);
      place(at + 1, next, cost + (isOpen ? 0 : price));
    });
  };
  place(
    0,
    offered.map(({ room }) => room),
    0,
  );
  return least;
}
