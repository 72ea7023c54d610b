/** The main use case: a workbook in, an estimate out. */
import { ok, type Result } from "../../core/base/result";
import { estimate } from "../../core/estimate/estimate";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import { enteredLoads } from "../pricing/enteredLoads";
import { nothingRead, readCorrections, type ReadCorrections } from "../corrections/corrections";
import { readInputs, type Inputs, type OtherInputs } from "./inputs";
import { currencyIn, lengthWriter, type Settings } from "../settings";
import { workbookTakeOff, type WorkbookTakeOff } from "./workbookTakeOff";

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
      stopOverloaded: enteredLoads(inputs.rates, settings),
    }),
  );
