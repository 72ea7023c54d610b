import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { cents, pieces } from "../../../src/core/base/units";
import { compareCounts, isEmpty, type Comparison } from "../../../src/core/revisions/compareCounts";
import type { SumDifference } from "../../../src/core/revisions/compareLines";
import type { ChangedOpening } from "../../../src/core/revisions/compareOpenings";
import type { MarkAnswer } from "../../../src/core/revisions/markPairs";
import { againstOrders, orderedOf } from "../../../src/core/revisions/ordered";
import { anyCount, countWith, issuedLine, opening } from "./anyCounts";

/** The comparison as it must be the other way round. */
function turned({ openings, hardware, isComplete, currency }: Comparison): Comparison {
  const changed = <Changed extends ChangedOpening>(each: Changed): Changed => ({
    ...each,
    from: each.to,
    to: each.from,
    changes: each.changes.map(({ field, from, to }) => ({ field, from: to, to: from })),
  });
  const sum = (each: SumDifference): SumDifference => ({
    ...each,
    quantity: 0 - each.quantity,
    toOrder: 0 - each.toOrder,
    cost: each.cost === null ? null : cents(0 - each.cost),
  });
  return {
    openings: {
      added: openings.removed,
      removed: openings.added,
      changed: openings.changed.map(changed),
      renamed: openings.renamed.map(changed),
      guesses: openings.guesses.map(changed),
      refused: openings.refused.map(({ job, from, to }) => ({ job, from: to, to: from })),
      notGuessed: openings.notGuessed,
    },
    hardware: {
      lines: hardware.lines.map((line) => ({
        ...line,
        from: line.to,
        to: line.from,
        quantity: 0 - line.quantity,
        toOrder: 0 - line.toOrder,
        cost: line.cost === null ? null : cents(0 - line.cost),
      })),
      items: hardware.items.map(sum),
      jobs: hardware.jobs.map(sum),
      total: sum(hardware.total),
    },
    isComplete: { from: isComplete.to, to: isComplete.from },
    currency: { from: currency.to, to: currency.from },
  };
}

const marks = fc.constantFrom("A-1", "A-2", "A-10", "A-11", "B-1", "B1");
const anyAnswer: fc.Arbitrary<MarkAnswer> = fc.record({
  job: fc.constantFrom("Crib", "Cage"),
  from: marks,
  to: marks,
  isSame: fc.boolean(),
});

describe("two counts", () => {
  test("that are the same differ in nothing", () => {
    fc.assert(
      fc.property(anyCount, fc.array(anyAnswer), (count, answers) => {
        expect(isEmpty(compareCounts(count, count, answers))).toBe(true);
      }),
    );
  });

  test("turned round differ in the opposite, whatever was said of marks", () => {
    fc.assert(
      fc.property(anyCount, anyCount, fc.array(anyAnswer), (one, other, answers) => {
        const there = compareCounts(one, other, answers);
        expect(compareCounts(other, one, answers)).toEqual(turned(there));
      }),
      { numRuns: 1000 },
    );
  });

  test("account for every opening once", () => {
    fc.assert(
      fc.property(anyCount, anyCount, (one, other) => {
        const { added, removed, changed, renamed, guesses } = compareCounts(one, other).openings;
        const pairs = [...changed, ...renamed, ...guesses];
        const older = [...removed, ...pairs.map(({ from }) => from)];
        const newer = [...added, ...pairs.map(({ to }) => to)];
        for (const [list, all] of [
          [older, one.openings],
          [newer, other.openings],
        ] as const) {
          expect(new Set(list).size).toBe(list.length);
          expect(all).toEqual(expect.arrayContaining([...list]));
        }
        expect(newer.length - older.length).toBe(other.openings.length - one.openings.length);
      }),
    );
  });

  test("have differences by item and by job that add up to that of all", () => {
    fc.assert(
      fc.property(anyCount, anyCount, (one, other) => {
        const { lines, items, jobs, total } = compareCounts(one, other).hardware;
        for (const sums of [items, jobs]) {
          expect(sums.reduce((sum, each) => sum + each.quantity, 0)).toBe(total.quantity);
          expect(sums.reduce((sum, each) => sum + (each.cost ?? 0), 0)).toBe(total.cost ?? 0);
        }
        expect(lines.reduce((sum, each) => sum + each.toOrder, 0)).toBe(total.toOrder);
      }),
    );
  });
});

