/**
 * Checks a cut plan piece by piece. Shares no code with the planning: it knows only what a bar, a
 * saw and a list of pieces are.
 */
import type { Bar, CutPlan, CutProblem, SawRules } from "./cutProblem";

/** What is wrong, one sentence each; nothing when the plan can be cut as it stands. */
export function checkCutPlan(problem: CutProblem, plan: CutPlan): readonly string[] {
  return [
    ...plan.bars.flatMap((bar, index) => checkBar(problem, bar, `Bar ${index + 1}`)),
    ...checkPieces(problem, plan),
    ...checkShelf(problem, plan),
    ...checkMoney(plan),
  ];
}

function checkBar({ saw, stock }: CutProblem, bar: Bar, name: string): readonly string[] {
  const faults: string[] = [];
  const isOffered = stock.some(({ length, price }) => length === bar.length && price === bar.price);
  if (bar.from === "stock" && !isOffered)
    faults.push(`${name} is of a length and price not offered.`);
  if (bar.from === "onHand" && bar.price !== 0) faults.push(`${name} is on hand and has a price.`);
  if (bar.pieces.length === 0) faults.push(`${name} has no pieces.`);
  const left = sawThrough(bar, saw);
  if (left === null) faults.push(`${name} is too short for its pieces.`);
  else {
    if (left !== bar.offcut) faults.push(`${name} leaves ${left}, not ${bar.offcut}.`);
    const isWorthKeeping = left > 0 && left >= saw.shortestOffcut;
    if (isWorthKeeping !== bar.kept)
      faults.push(`${name} has its offcut wrongly kept or scrapped.`);
  }
  return faults;
}

/** Cuts the bar as the saw would, from one end to the other; `null` when it runs out. */
function sawThrough(bar: Bar, saw: SawRules): number | null {
  let left: number = bar.from === "stock" ? bar.length - saw.endTrim : bar.length;
  for (const piece of bar.pieces) {
    if (piece.length > left) return null;
    left -= piece.length;
    // The blade takes its kerf, or what is left where that is less.
    left -= Math.min(left, saw.kerf);
  }
  return left;
}

function checkPieces(problem: CutProblem, plan: CutPlan): readonly string[] {
  const balance = new Map<string, number>();
  const add = (piece: { job: string; mark: string; length: number }, count: number): void => {
    const key = JSON.stringify([piece.job, piece.mark, piece.length]);
    balance.set(key, (balance.get(key) ?? 0) + count);
  };
  for (const piece of problem.pieces) add(piece, piece.count);
  for (const piece of plan.unplaced) add(piece, 0 - piece.count);
  for (const piece of plan.bars.flatMap((bar) => bar.pieces)) add(piece, -1);
  return [...balance].flatMap(([key, count]) =>
    count === 0 ? [] : [`${key} is cut ${Math.abs(count)} too ${count > 0 ? "few" : "many"}.`],
  );
}

function checkShelf({ onHand }: CutProblem, plan: CutPlan): readonly string[] {
  const used = plan.bars.filter((bar) => bar.from === "onHand").map((bar) => bar.length);
  return [...new Set(used)].flatMap((length) => {
    const there = onHand
      .filter((bar) => bar.length === length)
      .reduce((sum, bar) => sum + bar.count, 0);
    const taken = used.filter((other) => other === length).length;
    return taken <= there ? [] : [`${taken} bars of ${length} are used and ${there} are on hand.`];
  });
}

function checkMoney(plan: CutPlan): readonly string[] {
  const cost = plan.bars.reduce((sum, bar) => sum + bar.price, 0);
  const faults: string[] = [];
  if (cost !== plan.cost) faults.push(`The bars cost ${cost}, not ${plan.cost}.`);
  if (plan.lowerBound > cost)
    faults.push(`The bound ${plan.lowerBound} is above the cost ${cost}.`);
  const isProven = plan.lowerBound === cost && plan.unplaced.length === 0;
  if (plan.proven && !isProven) faults.push("It is called proven and is not.");
  return faults;
}
