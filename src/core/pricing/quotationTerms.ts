/** What a firm types for its quotations: who offers to whom, what is in, what is not, how long it holds. */
import { cellText, isBlank, type TypedCell } from "../base/cell";
import { makeFinding, type Finding, type FindingTable } from "../base/finding";
import { typedNumber } from "../base/typedNumber";
import type { QuotationTerms } from "./quotation";

/** The words in the first column of a terms sheet. `many`: each row of the kind adds a line. */
export const termKinds = [
  { key: "firm", label: "Firm", many: false },
  { key: "customer", label: "Customer", many: false },
  { key: "project", label: "Project", many: false },
  { key: "number", label: "Number", many: false },
  { key: "validDays", label: "Valid for (days)", many: false },
  { key: "inclusion", label: "Inclusion", many: true },
  { key: "exclusion", label: "Exclusion", many: true },
  { key: "note", label: "Note", many: true },
] as const;
export type TermKind = (typeof termKinds)[number]["key"];

/** One typed term. `job` is without case; the empty text is for every job. */
export type TypedTerm = {
  readonly kind: TermKind;
  readonly job: string;
  readonly cell: TypedCell;
};

export const termFindings = {
  "validity-not-days": {
    level: "warn",
    says: "The quotation is valid for {found}, which is not a whole number of days from 1 to 3650; 30 are used.",
    todo: "Type the number of days.",
  },
} as const satisfies FindingTable;

/** Starter text, invented. */
export const starterTerms: readonly (readonly [TermKind, string | number])[] = [
  ["firm", "Starter text: your firm's name and address"],
  ["customer", "Starter text: the customer's name and address"],
  ["validDays", 30],
  ["inclusion", "Starter text: the openings listed above, with their hardware, installed"],
  [
    "exclusion",
    "Starter text: the structure that carries the track, and its fastening to the building",
  ],
  ["exclusion", "Starter text: permits, inspection, wiring"],
  ["note", "Starter text: openings are made to the sizes listed; changes are priced anew"],
];

const startersOwn: readonly TypedTerm[] = starterTerms.map(([kind, value]) => ({
  kind,
  job: "",
  cell: { value, place: null },
}));

const usualDays = 30;
const mostDays = 3650;

/**
 * The terms of one job's quotation made on `date`, a serial. A single term of the job's own goes
 * before the usual one; lines of the job's own follow the usual ones. The starter's stand where
 * nothing at all was typed.
 */
export function termsFor(
  typed: readonly TypedTerm[] | null,
  job: string,
  date: number,
): { readonly terms: QuotationTerms; readonly findings: readonly Finding[] } {
  const known = (typed ?? startersOwn).filter(({ cell }) => !isBlank(cell.value));
  const isJobs = (term: TypedTerm): boolean => term.job === job.trim().toLowerCase();
  const ofKind = (kind: TermKind): readonly TypedTerm[] => [
    ...known.filter((term) => term.kind === kind && term.job === ""),
    ...known.filter((term) => term.kind === kind && term.job !== "" && isJobs(term)),
  ];
  const lines = (kind: TermKind): readonly string[] =>
    ofKind(kind).map(({ cell }) => cellText(cell.value).trim());
  const single = (kind: TermKind): string => lines(kind).at(-1) ?? "";
  const days = daysOf(ofKind("validDays").at(-1), job);
  return {
    terms: {
      firm: single("firm"),
      customer: single("customer"),
      project: single("project") || job,
      number: single("number"),
      date,
      validUntil: date + days.days,
      inclusions: lines("inclusion"),
      exclusions: lines("exclusion"),
      notes: lines("note"),
    },
    findings: days.findings,
  };
}

function daysOf(
  term: TypedTerm | undefined,
  job: string,
): { readonly days: number; readonly findings: readonly Finding[] } {
  if (term === undefined) return { days: usualDays, findings: [] };
  const { value, place } = term.cell;
  const days = typedNumber(value);
  const isSound = Number.isInteger(days) && days >= 1 && days <= mostDays;
  if (isSound) return { days, findings: [] };
  const found = cellText(value);
  return {
    days: usualDays,
    findings: [makeFinding(termFindings, "validity-not-days", { place, found, job })],
  };
}
