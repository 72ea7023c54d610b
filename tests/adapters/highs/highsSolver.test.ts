import { beforeAll, describe, expect, test } from "@jest/globals";
import { loadHighsSolver } from "../../../src/adapters/highs/highsSolver";
import type { Solver, SolverColumn, SolverRow } from "../../../src/core/purchasing/cutting/solver";

let highs: Solver;
beforeAll(async () => {
  const loaded = await loadHighsSolver();
  if (loaded === null) throw new Error("HiGHS runs in Node without anything else.");
  highs = loaded;
});

const atLeast = (least: number): SolverRow => ({ least, most: Infinity });
const column = (cost: number, ...amounts: readonly number[]): SolverColumn => ({
  cost,
  rows: amounts.flatMap((amount, row) => (amount === 0 ? [] : [row])),
  amounts: amounts.filter((amount) => amount !== 0),
});
const limits = { nodes: 1000, shouldStop: () => false };

describe("a linear programme", () => {
  test("grows, changes and is solved again", () => {
    const programme = highs.openLinear([atLeast(3), atLeast(2)]);
    programme.addColumns([column(1, 2, 0), column(1, 0, 2)]);
    expect(Array.from(programme.solve()?.quantities ?? [])).toEqual([1.5, 1]);
    programme.addColumns([column(1, 1, 2)]);
    programme.setRow(0, atLeast(5));
    const answer = programme.solve();
    expect(Array.from(answer?.quantities ?? [])).toEqual([2, 0, 1]);
    expect(Array.from(answer?.prices ?? [])).toEqual([0.5, 0.25]);
    programme.close();
  });

  test("that cannot be kept has no answer", () => {
    const programme = highs.openLinear([atLeast(1)]);
    expect(programme.solve()).toBeNull();
    programme.close();
  });

  test("keeps the most of a row too, and prices it below zero", () => {
    const programme = highs.openLinear([atLeast(10), { least: 0, most: 2 }]);
    programme.addColumns([column(0, 1, 1), column(3, 1, 0)]);
    const answer = programme.solve();
    expect(Array.from(answer?.quantities ?? [])).toEqual([2, 8]);
    expect(Array.from(answer?.prices ?? [])).toEqual([3, -3]);
    programme.close();
  });
});

describe("a whole-number programme", () => {
  test("has whole quantities", () => {
    const columns = [column(5, 2, 0), column(5, 0, 2), column(7, 1, 1)];
    expect(highs.solveWhole([atLeast(3), atLeast(3)], columns, limits)).toEqual([1, 1, 1]);
  });

  test("that cannot be kept has none", () => {
    expect(highs.solveWhole([{ least: 1, most: 1 }], [column(1, 2)], limits)).toBeNull();
  });
});

test("where the solver's file cannot be run there is no solver, and nothing is thrown", async () => {
  const blocked = await loadHighsSolver({ file: { locateFile: (name) => `nowhere/${name}` } });
  expect(blocked).toBeNull();
});
