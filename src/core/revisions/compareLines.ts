/** Hardware and money of two counts: what each line, item and job needs more or less. */
import { sortInSteps } from "../base/sortInSteps";
import { between, type Steps } from "../base/steps";
import { compareNames } from "../base/textOrder";
import { cents, type Cents, type Inches } from "../base/units";
import { sumOf } from "../money/amounts";
import { pieceKey } from "../takeoff/partColumn";
import { jobKey } from "../takeoff/takeOff";
import type { Count, IssuedLine } from "./issue";

export type LineDifference = {
  readonly job: string;
  readonly item: string;
  readonly size: readonly Inches[];
  /** `null` where that count does not have the line. */
  readonly from: IssuedLine | null;
  readonly to: IssuedLine | null;
  /** Pieces more, or fewer where below zero. */
  readonly quantity: number;
  /** With spares. */
  readonly toOrder: number;
  /** `null` where a cost of either is not known, or is in another currency. */
  readonly cost: Cents | null;
};

/** Lines put together: those of an item over all jobs, or those of a job. */
export type SumDifference = {
  /** The item, or the job. */
  readonly name: string;
  readonly quantity: number;
  readonly toOrder: number;
  /** Of the lines whose costs are known; `null` where there is none. */
  readonly cost: Cents | null;
  /** Lines among them whose difference in money is not known. */
  readonly unknown: number;
};

export type LineDifferences = {
  /** Lines that differ in pieces, spares, unit cost or cost; by job, item and size. */
  readonly lines: readonly LineDifference[];
  readonly items: readonly SumDifference[];
  readonly jobs: readonly SumDifference[];
  /** Of all lines. */
  readonly total: SumDifference;
};

export function* compareLines(from: Count, to: Count): Steps<LineDifferences> {
  const isOneCurrency = from.currency === to.currency;
  const older = byKey(from.lines);
  const newer = byKey(to.lines);
  const differ = [...new Set([...older.keys(), ...newer.keys()])].flatMap((key) =>
    lineDifference(older.get(key) ?? null, newer.get(key) ?? null, isOneCurrency),
  );
  yield 0.2;
  const lines = yield* between(0.2, 0.9, sortInSteps(differ, compareDifferences));
  return {
    lines,
    items: sums(lines, ({ item }) => [item.toLowerCase(), item]),
    jobs: sums(lines, ({ job }) => [jobKey(job), job]),
    total: sumUp("", lines),
  };
}

const lineKey = ({ job, item, size }: IssuedLine): string =>
  `${jobKey(job)}\n${pieceKey(item, size)}`;

const byKey = (lines: readonly IssuedLine[]): ReadonlyMap<string, IssuedLine> =>
  new Map(lines.map((line) => [lineKey(line), line]));

function lineDifference(
  from: IssuedLine | null,
  to: IssuedLine | null,
  isOneCurrency: boolean,
): readonly LineDifference[] {
  const known = to ?? from;
  if (known === null || isSameLine(from, to)) return [];
  const quantity = (to?.quantity ?? 0) - (from?.quantity ?? 0);
  const spares = (to?.spares ?? 0) - (from?.spares ?? 0);
  const { job, item, size } = namedAlike(from, to) ?? known;
  return [
    {
      job,
      item,
      size,
      from,
      to,
      quantity,
      toOrder: quantity + spares,
      cost: isOneCurrency ? costDifference(from, to) : null,
    },
  ];
}

/** Spelt the same from whichever side it is looked at. */
function namedAlike(from: IssuedLine | null, to: IssuedLine | null): IssuedLine | null {
  if (from === null || to === null) return null;
  return compareNames(`${from.job}\n${from.item}`, `${to.job}\n${to.item}`) <= 0 ? from : to;
}

const isSameLine = (from: IssuedLine | null, to: IssuedLine | null): boolean =>
  from?.quantity === to?.quantity &&
  from?.spares === to?.spares &&
  from?.unitCost === to?.unitCost &&
  from?.cost === to?.cost;

/** What is not there costs nothing; what is there and has no cost is not known. */
function costDifference(from: IssuedLine | null, to: IssuedLine | null): Cents | null {
  const before = from === null ? 0 : from.cost;
  const after = to === null ? 0 : to.cost;
  return before === null || after === null ? null : cents(after - before);
}

function sums(
  lines: readonly LineDifference[],
  nameOf: (line: LineDifference) => readonly [key: string, name: string],
): readonly SumDifference[] {
  const groups = new Map<string, { readonly name: string; readonly lines: LineDifference[] }>();
  for (const line of lines) {
    const [key, name] = nameOf(line);
    const group = groups.get(key) ?? { name, lines: [] };
    group.lines.push(line);
    groups.set(key, group);
  }
  return [...groups.values()]
    .map((group) => sumUp(group.name, group.lines))
    .sort((one, other) => compareNames(one.name, other.name));
}

function sumUp(name: string, lines: readonly LineDifference[]): SumDifference {
  const costs = lines.flatMap(({ cost }) => (cost === null ? [] : [cost]));
  return {
    name,
    quantity: lines.reduce((sum, line) => sum + line.quantity, 0),
    toOrder: lines.reduce((sum, line) => sum + line.toOrder, 0),
    cost: costs.length === 0 && lines.length > 0 ? null : sumOf(costs),
    unknown: lines.length - costs.length,
  };
}

const compareDifferences = (one: LineDifference, other: LineDifference): number =>
  compareNames(one.job, other.job) ||
  compareNames(one.item, other.item) ||
  one.size.length - other.size.length ||
  one.size.reduce((order, length, index) => order || length - (other.size[index] ?? 0), 0);
