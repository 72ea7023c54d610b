/**
 * How well and how fast orders are worked out, in one process: `npx tsx tests/bench/purchasing.ts`.
 * Prints gaps, ratios against a peer in the same run, and the longest step; nothing here is a test.
 *
 * Cut plans: the worked example of thirteen widths, instances by Falkenauer's recipe with fixed
 * seeds, and shops of 200 lengths and 5,000 pieces, with the solver and without. Each plan and bound
 * is checked by separate code before it is printed. Packs: against trying every count for every rest
 * of the need, which is what a table does without steps and breaks. Orders: time against size.
 */
import { loadHighsSolver } from "../../src/adapters/highs/highsSolver";
import { inches, pieces } from "../../src/core/base/units";
import { checkCutPlan } from "../../src/core/purchasing/cutting/checkCutPlan";
import { cutPlanSteps } from "../../src/core/purchasing/cutting/cutPlan";
import type { CutProblem } from "../../src/core/purchasing/cutting/cutProblem";
import type { Solver } from "../../src/core/purchasing/cutting/solver";
import { coverWithPacks } from "../../src/core/purchasing/offers/packs";
import { breakFor, packSales, type PackSale } from "../../src/core/purchasing/offers/packSale";
import { provenCost } from "../core/purchasing/cutting/checkBound";
import {
  shopInstance,
  stockedShop,
  thirteenWidths,
  tripletInstance,
  uniformInstance,
} from "../core/purchasing/cutting/instances";
import { offerOf } from "../core/purchasing/offerOf";
import { inputOf, orderOf, type DemandWords } from "../core/purchasing/orderOf";

const clock = (): number => performance.now();

/** The best of a few runs, in milliseconds. */
function bestOf(runs: number, work: () => void): number {
  let best = Infinity;
  for (let run = 0; run < runs; run += 1) {
    const start = clock();
    work();
    best = Math.min(best, clock() - start);
  }
  return best;
}

type CutRun = {
  readonly firstFit: number;
  readonly cost: number;
  readonly bound: number;
  readonly isProven: boolean;
  readonly time: number;
  readonly longest: number;
};

function runCuts(problem: CutProblem, solver: Solver | null, seconds: number): CutRun {
  const start = clock();
  let before = start;
  let longest = 0;
  let firstFit: number | null = null;
  let last = null;
  const shouldStop = (): boolean => clock() - start > seconds * 1000;
  for (const step of cutPlanSteps(problem, { solver, shouldStop })) {
    longest = Math.max(longest, clock() - before);
    before = clock();
    firstFit ??= step.cost;
    last = step;
  }
  const time = clock() - start;
  const plan = last?.plan();
  if (plan === undefined || firstFit === null) throw new Error("No plan");
  const faults = checkCutPlan(problem, plan);
  const proven = provenCost(problem, plan);
  if (faults.length > 0) throw new Error(faults.join(" "));
  if (proven !== null && plan.lowerBound > proven) throw new Error("The bound is not proven.");
  return {
    firstFit,
    cost: plan.cost,
    bound: plan.lowerBound,
    isProven: plan.proven,
    time,
    longest,
  };
}

const percent = (part: number): string => `${(part * 100).toFixed(3)} %`;

function printCuts(name: string, problem: CutProblem, solver: Solver | null, seconds = 30): void {
  const { firstFit, cost, bound, isProven, time, longest } = runCuts(problem, solver, seconds);
  console.log(
    [
      name.padEnd(34),
      `gap ${percent(cost / bound - 1).padStart(8)}${isProven ? " proven" : "       "}`,
      `first-fit +${percent(firstFit / cost - 1)}`.padEnd(20),
      `${time.toFixed(0)} ms, longest step ${longest.toFixed(0)} ms`,
    ].join("  "),
  );
}

/** The peer: every count of every sale for every rest of the need. Returns the least cost. */
function tryEveryCount(need: number, sales: readonly PackSale[]): number {
  let later = Float64Array.from({ length: need + 1 }, (_, rest) => (rest === 0 ? 0 : Infinity));
  for (const sale of sales) {
    const prices = Array.from(
      { length: Math.ceil(need / sale.packSize) + (sale.breaks.at(-1)?.from ?? 0) + 1 },
      (_, count) => breakFor(sale, count)?.price ?? Infinity,
    );
    const table = later.slice();
    for (let rest = 1; rest <= need; rest += 1) {
      for (let count = 1; count < prices.length; count += 1) {
        const left = Math.max(0, rest - count * sale.packSize);
        const cost = (later[left] ?? Infinity) + count * (prices[count] ?? Infinity);
        if (cost < (table[rest] ?? Infinity)) table[rest] = cost;
        if (left === 0 && count >= (sale.breaks.at(-1)?.from ?? 0)) break;
      }
    }
    later = table;
  }
  return later[need] ?? Infinity;
}

