/** Rows of a table of ranges, as typed -> an owner's ranges. */
import { cellText, isBlank, type TypedCell } from "../../base/cell";
import { makeFinding, type Finding, type FindingTable } from "../../base/finding";
import {
  changeFault,
  rangeShapes,
  rangeSubjects,
  rangeWords,
  type ChangeRange,
  type OwnerRange,
} from "../chances/ownerRanges";
import { noPercent, readPercent, type Percent } from "./percent";

export const rangeFindings = {
  "range-subject-unknown": {
    level: "warn",
    says: "{found} is nothing that a range can be of; the row is not used.",
    todo: "Use material, material: FAMILY, hours, wages, freight or price.",
  },
  "range-wrong": {
    level: "warn",
    says: "The range of {subject} cannot be used: {reason}.",
    todo: "Type changes such as -5 %, 0 %, 10 %. Until then the row is not used.",
  },
} as const satisfies FindingTable;

/** A row of a ranges table, as typed. */
export type RangeColumn = "subject" | "job" | "low" | "likely" | "high" | "shape";
export type RangeRow = Readonly<Partial<Record<RangeColumn, TypedCell>>>;

/** Checks rows as typed. A blank likely change is none, a blank shape `pert`. */
export function checkRanges(rows: readonly RangeRow[]): {
  readonly ranges: readonly OwnerRange[];
  readonly findings: readonly Finding[];
} {
  const ranges: OwnerRange[] = [];
  const findings: Finding[] = [];
  for (const row of rows) {
    const found = textOf(row.subject);
    const [name = "", ...rest] = found.split(":");
    const word = name.trim().toLowerCase();
    // Sheets of before called wages by their subject.
    const subject = rangeSubjects.find((one) => rangeWords[one] === word || one === word);
    const place = row.subject?.place ?? null;
    if (subject === undefined || (rest.length > 0 && subject !== "material")) {
      findings.push(makeFinding(rangeFindings, "range-subject-unknown", { place, found }));
      continue;
    }
    const change = readChange(row);
    const reason = typeof change === "string" ? change : changeFault(change);
    if (typeof change === "string" || reason !== null) {
      const values = { subject: found, reason: reason ?? "" };
      findings.push(makeFinding(rangeFindings, "range-wrong", { place, found, values }));
      continue;
    }
    ranges.push({ subject, family: rest.join(":").trim(), job: textOf(row.job), ...change });
  }
  return { ranges, findings };
}

/** The change of a row, or what is wrong with it. */
function readChange(row: RangeRow): ChangeRange | string {
  const [low, likely, high] = [readEnd(row.low), readEnd(row.likely), readEnd(row.high)];
  if (low === null || likely === null || high === null) return "one of its ends is no percentage";
  const typed = textOf(row.shape).toLowerCase();
  const shape = typed === "" ? "pert" : rangeShapes.find((one) => one === typed);
  if (shape === undefined) return `its shape must be one of ${rangeShapes.join(", ")}`;
  return { low, likely, high, shape };
}

function readEnd(cell: TypedCell | undefined): Percent | null {
  if (cell === undefined || isBlank(cell.value)) return noPercent;
  const { value } = cell;
  if (typeof value !== "string" && typeof value !== "number") return null;
  return readPercent(value)?.percent ?? null;
}

const textOf = (cell: TypedCell | undefined): string =>
  cell === undefined ? "" : cellText(cell.value).trim();