describe("openings", () => {
  const sizes = { width: 96, height: 84, hand: "left" };

  test("are added, removed and changed, with what from and what to", () => {
    const from = countWith([
      opening("A-1", sizes),
      opening("A-2", { width: 36 }, { type: "Hinged door" }),
    ]);
    const to = countWith([
      opening("a-1 ", { width: 72, height: 84 }, { quantity: 2 }),
      opening("C-9", { width: 48, height: 96 }),
    ]);
    const { openings } = compareCounts(from, to);
    expect(openings.added.map(({ mark }) => mark)).toEqual(["C-9"]);
    expect(openings.removed.map(({ mark }) => mark)).toEqual(["A-2"]);
    expect(
      openings.changed.flatMap(({ changes }) =>
        changes.map(({ field, from: one, to: other }) => [field.label, one, other]),
      ),
    ).toEqual([
      ["Quantity", 1, 2],
      ["Hand", "left", null],
      ["Width", 96, 72],
    ]);
  });

  test("that only have another mark are a guess to confirm, and neither added nor removed", () => {
    const from = countWith([opening("D-1", sizes), opening("D-2", { width: 36, height: 84 })]);
    const to = countWith([opening("D-101", sizes), opening("D-2", { width: 36, height: 84 })]);
    const { openings } = compareCounts(from, to);
    expect(openings).toMatchObject({ added: [], removed: [], changed: [], renamed: [] });
    expect(openings.guesses).toMatchObject([{ from: { mark: "D-1" }, to: { mark: "D-101" } }]);
    expect(openings.guesses[0]?.likeness).toBeGreaterThan(0.85);

    const answer = { job: "crib", from: "D-1", to: "D-101" };
    const yes = compareCounts(from, to, [{ ...answer, isSame: true }]).openings;
    expect(yes).toMatchObject({ guesses: [], renamed: [{ changes: [] }] });
    const no = compareCounts(from, to, [{ ...answer, isSame: false }]).openings;
    expect(no).toMatchObject({
      guesses: [],
      renamed: [],
      refused: [{ job: "Crib", from: "D-1", to: "D-101" }],
    });
    expect([no.added.length, no.removed.length]).toEqual([1, 1]);
  });

  test("of which several are alike are paired by mark and place", () => {
    const from = countWith(["D-1", "D-2", "D-3"].map((mark) => opening(mark, sizes)));
    const to = countWith(["D-1A", "D-2A", "D-3A"].map((mark) => opening(mark, sizes)));
    const { guesses } = compareCounts(from, to).openings;
    expect(guesses.map((each) => `${each.from.mark} ${each.to.mark}`).sort()).toEqual([
      "D-1 D-1A",
      "D-2 D-2A",
      "D-3 D-3A",
    ]);
  });

  test("of which too many came and went are no guess, but what a person said of them holds", () => {
    const many = (prefix: string) =>
      countWith(Array.from({ length: 502 }, (_, index) => opening(`${prefix}${index}`, sizes)));
    const said = [{ job: "Crib", from: "D-7", to: "E-9", isSame: true }];
    const { openings } = compareCounts(many("D-"), many("E-"), said);
    expect(openings.guesses).toEqual([]);
    expect(openings.notGuessed).toEqual(["Crib"]);
    expect(openings.renamed).toMatchObject([{ from: { mark: "D-7" }, to: { mark: "E-9" } }]);
  });

  test("of another job are never a guess", () => {
    const from = countWith([opening("D-1", sizes)]);
    const to = countWith([opening("D-101", sizes, { job: "Cage" })]);
    expect(compareCounts(from, to).openings.guesses).toEqual([]);
  });
});

describe("hardware", () => {
  test("differs in pieces and money, and an unknown cost stays unknown", () => {
    const from = countWith(
      [],
      [issuedLine("NUT", 10), issuedLine("JAMB", 2), issuedLine("HOOK", 1)],
    );
    const to = countWith(
      [],
      [issuedLine("NUT", 14), issuedLine("JAMB", 2, { cost: null }), issuedLine("HOOK", 1)],
    );
    const { lines, total } = compareCounts(from, to).hardware;
    expect(lines.map(({ item, quantity, cost }) => [item, quantity, cost])).toEqual([
      ["JAMB", 0, null],
      ["NUT", 4, 400],
    ]);
    expect(total).toMatchObject({ quantity: 4, cost: 400, unknown: 1 });
  });

  test("in two currencies is not compared in money", () => {
    const from = countWith([], [issuedLine("NUT", 10)]);
    const to = countWith([], [issuedLine("NUT", 11)], { currency: "EUR" });
    expect(compareCounts(from, to).hardware.total).toMatchObject({ quantity: 1, cost: null });
  });
});

test("what is ordered already is held against what is needed now", () => {
  const now = countWith([], [issuedLine("NUT", 14, { spares: pieces(2) }), issuedLine("JAMB", 2)]);
  const given = (item: string, count: number) => ({
    job: "CRIB",
    item,
    size: [],
    pieces: pieces(count),
  });
  const lines = againstOrders(
    now,
    orderedOf({
      supplied: [given("nut", 1), given("GONE", 3)],
      orderedForJobs: [given("NUT", 9), given("JAMB", 5)],
    }),
  );
  expect(
    lines.map(({ item, needed, stillToOrder, tooMany }) => [item, needed, stillToOrder, tooMany]),
  ).toEqual([
    ["nut", 16, 6, 0],
    ["GONE", 0, 0, 3],
    ["JAMB", 2, 0, 3],
  ]);
  expect(lines[0]).toMatchObject({ ordered: 10, come: 1 });
});