/** Eleven price breaks of three pack sizes without a common step. */
const oddSales = packSales([
  ...[1, 500, 1000, 2000, 5000].map((from, at) =>
    offerOf({ pack: 997, price: 9000 - at * 40, from }),
  ),
  ...[1, 100, 2000].map((from, at) =>
    offerOf({ supplier: "Birch", pack: 499, price: 4600 - at * 20, from }),
  ),
  ...[1, 40, 80].map((from, at) =>
    offerOf({ supplier: "Cedar", pack: 1009, price: 9100 - at * 90, from }),
  ),
]);

function printPacks(): void {
  const need = 20_000;
  const ours = bestOf(3, () => coverWithPacks(pieces(need), oddSales));
  let peerCost = 0;
  const peer = bestOf(1, () => {
    peerCost = tryEveryCount(need, oddSales);
  });
  const cover = coverWithPacks(pieces(need), oddSales);
  if (cover?.cost !== peerCost) throw new Error("The peer finds another cost.");
  console.log(
    `packs, ${need} pieces, 11 breaks: ${(peer / ours).toFixed(1)} times as fast as every count`,
  );
  for (const many of [250_000, 500_000, 1_000_000]) {
    const time = bestOf(2, () => coverWithPacks(pieces(many), oddSales));
    console.log(`packs, ${many} pieces, 11 breaks: ${(time / ours).toFixed(0)} times that time`);
  }
}

/** Invented jobs: so many items each, and ten cut lengths. */
function jobsOf(jobs: number, items: number): readonly DemandWords[] {
  return Array.from({ length: jobs }, (_, job) => [
    ...Array.from({ length: items }, (_, item): DemandWords => [
      `Job ${job}`,
      "1",
      `Item ${item}`,
      7 + ((job * 31 + item) % 60),
    ]),
    ...Array.from({ length: 10 }, (_, at): DemandWords => [
      `Job ${job}`,
      "1",
      "TRACK",
      2,
      40 + 9 * at + (job % 4),
    ]),
  ]).flat();
}

function printOrders(): void {
  const items = 200;
  const offers = [
    ...Array.from({ length: items }, (_, item) => [
      offerOf({ item: `Item ${item}`, supplier: "Alder", pack: 50, price: 600 }),
      offerOf({ item: `Item ${item}`, supplier: "Alder", pack: 50, price: 560, from: 5 }),
      offerOf({ item: `Item ${item}`, supplier: "Birch", pack: 100, price: 1100 }),
      offerOf({ item: `Item ${item}`, supplier: "Cedar", pack: 25, price: 310 }),
    ]).flat(),
    offerOf({ item: "TRACK", size: [inches(240)], price: 5000 }),
  ];
  let first = 0;
  for (const jobs of [5, 10, 20, 40]) {
    const input = inputOf({ demands: jobsOf(jobs, items), offers, kerf: 0.125 });
    const time = bestOf(1, () => orderOf(input));
    first ||= time;
    console.log(
      `order of ${jobs} jobs x ${items} items: ${(time / first).toFixed(1)} times that of 5 jobs (${time.toFixed(0)} ms)`,
    );
  }
}

async function main(): Promise<void> {
  const highs = await loadHighsSolver();
  console.log(highs === null ? "HiGHS could not be loaded" : "with HiGHS");
  printCuts("thirteen widths (73 rolls)", thirteenWidths, highs);
  for (const count of [120, 250, 500, 1000]) {
    for (const seed of [1, 2, 3]) {
      printCuts(`uniform ${count}, seed ${seed}`, uniformInstance(count, seed), highs);
    }
  }
  for (const count of [60, 120, 249, 501]) {
    for (const seed of [1, 2, 3]) {
      printCuts(`triplets ${count}, seed ${seed}`, tripletInstance(count, seed), highs);
    }
  }
  for (const seed of [1, 2, 3]) {
    printCuts(`shop 200 x 5,000, seed ${seed}`, shopInstance(200, 5000, seed), highs);
  }
  // Prices of three lengths hardly ever add up to the bound: this one runs out of its time.
  printCuts("stocked shop 200 x 5,000, 15 s", stockedShop(200, 5000, 1), highs, 15);
  console.log("without a solver");
  printCuts("thirteen widths (73 rolls)", thirteenWidths, null);
  printCuts("uniform 500, seed 1", uniformInstance(500, 1), null);
  printCuts("triplets 249, seed 1", tripletInstance(249, 1), null);
  printCuts("shop 200 x 5,000, seed 1", shopInstance(200, 5000, 1), null);
  printPacks();
  printOrders();
}

void main();
