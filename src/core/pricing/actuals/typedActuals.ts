/**
 * What a person types when a job is done: costs, hours of bags, pieces used. Rows of one name add
 * up, so that every invoice and every day can have its own row.
 */
import { cellText, isBlank, type TypedCell } from "../../base/cell";
import { makeFinding, type Finding, type FindingTable } from "../../base/finding";
import { cents, isPieces, minutes, pieces } from "../../base/units";
import { typedNumber } from "../../base/typedNumber";
import { nearestName } from "../../formulas/names";
import { unitCostPlaces, type Currency } from "../../money/currency";
import { priceFinding } from "../../money/moneyFindings";
import { readPrice } from "../../money/price";
import { jobKey } from "../../takeoff/takeOff";
import type { JobActuals } from "./actuals";

export const actualKinds = ["cost", "hours", "pieces"] as const;
export type ActualKind = (typeof actualKinds)[number];

/** A row of an actuals table, as typed. */
export type ActualColumn = "job" | "kind" | "name" | "actual";
export type ActualRow = Readonly<Partial<Record<ActualColumn, TypedCell>>>;

export const actualFindings = {
  "actual-of-no-job": {
    level: "warn",
    says: "{found} is no job of this workbook; the row is not used.",
    todo: "{guess}",
  },
  "actual-of-no-kind": {
    level: "warn",
    says: "{found} is not what an actual can be; the row is not used.",
    todo: "Use cost, hours or pieces.",
  },
  "actual-not-a-number": {
    level: "warn",
    says: "The actual of {name} is {found}, which is not a number from zero up; the row is not used.",
    todo: "Type hours such as 12.5, or whole pieces.",
  },
  "actual-not-estimated": {
    level: "note",
    says: "{found} stands in no estimate of {job}: it counts as estimated with nothing.",
    todo: "{guess}",
  },
} as const satisfies FindingTable;

const nameKey = (name: string): string => name.trim().replace(/\s+/g, " ").toLowerCase();
const textOf = (cell: TypedCell | undefined): string =>
  cell === undefined ? "" : cellText(cell.value).trim();

type Sums = Map<string, { readonly name: string; readonly sum: number }>;
type JobSums = Readonly<Record<ActualKind, Sums>>;
const noSums = (): JobSums => ({ cost: new Map(), hours: new Map(), pieces: new Map() });

/** Puts what was typed to the estimates. A row with a blank actual says nothing yet. */
export function withTypedActuals(
  estimates: readonly JobActuals[],
  rows: readonly ActualRow[],
  currency: Currency,
): { readonly jobs: readonly JobActuals[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const byJob = new Map(
    estimates.map((estimate) => [jobKey(estimate.job), { estimate, sums: noSums() }]),
  );
  for (const row of rows) {
    if (row.actual === undefined || isBlank(row.actual.value)) continue;
    const found = byJob.get(jobKey(textOf(row.job)));
    if (found === undefined) {
      const names = estimates.map(({ job }) => job);
      findings.push(unknown("actual-of-no-job", row.job, names, "Name a job of the schedule."));
      continue;
    }
    const kind = actualKinds.find((one) => one === nameKey(textOf(row.kind)));
    if (kind === undefined) {
      findings.push(unknown("actual-of-no-kind", row.kind, [], ""));
      continue;
    }
    const value = readActual(kind, row, currency, findings);
    if (value === null) continue;
    const sums = found.sums[kind];
    const name = textOf(row.name);
    const key = nameKey(name);
    const known = namesOf(found.estimate, kind);
    if (!sums.has(key) && !known.some((one) => nameKey(one) === key)) {
      const { job } = found.estimate;
      findings.push(unknown("actual-not-estimated", row.name, known, "Check its name.", { job }));
    }
    sums.set(key, { name, sum: (sums.get(key)?.sum ?? 0) + value });
  }
  return {
    jobs: [...byJob.values()].map(({ estimate, sums }) => putTogether(estimate, sums)),
    findings,
  };
}

function unknown(
  code: keyof typeof actualFindings,
  cell: TypedCell | undefined,
  known: readonly string[],
  otherwise: string,
  values: Readonly<Record<string, string>> = {},
): Finding {
  const found = textOf(cell);
  const near = nearestName(found, known);
  const guess = near === undefined ? otherwise : `Did you mean ${near}?`;
  return makeFinding(actualFindings, code, {
    place: cell?.place ?? null,
    found,
    values: { guess, ...values },
  });
}

/** Cents, minutes or pieces; `null`, once reported, where it is none. */
function readActual(
  kind: ActualKind,
  { actual, name }: ActualRow,
  currency: Currency,
  findings: Finding[],
): number | null {
  const value = actual?.value ?? null;
  const place = actual?.place ?? null;
  if (kind === "cost") {
    if (value === 0) return 0;
    const read = readPrice(value, currency);
    if (read.ok) return Math.round(read.value.unitCost / 10 ** (unitCostPlaces - currency.digits));
    findings.push({ ...priceFinding(read.error, { place, found: textOf(actual) }), level: "warn" });
    return null;
  }
  const number = typedNumber(value);
  const isSound = Number.isFinite(number) && number >= 0 && (kind === "hours" || isPieces(number));
  if (isSound) return kind === "hours" ? number * 60 : number;
  const values = { name: textOf(name) };
  findings.push(
    makeFinding(actualFindings, "actual-not-a-number", { place, found: textOf(actual), values }),
  );
  return null;
}

function namesOf({ costs, bags, pieces: used }: JobActuals, kind: ActualKind): readonly string[] {
  switch (kind) {
    case "cost":
      return costs.map(({ name }) => name);
    case "hours":
      return bags.map(({ bag }) => bag);
    case "pieces":
      return used.map(({ item }) => item);
  }
}

/** The estimate's names first, each with what was typed for it, then names that it does not have. */
function putTogether(estimate: JobActuals, sums: JobSums): JobActuals {
  const sumOf = (kind: ActualKind, name: string): number | null =>
    sums[kind].get(nameKey(name))?.sum ?? null;
  const others = (kind: ActualKind): readonly { readonly name: string; readonly sum: number }[] => {
    const known = new Set(namesOf(estimate, kind).map(nameKey));
    return [...sums[kind]].flatMap(([key, typed]) => (known.has(key) ? [] : [typed]));
  };
  const made = <Unit>(value: number | null, unit: (value: number) => Unit): Unit | null =>
    value === null ? null : unit(value);
  return {
    job: estimate.job,
    costs: [
      ...estimate.costs.map((cost) => ({ ...cost, actual: made(sumOf("cost", cost.name), cents) })),
      ...others("cost").map(({ name, sum }) => ({
        name,
        estimated: cents(0),
        actual: cents(sum),
      })),
    ],
    bags: [
      ...estimate.bags.map((bag) => ({ ...bag, actual: made(sumOf("hours", bag.bag), minutes) })),
      ...others("hours").map(({ name, sum }) => ({
        bag: name,
        estimated: minutes(0),
        actual: minutes(sum),
        rows: [],
      })),
    ],
    pieces: [
      ...estimate.pieces.map((one) => ({ ...one, used: made(sumOf("pieces", one.item), pieces) })),
      ...others("pieces").map(({ name, sum }) => ({
        item: name,
        counted: pieces(0),
        used: pieces(sum),
      })),
    ],
  };
}

/** Whether anything actual was typed for the job. */
export const hasActuals = ({ costs, bags, pieces: used }: JobActuals): boolean =>
  costs.some(({ actual }) => actual !== null) ||
  bags.some(({ actual }) => actual !== null) ||
  used.some((pair) => pair.used !== null);
