/**
 * `npm run packing`: what the crew works from (packing lists, labels, loading lists), without a screen.
 *
 * Exit status: 0 all packed, 1 some openings not counted, 2 unusable input (the message on stderr).
 */
import { counted } from "../../core/base/counted";
import type { Finding } from "../../core/base/finding";
import { err, ok, type Result } from "../../core/base/result";
import { packJob } from "../../core/bags/bags";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { jobKey } from "../../core/takeoff/takeOff";
import { writePackingLists } from "../../app/writing/packingLists";
import { readSettings, type Settings } from "../../app/settings";
import { takeOffWorkbook } from "../../app/reading/takeOffWorkbook";
import { caution } from "../../sheets/caution";
import { notCompleteWords } from "../../sheets/jobWords";
import { answer, type Answer } from "./answer";
import { readWorkbookFile, writeFileWhole } from "./files";
import { otherInputs, sheetIsThere, targetOf } from "./namedFiles";
import { findingsText } from "./takeOffText";
import { readPackingArguments, type PackingArguments } from "./packingArguments";

async function run(words: readonly string[]): Promise<Result<Answer, string>> {
  const read = readPackingArguments(words);
  if (!read.ok) return read;
  const wanted = read.value;
  const workbook = readWorkbookFile(wanted.schedule);
  if (!workbook.ok) return workbook;
  const named = await sheetIsThere(workbook.value, wanted);
  if (!named.ok) return named;
  const settings = settingsFor(await readSettings(workbook.value), wanted);
  if (!settings.ok) return settings;
  const others = await otherInputs(wanted);
  if (!others.ok) return others;
  const target = targetOf(wanted, workbook.value);
  if (!target.ok) return target;
  const takenOff = await takeOffWorkbook(workbook.value, settings.value, {
    ...others.value,
    target: target.value,
  });
  if (!takenOff.ok) return err(takenOff.error.message);
  const takeOff = takenOff.value;
  if (takeOff.inputs.schedules.length === 0) {
    const stops = takeOff.findings.filter((finding) => finding.level === "stop");
    return err(stops.map((finding) => finding.message).join("\n"));
  }
  const chosen = chooseJobs(takeOff.estimate.jobs, wanted.jobs);
  if (!chosen.ok) return chosen;
  const isIn = (job: JobEstimate): boolean => chosen.value.includes(job);
  const { kinds } = wanted;
  const written = await writePackingLists(target.value, takeOff, settings.value, { kinds, isIn });
  if (!written.ok) return err(written.error.message);
  const saved = writeFileWhole(wanted.out, target.value.bytes());
  if (!saved.ok) return saved;
  const text = [
    ...chosen.value.flatMap(jobText),
    "",
    ...stopsText(takeOff.findings),
    `${wanted.out} has ${written.value.map(({ name }) => name).join(", ")}.`,
    caution,
  ].join("\n");
  return ok({ text, complete: chosen.value.every((job) => notCompleteWords(job).length === 0) });
}

function settingsFor(own: Settings, wanted: PackingArguments): Result<Settings, string> {
  const labels = wanted.grid(own.labels);
  if (!labels.ok) return labels;
  const inMillimetres = wanted.unit === "mm" ? ({ lengths: "millimetres" } as const) : {};
  return ok({
    ...own,
    labels: labels.value,
    ...(wanted.unit === null ? {} : { unit: wanted.unit, ...inMillimetres }),
    ...(wanted.sheet === null ? {} : { schedule: { kind: "sheet", sheet: wanted.sheet } }),
  });
}

/** Error: a name that is no job, with those there are. */
function chooseJobs(
  jobs: readonly JobEstimate[],
  wanted: readonly string[] | null,
): Result<readonly JobEstimate[], string> {
  if (wanted === null) return ok(jobs);
  const keys = new Map(jobs.map((job) => [jobKey(job.job), job]));
  const strange = wanted.find((name) => !keys.has(jobKey(name)));
  return strange === undefined
    ? ok(jobs.filter((job) => wanted.some((name) => jobKey(name) === jobKey(job.job))))
    : err(`No job is called ${strange}. There are: ${jobs.map(({ job }) => job).join("; ")}.`);
}

/** Why openings are not packed, and an empty line; nothing where all are. */
function stopsText(findings: readonly Finding[]): readonly string[] {
  const stops = findingsText(findings.filter(({ level }) => level === "stop"));
  return stops.length === 0 ? [] : [...stops, ""];
}

/** What is packed of a job, and what is not. */
function jobText(job: JobEstimate): readonly string[] {
  const { openings } = packJob(job.takeOff);
  const doors = openings.reduce((sum, { opening }) => sum + opening.quantity, 0);
  const bags = openings.reduce(
    (sum, { opening, bags: of }) => sum + opening.quantity * of.length,
    0,
  );
  const pieces = job.material.lines.reduce((sum, { toOrder }) => sum + toOrder, 0);
  return [
    `${job.job}: ${counted(doors, "packing list")}, ${counted(bags, "bag")}, ${counted(pieces, "piece")} with spares`,
    ...notCompleteWords(job).map((words) => `  ${words}`),
  ];
}

answer(await run(process.argv.slice(2)));
