/** The rates of one job: what was typed for it, else the firm's usual, else the starter's. */
import { cellText, isBlank, type CellValue, type TypedCell } from "../../base/cell";
import { makeFinding, type Finding, type FindingTable } from "../../base/finding";
import { cents, type Cents, type TenThousandths } from "../../base/units";
import { typedNumber } from "../../base/typedNumber";
import { ownUnitOf, type MeasureKind } from "../../measures/measures";
import { groupedFigure } from "../../measures/writeMeasure";
import type { Currency } from "../../money/currency";
import { priceFinding } from "../../money/moneyFindings";
import { readPrice } from "../../money/price";
import { inPercent, percentText, readPercent, type Percent } from "./percent";
import {
  freightUnitFault,
  rateMeasureFindings,
  readRateMeasure,
  type SaidOfMeasure,
} from "./rateMeasure";
import type { RateRow } from "./rateRow";
import { mostOf, rateRows, type RateKey } from "./rateRows";

/** The cells of one column of a rates sheet, by row key; an absent key has no row there. */
export type TypedRates = Readonly<Partial<Record<RateKey, TypedCell>>>;

/** A firm's rates as typed: the usual ones, and those of jobs that differ, by job without case. */
export type RateTable = {
  readonly usual: TypedRates;
  readonly byJob: ReadonlyMap<string, TypedRates>;
  /** The cells of the column Unit; none where the sheet has no such column. */
  readonly units?: TypedRates;
};

export const rateFindings = {
  "rate-not-a-number": {
    level: "stop",
    says: "{label} is {found}, which is not a number from zero up.",
    todo: "Type a number. Until then the job has no price that holds.",
  },
  "rate-not-a-percentage": {
    level: "stop",
    says: "{label} is {found}, which is not a percentage.",
    todo: "Type one such as 12 % or 12. Until then the job has no price that holds.",
  },
  "rate-out-of-range": {
    level: "stop",
    says: "{label} is {found}; it may be from 0 to {most}.",
    todo: "Type a value in that range. Until then the job has no price that holds.",
  },
  "rate-not-a-choice": {
    level: "stop",
    says: "{label} is {found}, which is none of {choices}.",
    todo: "Choose one of them. Until then the job has no price that holds.",
  },
  "rate-unlikely": {
    level: "warn",
    says: "{label} is {found}, which is read as {read}.",
    todo: "Type it with its % sign if less is meant, such as 1.5 %.",
  },
  "rates-are-invented": {
    level: "warn",
    says: "Rates, times and percentages are the starter's and invented: {labels}.",
    todo: "Set your own on a rates sheet before you bid by the price.",
  },
} as const satisfies FindingTable;

/** Reads the values of one job. What cannot be read is a stop and comes as `null`, as a blank does. */
export type RateReader = {
  readonly cell: (key: RateKey) => TypedCell;
  readonly money: (key: RateKey) => Cents | null;
  readonly rate: (key: RateKey) => TenThousandths | null;
  readonly percent: (key: RateKey) => Percent | null;
  readonly number: (key: RateKey) => number | null;
  readonly choice: <Choice extends string>(key: RateKey, choices: readonly Choice[]) => Choice;
  readonly groups: <Group extends string>(
    key: RateKey,
    groups: readonly Group[],
  ) => readonly Group[];
  readonly findings: readonly Finding[];
  /** Labels of the rows whose value is the starter's. */
  readonly invented: readonly string[];
};

