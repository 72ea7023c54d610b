/**
 * Checks a cut plan's lower bound from its proof alone. Shares no code with the planning and works
 * another way: exact sizes, one piece at a time.
 */
import { greatestCommonDivisor } from "../../../../src/core/base/exact";
import type { CutPlan, CutProblem } from "../../../../src/core/purchasing/cutting/cutProblem";

/** Cells of the table beyond which a bound is not checked. */
const mostCells = 50_000_000;

/**
 * The cost that the proof's values prove for the pieces the plan places, rounded up to a multiple
 * of the stock prices' common divisor. The bound holds when it is no higher than this. `null` when
 * the sizes are too fine for a table.
 */
export function provenCost(problem: CutProblem, plan: CutPlan): number | null {
  const { saw, onHand } = problem;
  const counts = new Map<number, number>();
  for (const { length } of plan.bars.flatMap((bar) => bar.pieces)) {
    counts.set(length, (counts.get(length) ?? 0) + 1);
  }
  const valueOf = new Map<number, number>(
    plan.boundProof.map(({ length, value }) => [length, value]),
  );
  const step = [...counts.keys()].reduce(
    (all, length) => greatestCommonDivisor(all, length + saw.kerf),
    0,
  );
  if (step === 0) return 0;
  const shortest = Math.min(...counts.keys());
  // A bar that holds nothing, or as long as one that costs less, is in no cheapest plan.
  const stock = problem.stock.filter(
    (bar) =>
      bar.length - saw.endTrim >= shortest &&
      !problem.stock.some(
        (other) =>
          other.length >= bar.length &&
          other.price <= bar.price &&
          (other.length > bar.length || other.price < bar.price),
      ),
  );
  const room = (space: number): number => Math.max(0, Math.floor((space + saw.kerf) / step));
  const rooms = [
    ...stock.map((bar) => room(bar.length - saw.endTrim)),
    ...onHand.map((bar) => room(bar.length)),
  ];
  const widest = rooms.reduce((most, each) => Math.max(most, each), 0);
  const best = new Float64Array(widest + 1);
  let cells = 0;
  for (const [length, count] of counts) {
    const size = (length + saw.kerf) / step;
    const value = valueOf.get(length) ?? 0;
    const copies = value > 0 ? Math.min(count, Math.floor(widest / size)) : 0;
    cells += copies * widest;
    if (cells > mostCells) return null;
    for (let copy = 0; copy < copies; copy += 1) {
      for (let at = widest; at >= size; at -= 1) {
        best[at] = Math.max(best[at] ?? 0, (best[at - size] ?? 0) + value);
      }
    }
  }
  const worth = rooms.map((each) => BigInt(best[each] ?? 0));
  const total = [...counts].reduce(
    (sum, [length, count]) => sum + BigInt(valueOf.get(length) ?? 0) * BigInt(count),
    0n,
  );
  const free = onHand.reduce(
    (sum, bar, index) => sum + BigInt(bar.count) * (worth[stock.length + index] ?? 0n),
    0n,
  );
  // value * price / worth is what the bar's price makes of the total; the least of them counts.
  const costs = stock.flatMap((bar, index) => {
    const held = worth[index] ?? 0n;
    return held === 0n ? [] : [divideUp((total - free) * BigInt(bar.price), held)];
  });
  const [first, ...others] = costs;
  if (first === undefined || total <= free) return 0;
  const least = Number(others.reduce((low, cost) => (cost < low ? cost : low), first));
  const unit = stock.reduce((all, bar) => greatestCommonDivisor(all, bar.price), 0);
  return unit === 0 ? least : Math.ceil(least / unit) * unit;
}

const divideUp = (a: bigint, b: bigint): bigint => (a + b - 1n) / b;
