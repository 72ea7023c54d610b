/** The main use case: a workbook in, an estimate out. */
import { makeFinding, type Finding, type FindingTable } from "../../core/base/finding";
import { ok, type Result } from "../../core/base/result";
import { estimate, type Estimate } from "../../core/estimate/estimate";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import { enteredLoads } from "../pricing/enteredLoads";
import { nothingRead, readCorrections, type ReadCorrections } from "../corrections/corrections";
import { readInputs, type Inputs, type OtherInputs } from "./inputs";
import { currencyIn, lengthWriter, type Settings } from "../settings";

const useFindings = {
  "no-openings": {
    level: "stop",
    says: "No opening was found in this workbook.",
    todo: "Make a schedule with a row of headings (mark, type, quantity, width, height, post height) and a row for each opening.",
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

/**
 * Reads the workbook and counts every opening it holds, with what was typed on the hardware sheets of
 * the workbook that is to be written. Error: the host could not read.
 */
export async function takeOffWorkbook(
  workbook: Workbook,
  settings: Settings,
  others: OtherInputs & { readonly target?: Workbook } = {},
): Promise<Result<WorkbookTakeOff, WorkbookFault>> {
  const inputs = await readInputs(workbook, settings, others);
  if (!inputs.ok) return inputs;
  const typed = await readCorrections(others.target ?? workbook);
  return typed.ok ? ok(takeOffInputs(inputs.value, settings, typed.value)) : typed;
}

/** Counts what was read. Pure: the same inputs give the same answer. */
export const takeOffInputs = (
  inputs: Inputs,
  settings: Settings,
  corrections: ReadCorrections = nothingRead,
): WorkbookTakeOff =>
  workbookTakeOff(
    inputs,
    corrections,
    estimate({
      schedules: inputs.schedules,
      kitBook: inputs.kitBook,
      items: inputs.items,
      unit: settings.unit,
      currency: currencyIn(settings),
      showLength: lengthWriter(settings),
      corrections: corrections.input,
      loadRules: enteredLoads(inputs.rates, settings),
    }),
  );

/** What was read and what it comes to, together. */
export function workbookTakeOff(
  inputs: Inputs,
  corrections: ReadCorrections,
  result: Estimate,
): WorkbookTakeOff {
  const isEmpty = inputs.schedules.every((schedule) => schedule.rows.length === 0);
  const none = isEmpty ? [makeFinding(useFindings, "no-openings", {})] : [];
  const findings = [...none, ...inputs.findings, ...corrections.findings, ...result.findings];
  return {
    inputs,
    corrections,
    estimate: result,
    findings,
    complete: findings.every((finding) => finding.level !== "stop"),
  };
}
