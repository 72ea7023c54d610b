/** The main use case: a workbook in, an estimate out. */
import { makeFinding, type Finding, type FindingTable } from "../core/base/finding";
import { ok, type Result } from "../core/base/result";
import { estimate, type Estimate } from "../core/estimate/estimate";
import type { Workbook, WorkbookFault } from "../workbook/workbook";
import { readInputs, type Inputs, type OtherInputs } from "./inputs";
import { currencyIn, lengthWriter, type Settings } from "./settings";

const useFindings = {
  "no-openings": {
    level: "stop",
    says: "No opening was found in this workbook.",
    todo: "Make a schedule with a row of headings (mark, type, quantity, width, height, post height) and a row for each opening.",
  },
} as const satisfies FindingTable;

export type WorkbookTakeOff = {
  readonly inputs: Inputs;
  readonly estimate: Estimate;
  /** Those of reading the workbook, then those of the estimate. */
  readonly findings: readonly Finding[];
  /** Whether nothing anywhere was left uncounted. */
  readonly complete: boolean;
};

/** Reads the workbook and counts every opening it holds. Error: the host could not read. */
export async function takeOffWorkbook(
  workbook: Workbook,
  settings: Settings,
  others: OtherInputs = {},
): Promise<Result<WorkbookTakeOff, WorkbookFault>> {
  const inputs = await readInputs(workbook, settings, others);
  return inputs.ok ? ok(takeOffInputs(inputs.value, settings)) : inputs;
}

/** Counts what was read. Pure: the same inputs give the same answer. */
export const takeOffInputs = (inputs: Inputs, settings: Settings): WorkbookTakeOff =>
  workbookTakeOff(
    inputs,
    estimate({
      schedules: inputs.schedules,
      kitBook: inputs.kitBook,
      items: inputs.items,
      unit: settings.unit,
      currency: currencyIn(settings),
      showLength: lengthWriter(settings),
    }),
  );

/** What was read and what it comes to, together. */
export function workbookTakeOff(inputs: Inputs, result: Estimate): WorkbookTakeOff {
  const isEmpty = inputs.schedules.every((schedule) => schedule.rows.length === 0);
  const none = isEmpty ? [makeFinding(useFindings, "no-openings", {})] : [];
  const findings = [...none, ...inputs.findings, ...result.findings];
  return {
    inputs,
    estimate: result,
    findings,
    complete: findings.every((finding) => finding.level !== "stop"),
  };
}
