/**
 * `npm run takeoff`: a schedule in, hardware out, without a screen.
 *
 * Exit status: 0 all counted, 1 some openings not counted, 2 unusable input (the message on stderr).
 */
import { err, ok, type Result } from "../../core/base/result";
import { currencyIn, lengthStyleOf, readSettings, type Settings } from "../../app/settings";
import { takeOffWorkbook } from "../../app/reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { writeTakeOff } from "../../app/writing/writeSheets";
import type { FileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import { answer, type Answer } from "./answer";
import { readWorkbookFile, writeFileWhole } from "./files";
import { otherInputs, sheetIsThere, targetOf } from "./namedFiles";
import { readTakeOffArguments, type TakeOffArguments } from "./takeOffArguments";
import { takeOffJson } from "./takeOffJson";
import { takeOffText } from "./takeOffText";

/** What is to be printed, and whether all was counted. Error: why the input is unusable. */
async function run(words: readonly string[]): Promise<Result<Answer, string>> {
  const read = readTakeOffArguments(words);
  if (!read.ok) return read;
  const wanted = read.value;
  const workbook = readWorkbookFile(wanted.schedule);
  if (!workbook.ok) return workbook;
  const named = await sheetIsThere(workbook.value, wanted);
  if (!named.ok) return named;
  const settings = await settingsFor(workbook.value, wanted);
  const others = await otherInputs(wanted);
  if (!others.ok) return others;
  // What was typed on hardware sheets stands in the workbook that is written.
  const opened = targetOf(wanted, workbook.value);
  if (!opened.ok) return opened;
  const target = opened.value;
  const takenOff = await takeOffWorkbook(workbook.value, settings, { ...others.value, target });
  if (!takenOff.ok) return err(takenOff.error.message);
  const takeOff = takenOff.value;
  if (takeOff.inputs.schedules.length === 0) {
    const stops = takeOff.findings.filter((finding) => finding.level === "stop");
    return err(stops.map((finding) => finding.message).join("\n"));
  }
  if (wanted.out !== null) {
    // In another workbook there is no items sheet for live prices to point at.
    const isOther = target !== workbook.value;
    const inputs = isOther ? { ...takeOff.inputs, hasItemsSheet: false } : takeOff.inputs;
    const written = await writeOut(wanted.out, target, { ...takeOff, inputs }, settings);
    if (!written.ok) return written;
  }
  const text = wanted.json
    ? JSON.stringify(takeOffJson(takeOff, settings), null, 2)
    : takeOffText(takeOff, lengthStyleOf(settings), currencyIn(settings));
  return ok({ text, complete: takeOff.complete });
}

async function settingsFor(workbook: FileWorkbook, wanted: TakeOffArguments): Promise<Settings> {
  const settings = await readSettings(workbook);
  const inMillimetres = wanted.unit === "mm" ? ({ lengths: "millimetres" } as const) : {};
  return {
    ...settings,
    ...(wanted.unit === null ? {} : { unit: wanted.unit, ...inMillimetres }),
    ...(wanted.sheet === null ? {} : { schedule: { kind: "sheet", sheet: wanted.sheet } }),
    columns: { ...settings.columns, ...wanted.columns },
  };
}

async function writeOut(
  out: string,
  target: FileWorkbook,
  takeOff: WorkbookTakeOff,
  settings: Settings,
): Promise<Result<null, string>> {
  const written = await writeTakeOff(target, takeOff, settings);
  return written.ok ? writeFileWhole(out, target.bytes()) : err(written.error.message);
}

answer(await run(process.argv.slice(2)));
