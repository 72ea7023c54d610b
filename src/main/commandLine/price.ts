/**
 * `npm run price`: what each job costs and what to ask for it, without a screen.
 *
 * Exit status: 0 all counted and priced, 1 something is not, 2 unusable input (the message on stderr).
 */
import { parseArgs } from "node:util";
import { fileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import { snapshotParts } from "../../adapters/xlsx/snapshotBytes";
import type { Finding } from "../../core/base/finding";
import { err, ok, type Result } from "../../core/base/result";
import { moneyText } from "../../core/money/writeMoney";
import { percentOfShare, percentText } from "../../core/pricing/percent";
import { priceDrawings, priceWorkbook, type WorkbookPrices } from "../../app/priceWorkbook";
import { quoteJob } from "../../app/quoteJob";
import { currencyIn, readSettings, type Settings } from "../../app/settings";
import { takeOffWorkbook } from "../../app/takeOffWorkbook";
import { today } from "../../app/today";
import { caution } from "../../sheets/caution";
import { answer, type Answer } from "./answer";
import { fileExists, readWorkbookFile, writeFileWhole } from "./files";
import { priceJson } from "./priceJson";
import { findingsText } from "./takeOffText";
import { textTable } from "./textTable";

const usage = [
  "Use: npm run --silent price -- FILE.xlsx [--json] [--out FILE.xlsx]",
  "     npm run --silent price -- FILE.xlsx --quotation JOB --out NEW.xlsx",
  "",
  "  FILE.xlsx   a workbook with a schedule, and as it has them a kit book, items and a rates sheet",
  "  --json      print one JSON object instead of text",
  "  --out FILE  write the sheets Price (one per job) and Margins into a copy of the workbook",
  "  --quotation JOB  write the customer's quotation of that job, and nothing else, into a new file",
].join("\n");

async function run(words: readonly string[]): Promise<Result<Answer, string>> {
  const read = readWords(words);
  if (!read.ok) return read;
  const { path, json, out, quotation } = read.value;
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
  const quoted: Finding[] = [];
  if (quotation !== null && out !== null) {
    const made = await quoteJob(workbook.value, takeOff.value, prices.value, settings, {
      job: quotation,
      today: today(),
    });
    if (!made.ok) return made;
    const bytes = fileWorkbook(
      snapshotParts(made.value.workbook),
      made.value.workbook.name,
    ).bytes();
    const saved = writeFileWhole(out, bytes);
    if (!saved.ok) return saved;
    quoted.push(...made.value.findings);
  } else if (out !== null) {
    const written = await workbook.value.write(priceDrawings(prices.value, settings));
    if (!written.ok) return err(written.error.message);
    const saved = writeFileWhole(out, workbook.value.bytes());
    if (!saved.ok) return saved;
  }
  const findings = [...takeOff.value.findings, ...prices.value.findings, ...quoted];
  const complete =
    findings.every(({ level }) => level !== "stop") &&
    prices.value.jobs.every(({ rollUp }) => rollUp.notPriced.length === 0);
  const text = json
    ? JSON.stringify(priceJson(prices.value.jobs, findings, complete), null, 2)
    : [priceText(prices.value, settings), "", ...findingsText(findings), "", caution].join("\n");
  return ok({ text, complete });
}

type Wish = {
  readonly path: string;
  readonly json: boolean;
  readonly out: string | null;
  /** The job to quote; `null` for none. */
  readonly quotation: string | null;
};

function readWords(words: readonly string[]): Result<Wish, string> {
  try {
    const { values, positionals } = parseArgs({
      args: [...words],
      allowPositionals: true,
      options: {
        json: { type: "boolean" },
        out: { type: "string" },
        quotation: { type: "string" },
      },
    });
    const [path, ...more] = positionals;
    if (path === undefined || more.length > 0) return err(`Name one workbook.\n\n${usage}`);
    const { json = false, out = null, quotation = null } = values;
    if (quotation !== null && out === null) {
      return err(`Name a new file for the quotation with --out.\n\n${usage}`);
    }
    // A quotation holds nothing else, so it must not take the place of a workbook.
    if (quotation !== null && out !== null && fileExists(out)) {
      return err(`${out} is there already. Name a new file for the quotation.`);
    }
    return ok({ path, json, out, quotation });
  } catch (error) {
    // The parser throws on words it does not know: that is a person's fault and not ours.
    if (error instanceof TypeError) return err(`${error.message}\n\n${usage}`);
    throw error;
  }
}

function priceText({ jobs, margins }: WorkbookPrices, settings: Settings): string {
  const currency = currencyIn(settings);
  const share = (value: number | null): string =>
    value === null ? "" : percentText(percentOfShare(Math.round(value * 1000) / 1000));
  return [
    ...jobs.flatMap(({ job, rollUp, hours }) => [
      `${job}: ${hours.hundredths / 100} hours`,
      ...textTable(
        [
          { heading: "Line", align: "left" },
          { heading: "Amount", align: "right" },
          { heading: "How", align: "left" },
        ],
        rollUp.lines.map(({ label, amount, words }) => [label, moneyText(amount, currency), words]),
      ).map((line) => `  ${line}`),
      ...(rollUp.notPriced.length === 0 ? [] : [`  NOT IN IT: ${rollUp.notPriced.join(", ")}`]),
      "",
    ]),
    ...textTable(
      [
        { heading: "Job", align: "left" },
        { heading: "Cost", align: "right" },
        { heading: "Price", align: "right" },
        { heading: "Profit", align: "right" },
        { heading: "Markup", align: "right" },
        { heading: "Margin", align: "right" },
        { heading: "Short of target", align: "right" },
      ],
      margins.rows.map((row) => [
        row.job,
        moneyText(row.cost, currency),
        moneyText(row.price, currency),
        moneyText(row.profit, currency),
        share(row.markup),
        share(row.margin),
        moneyText(row.short, currency),
      ]),
    ),
  ].join("\n");
}

answer(await run(process.argv.slice(2)));
