/** The firm's own rules for an order: days, spares, the saw, and the holidays it keeps. */
import { isBlank, readDate, type TypedCell } from "../../base/cell";
import { makeFinding, type Finding, type FindingTable } from "../../base/finding";
import { normalName } from "../../formulas/names";
import type { LengthUnit } from "../../lengths/length";
import { readYesNo } from "../../openings/yesNo";
import { cutLength, cutLengthOf, type CutLength } from "../cutting/cutLength";
import type { SawRules } from "../cutting/cutProblem";
import { numberOf, readSize, textOf } from "../offers/offerCells";
import { commonOrderPattern, readOrderPattern, type OrderPattern } from "../books/orderNumber";
import type { Checked, OrderRuleColumn } from "../offers/purchasingRows";
import { sparesBases, type SparesBasis } from "../spares";

export type OrderRules = {
  /** Working days kept in hand between the delivery and the need. */
  readonly bufferDays: number;
  /** A price older than so many days is noted. */
  readonly oldPriceDays: number;
  readonly sparesPer: SparesBasis;
  readonly leaveOutLate: boolean;
  readonly saw: SawRules;
  /** Date serials. */
  readonly holidays: readonly number[];
  /** How orders are numbered. */
  readonly numbers: OrderPattern;
};

/** The rules in the order they are written. The starting values are common practice, no source. */
export const orderRuleRows = [
  {
    key: "bufferDays",
    label: "Buffer days",
    starter: 2,
    says: "Working days between the delivery and the need-by date.",
  },
  {
    key: "oldPriceDays",
    label: "Old price days",
    starter: 180,
    says: "A price that is older is noted.",
  },
  {
    key: "sparesPer",
    label: "Spares per",
    starter: "job",
    says: "job: spares are reckoned on each job's count. order: once, on the count of all jobs.",
  },
  {
    key: "leaveOutLate",
    label: "Leave out late offers",
    starter: "yes",
    says: "Whether an offer that comes too late is passed over where another comes in time.",
  },
  { key: "kerf", label: "Saw kerf", starter: '1/8"', says: "What each cut eats." },
  {
    key: "endTrim",
    label: "End trim",
    starter: '1/2"',
    says: "Taken off a new bar's two ends together.",
  },
  {
    key: "shortestOffcut",
    label: "Shortest offcut kept",
    starter: "2'-0\"",
    says: "What is left of a bar is kept from this length up.",
  },
  {
    key: "numbers",
    label: "Order number",
    starter: commonOrderPattern.text,
    says: "How kept orders are numbered: {year} is the year, {number:4} counts in at least four digits.",
  },
  {
    key: "holiday",
    label: "Holiday",
    starter: "",
    says: "A day on which nobody works. One row for each.",
  },
] as const;

export const orderRuleFindings = {
  "order-rule-unknown": {
    level: "warn",
    says: "{found} is no rule for orders; the row is not used.",
    todo: "Use one of: {rules}.",
  },
  "order-rule-wrong": {
    level: "warn",
    says: "{rule} is {found}, which cannot be; {used} is used.",
    todo: "Mend the cell.",
  },
} as const satisfies FindingTable;

const starterRules: OrderRules = {
  bufferDays: 2,
  oldPriceDays: 180,
  sparesPer: "job",
  leaveOutLate: true,
  saw: {
    kerf: cutLength(1016),
    endTrim: cutLength(4064),
    shortestOffcut: cutLength(195_072),
  },
  holidays: [],
  numbers: commonOrderPattern,
};

/** A rule that is blank or not there has its starting value; one that cannot be read is reported. */
export function checkOrderRules(
  rows: readonly Readonly<Partial<Record<OrderRuleColumn, TypedCell>>>[],
  unit: LengthUnit,
): Checked<OrderRules> {
  const findings: Finding[] = [];
  const holidays: number[] = [];
  const read: { -readonly [Key in keyof OrderRules]?: OrderRules[Key] } = {};
  const saw: { -readonly [Key in keyof SawRules]: SawRules[Key] } = { ...starterRules.saw };
  for (const { rule, value } of rows) {
    const name = textOf(rule);
    if (name === "" || value === undefined || isBlank(value.value)) continue;
    const known = orderRuleRows.find(({ label }) => normalName(label) === normalName(name));
    if (known === undefined) {
      const rules = orderRuleRows.map(({ label }) => label).join(", ");
      const details = { place: rule?.place ?? null, found: name, values: { rules } };
      findings.push(makeFinding(orderRuleFindings, "order-rule-unknown", details));
      continue;
    }
    const wrong = (): void => {
      const values = { rule: known.label, used: String(known.starter) || "no day" };
      const details = { place: value.place, found: textOf(value), values };
      findings.push(makeFinding(orderRuleFindings, "order-rule-wrong", details));
    };
    switch (known.key) {
      case "bufferDays":
      case "oldPriceDays": {
        const days = numberOf(value) ?? NaN;
        if (Number.isInteger(days) && days >= 0 && days < 100_000) read[known.key] = days;
        else wrong();
        break;
      }
      case "sparesPer": {
        const basis = sparesBases.find((each) => each === textOf(value).toLowerCase());
        if (basis === undefined) wrong();
        else read.sparesPer = basis;
        break;
      }
      case "leaveOutLate": {
        const answer = readYesNo(value.value);
        if (typeof answer === "boolean") read.leaveOutLate = answer;
        else wrong();
        break;
      }
      case "numbers": {
        const pattern = readOrderPattern(textOf(value));
        if (pattern.ok) read.numbers = pattern.value;
        else wrong();
        break;
      }
      case "holiday": {
        const day = readDate(value.value);
        if (day === null) wrong();
        else holidays.push(day);
        break;
      }
      default: {
        const length = lengthOf(value, unit);
        if (length === null) wrong();
        else saw[known.key] = length;
      }
    }
  }
  return { value: { ...starterRules, ...read, saw, holidays }, findings };
}

function lengthOf(cell: TypedCell, unit: LengthUnit): CutLength | null {
  if (numberOf(cell) === 0) return cutLength(0);
  const [length, ...others] = readSize(cell, unit, () => undefined) ?? [];
  return length === undefined || others.length > 0 ? null : cutLengthOf(length);
}
