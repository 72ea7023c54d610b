/**
 * `npm run price`: what each job costs and what to ask for it, without a screen.
 *
 * Exit status: 0 all counted, priced and within what was entered, 1 something is not, 2 unusable
 * input (the message on stderr).
 */
import { fileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import { snapshotParts } from "../../adapters/xlsx/snapshotBytes";
import type { Finding } from "../../core/base/finding";
import { err, ok, type Result } from "../../core/base/result";
import { jobKey } from "../../core/takeoff/takeOff";
import { acceptSuggestions } from "../../app/pricing/acceptSuggestions";
import { actualsReport } from "../../app/pricing/jobActuals";
import { ownerDrawings } from "../../app/pricing/ownerDrawings";
import { actualsDrawing } from "../../app/pricing/ownerSheets";
import { priceDrawings, priceWorkbook, type WorkbookPrices } from "../../app/pricing/priceWorkbook";
import { quoteJob } from "../../app/pricing/quoteJob";
import { currencyIn, measureStyleIn, readSettings, type Settings } from "../../app/settings";
import { takeOffWorkbook } from "../../app/reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { today } from "../../app/today";
import { workbookLoads, type WorkbookLoads } from "../../app/pricing/workbookLoads";
import { caution } from "../../sheets/caution";
import { answer, type Answer } from "./answer";
import { readWorkbookFile, writeFileWhole } from "./files";
import { ownerAnswers } from "./ownerAnswers";
import { actualsText, simulationText, whatIfText } from "./ownerText";
import { readPriceArguments, type PriceArguments } from "./priceArguments";
import { ownerJson, priceJson } from "./priceJson";
import { loadsText, priceText } from "./priceText";
import { findingsText } from "./takeOffText";

type Workbook = ReturnType<typeof fileWorkbook>;
type Priced = {
  readonly workbook: Workbook;
  readonly settings: Settings;
  readonly takeOff: WorkbookTakeOff;
  readonly prices: WorkbookPrices;
  readonly loads: WorkbookLoads;
};

async function run(words: readonly string[]): Promise<Result<Answer, string>> {
  const asked = readPriceArguments(words);
  if (!asked.ok) return asked;
  const priced = await priceFile(asked.value.path);
  if (!priced.ok) return priced;
  const { settings, takeOff, prices, loads } = priced.value;
  const written = await writeFiles(asked.value, priced.value);
  if (!written.ok) return written;
  const owner = ownerAnswers(asked.value, prices, takeOff.inputs);
  const findings = [...takeOff.findings, ...prices.findings, ...loads.findings, ...written.value];
  const complete =
    findings.every(({ level }) => level !== "stop") &&
    prices.jobs.every(({ rollUp }) => rollUp.notPriced.length === 0);
  if (asked.value.json) {
    const json = { ...priceJson(prices.jobs, loads, findings, complete), ...ownerJson(owner) };
    return ok({ text: JSON.stringify(json, null, 2), complete });
  }
  const currency = currencyIn(settings);
  const { whatIf, simulations, actuals } = owner;
  const parts = [
    [priceText(prices, currency)],
    loadsText(loads, measureStyleIn(settings)),
    whatIf === null ? [] : whatIfText(whatIf.table, whatIf.swings, currency),
    simulations === null ? [] : simulationText(simulations),
    actuals === null ? [] : actualsText(actuals, currency),
    findingsText(findings),
    [caution],
  ];
  const text = parts.filter((part) => part.length > 0).map((part) => part.join("\n").trimEnd());
  return ok({ text: text.join("\n\n"), complete });
}

/** Error: why the file cannot be priced. */
async function priceFile(path: string): Promise<Result<Priced, string>> {
  const workbook = readWorkbookFile(path);
  if (!workbook.ok) return workbook;
  const settings = await readSettings(workbook.value);
  const takeOff = await takeOffWorkbook(workbook.value, settings);
  if (!takeOff.ok) return err(takeOff.error.message);
  if (takeOff.value.inputs.schedules.length === 0) {
    const stops = takeOff.value.findings.filter(({ level }) => level === "stop");
    return err(stops.map(({ message }) => message).join("\n"));
  }
  const prices = await priceWorkbook(workbook.value, takeOff.value, settings, today());
  if (!prices.ok) return err(prices.error.message);
  const loads = workbookLoads(takeOff.value, prices.value, settings);
  return ok({
    workbook: workbook.value,
    settings,
    takeOff: takeOff.value,
    prices: prices.value,
    loads,
  });
}

/** Writes what was asked for. The findings of a quotation; error: why nothing was written. */
async function writeFiles(
  { out, quotation, actualsFor, accept }: PriceArguments,
  { workbook, settings, takeOff, prices, loads }: Priced,
): Promise<Result<readonly Finding[], string>> {
  if (out === null) return ok([]);
  if (quotation !== null) {
    const made = await quoteJob(workbook, takeOff, prices, settings, {
      job: quotation,
      today: today(),
    });
    if (!made.ok) return made;
    const parts = snapshotParts(made.value.workbook);
    const saved = writeFileWhole(out, fileWorkbook(parts, made.value.workbook.name).bytes());
    return saved.ok ? ok(made.value.findings) : saved;
  }
  const done = prices.actuals.jobs.find(({ job }) => jobKey(job) === jobKey(actualsFor ?? ""));
  if (actualsFor !== null && done === undefined) {
    const names = prices.jobs.map(({ job }) => job).join("; ");
    return err(`There is no job ${actualsFor}. Jobs of this workbook: ${names}.`);
  }
  const book =
    accept.length === 0
      ? ok([])
      : acceptSuggestions(
          actualsReport(prices.actuals, takeOff.inputs).suggestions,
          accept,
          takeOff.inputs,
        );
  if (!book.ok) return book;
  const written = await workbook.write([
    ...priceDrawings(prices, settings),
    ...ownerDrawings(takeOff, prices, settings, loads),
    ...(actualsFor === null || done === undefined ? [] : [actualsDrawing(done, settings)]),
    ...book.value,
  ]);
  if (!written.ok) return err(written.error.message);
  const saved = writeFileWhole(out, workbook.bytes());
  return saved.ok ? ok([]) : saved;
}

answer(await run(process.argv.slice(2)));