export function rateReader(table: RateTable, job: string, currency: Currency): RateReader {
  const own = table.byJob.get(job.trim().toLowerCase()) ?? {};
  const findings: Finding[] = [];
  const invented = new Set<string>();
  /** Read twice, a cell is still wrong only once. */
  const reported = new Set<RateKey>();

  const cell = (key: RateKey): TypedCell => {
    const typed = own[key];
    if (typed !== undefined && !isBlank(typed.value)) return typed;
    const usual = table.usual[key];
    if (usual !== undefined) return usual;
    const row = rowOf(key);
    if (row.starter !== "") invented.add(row.label);
    return { value: row.starter === "" ? null : row.starter, place: null };
  };
  const report = (
    code: keyof typeof rateFindings,
    key: RateKey,
    more: Readonly<Record<string, string>> = {},
  ): void => {
    if (reported.has(key)) return;
    reported.add(key);
    const { value, place } = cell(key);
    const values = { label: rowOf(key).label, ...more };
    findings.push(makeFinding(rateFindings, code, { place, found: cellText(value), values, job }));
  };
  const refuse = (...of: Parameters<typeof report>): null => {
    report(...of);
    return null;
  };
  const say = (key: RateKey, { code, values, place }: SaidOfMeasure): void => {
    if (reported.has(key)) return;
    reported.add(key);
    const typed = cell(key);
    const details = {
      place: place ?? typed.place,
      found: cellText(typed.value).trim(),
      values: { label: rowOf(key).label, ...values },
      job,
    };
    findings.push(makeFinding(rateMeasureFindings, code, details));
  };
  const measured = (key: RateKey, kind: MeasureKind): number | null => {
    const { amount, said } = readRateMeasure(cell(key).value, kind, unitCell(table, key));
    if (amount === "not a number") return refuse("rate-not-a-number", key);
    if (amount === null || amount <= mostOfRow(rowOf(key))) {
      if (said !== null) say(key, said);
      return amount;
    }
    const most = `${groupedFigure(mostOfRow(rowOf(key)), 0)} ${ownUnitOf(kind).name}`;
    return refuse("rate-out-of-range", key, { most });
  };
  const priced = (key: RateKey): TenThousandths | null => {
    const { value, place } = cell(key);
    if (isBlank(value)) return null;
    // Nothing is a usual amount here, unlike for an item.
    if (value === 0) return 0 as TenThousandths;
    const wrongUnit = freightUnitFault(rowOf(key), unitCell(table, key));
    if (wrongUnit !== null) {
      say(key, wrongUnit);
      return null;
    }
    const read = readPrice(value, currency);
    if (read.ok) return read.value.unitCost;
    findings.push({
      ...priceFinding(read.error, { place, found: cellText(value), job }),
      level: "stop",
    });
    return null;
  };
  const words = (key: RateKey): string => cellText(cell(key).value).trim().toLowerCase();

  return {
    cell,
    rate: priced,
    money: (key) => {
      const amount = priced(key);
      return amount === null ? null : cents(Math.round(amount / 100));
    },
    percent: (key) => {
      const { value } = cell(key);
      if (isBlank(value)) return null;
      const read = isTyped(value) ? readPercent(value) : null;
      if (read === null) return refuse("rate-not-a-percentage", key);
      const most = rowOf(key).most ?? mostOf.percent;
      const inOne = inPercent(read.percent);
      if (inOne < 0 || inOne > most) return refuse("rate-out-of-range", key, { most: `${most} %` });
      const { usual = most } = rowOf(key);
      const hasSign = typeof value === "string" && value.includes("%");
      if (inOne > usual && !hasSign)
        report("rate-unlikely", key, { read: percentText(read.percent) });
      return read.percent;
    },
    number: (key) => {
      const { value } = cell(key);
      if (isBlank(value)) return null;
      const row = rowOf(key);
      if (row.measure !== undefined) return measured(key, row.measure);
      const number = typedNumber(value);
      if (!(Number.isFinite(number) && number >= 0)) return refuse("rate-not-a-number", key);
      const most = mostOfRow(row);
      return number <= most ? number : refuse("rate-out-of-range", key, { most: String(most) });
    },
    choice: (key, choices) => {
      const found = choices.find((choice) => choice === words(key));
      if (found !== undefined) return found;
      if (words(key) !== "") refuse("rate-not-a-choice", key, { choices: choices.join(", ") });
      return choices.find((choice) => choice === rowOf(key).starter) ?? firstOf(choices);
    },
    groups: (key, groups) => {
      const named = words(key)
        .split(/\s*[,;+]\s*/)
        .filter((word) => word !== "");
      const known = groups.filter((group) => named.includes(group));
      if (known.length < named.length)
        refuse("rate-not-a-choice", key, { choices: groups.join(", ") });
      return known;
    },
    findings,
    get invented() {
      return [...invented];
    },
  };
}

/** The Unit cell of a row that the sheet has, where something stands in it. */
function unitCell({ usual, units }: RateTable, key: RateKey): TypedCell | null {
  const typed = units?.[key];
  return typed === undefined || isBlank(typed.value) || usual[key] === undefined ? null : typed;
}

const mostOfRow = ({ most, kind }: RateRow): number =>
  most ?? (kind === "count" ? mostOf.count : mostOf.number);

const rowOf = (key: RateKey): RateRow => {
  const row = rateRows.find((candidate) => candidate.key === key);
  if (row === undefined) throw new RangeError(`No such rate: ${key}`);
  return row;
};

const isTyped = (value: CellValue): value is string | number =>
  typeof value === "string" || typeof value === "number";

function firstOf<Choice>(choices: readonly Choice[]): Choice {
  const [first] = choices;
  if (first === undefined) throw new RangeError("A choice needs something to choose from");
  return first;
}
