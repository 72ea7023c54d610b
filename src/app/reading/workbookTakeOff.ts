/** A workbook as it was read, and what it comes to. */
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import type { Estimate } from "../../core/estimate/estimate";
import type { ReadCorrections } from "../corrections/corrections";
import type { Inputs } from "./inputs";

const useFindings = {
  "no-openings": {
    level: "stop",
    says: "No opening was found in this workbook.",
    todo: "Make a schedule with a row of headings (mark, type, quantity, width, height, post height) and a row for each opening.",
  },
  "schedule-empty": {
    level: "stop",
    says: "The schedule has no opening yet.",
    todo: "Type the first below its headings.",
  },
} as const satisfies FindingTable;

export type WorkbookTakeOff = {
  readonly inputs: Inputs;
  readonly corrections: ReadCorrections;
  readonly estimate: Estimate;
  /** Those of reading the workbook, then those of the estimate. */
  readonly findings: readonly Finding[];
  /** Whether nothing anywhere was left uncounted. */
  readonly complete: boolean;
};

/** What was read and what it comes to, together. */
export function workbookTakeOff(
  inputs: Inputs,
  corrections: ReadCorrections,
  result: Estimate,
): WorkbookTakeOff {
  const isEmpty = inputs.schedules.every((schedule) => schedule.rows.length === 0);
  const none = isEmpty ? [noOpening(inputs.readings)] : [];
  const findings = [...none, ...inputs.findings, ...corrections.findings, ...result.findings];
  return {
    inputs,
    corrections,
    estimate: result,
    findings,
    complete: findings.every((finding) => finding.level !== "stop"),
  };
}

function noOpening([first]: Inputs["readings"]): Finding {
  if (first === undefined) return makeFinding(useFindings, "no-openings", {});
  const { schedule, headingRow, firstColumn } = first;
  return makeFinding(useFindings, "schedule-empty", {
    place: { sheet: schedule.sheet, row: headingRow + 1, column: firstColumn },
  });
}
