/**
 * `npm run compare`: what changed from one schedule to another, or since a count was frozen.
 *
 * Exit status: 0 compared and all counted, 1 some openings not counted, 2 unusable input (the message
 * on stderr).
 */
import { dateText } from "../../core/base/date";
import { err, ok, type Result } from "../../core/base/result";
import { finish } from "../../core/base/steps";
import { markPairKey, type MarkAnswer } from "../../core/revisions/markPairs";
import { freezeIssue, listIssues, removeIssue } from "../../app/revisions/issues";
import { keepAnswer } from "../../app/revisions/markAnswers";
import {
  countNow,
  currencyOfRevision,
  readRevisions,
  revisionDrawing,
  revisionOf,
  type Revision,
} from "../../app/revisions/revisions";
import { lengthStyleOf, readSettings, type Settings } from "../../app/settings";
import { takeOffWorkbook } from "../../app/reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { today } from "../../app/today";
import type { FileWorkbook } from "../../adapters/xlsx/fileWorkbook";
import { answer, type Answer } from "./answer";
import { readCompareArguments, type CompareArguments } from "./compareArguments";
import { compareJson, compareText } from "./compareText";
import { readWorkbookFile, writeFileWhole } from "./files";

type Counted = {
  readonly workbook: FileWorkbook;
  readonly settings: Settings;
  readonly takeOff: WorkbookTakeOff;
};

async function run(words: readonly string[]): Promise<Result<Answer, string>> {
  const read = readCompareArguments(words);
  if (!read.ok) return read;
  const wanted = read.value;
  switch (wanted.kind) {
    case "files":
      return await compareFiles(wanted);
    case "issues":
      return await compareIssues(wanted);
    case "list":
      return await list(wanted);
    case "freeze":
      return await freeze(wanted);
    case "remove":
      return await remove(wanted);
  }
}

type Wanted<Kind extends CompareArguments["kind"]> = Extract<CompareArguments, { kind: Kind }>;

async function compareFiles(wanted: Wanted<"files">): Promise<Result<Answer, string>> {
  const counted: Counted[] = [];
  for (const path of [wanted.older, wanted.newer]) {
    const each = await countFileAt(path, wanted);
    if (!each.ok) return each;
    counted.push(each.value);
  }
  const [older, newer] = counted;
  if (older === undefined || newer === undefined) throw new RangeError("Two files are compared");
  const named = (name: string, { takeOff, settings }: Counted) => ({
    name,
    count: countNow(takeOff, settings),
  });
  const revision = revisionOf(
    named(wanted.older, older),
    named(wanted.newer, newer),
    wanted.answers,
  );
  return await told(wanted, newer, revision);
}

async function compareIssues(wanted: Wanted<"issues">): Promise<Result<Answer, string>> {
  const counted = await countFileAt(wanted.workbook, wanted);
  if (!counted.ok) return counted;
  const { workbook, takeOff, settings } = counted.value;
  for (const each of wanted.answers) {
    const kept = await keepAnswer(workbook, each);
    if (!kept.ok) return err(kept.error.message);
  }
  const { from, to } = wanted;
  const wantedHere = { from, to, today: today() };
  const read = await readRevisions(workbook, takeOff, settings, wantedHere);
  return read.ok
    ? await told(wanted, counted.value, finish(read.value()))
    : err(read.error.message);
}

async function list({ workbook: path, json }: Wanted<"list">): Promise<Result<Answer, string>> {
  const workbook = readWorkbookFile(path);
  if (!workbook.ok) return workbook;
  const listed = await listIssues(workbook.value);
  if (!listed.ok) return err(listed.error.message);
  const issues = listed.value.map(({ day, ...issue }) => ({
    ...issue,
    date: dateText(day),
  }));
  const lines = issues.map(({ name, date, who, note }) =>
    [`${date} ${name}`, who, note].filter((part) => part !== "").join(", "),
  );
  const text = lines.length === 0 ? "No count was frozen in this workbook." : lines.join("\n");
  return ok({ text: json ? JSON.stringify({ issues }, null, 2) : text, complete: true });
}

async function freeze(wanted: Wanted<"freeze">): Promise<Result<Answer, string>> {
  const counted = await countFileAt(wanted.workbook, wanted);
  if (!counted.ok) return counted;
  const { workbook, takeOff, settings } = counted.value;
  const { name, who, note, day, json } = wanted;
  const head = { name, who, note, day: day ?? today() };
  const frozen = await freezeIssue(workbook, head, countNow(takeOff, settings));
  if (!frozen.ok) return err(frozen.error.message);
  const path = saved(wanted, workbook);
  if (!path.ok) return path;
  const doubt = takeOff.complete ? "" : " NOT COMPLETE: some openings are not counted in it.";
  return ok({
    text: json
      ? JSON.stringify({ frozen: name, file: path.value })
      : `${name} is frozen in ${path.value}.${doubt}`,
    complete: takeOff.complete,
  });
}

async function remove(wanted: Wanted<"remove">): Promise<Result<Answer, string>> {
  const workbook = readWorkbookFile(wanted.workbook);
  if (!workbook.ok) return workbook;
  const removed = await removeIssue(workbook.value, wanted.name);
  if (!removed.ok) return err(removed.error.message);
  const path = saved(wanted, workbook.value);
  if (!path.ok) return path;
  const { name } = removed.value;
  return ok({
    text: wanted.json
      ? JSON.stringify({ removed: name, file: path.value })
      : `${name} is removed from ${path.value}.`,
    complete: true,
  });
}

/** Where the workbook was saved: at `--out`, or in its own place. */
function saved(
  { out, workbook: path }: Wanted<"freeze" | "remove">,
  workbook: FileWorkbook,
): Result<string, string> {
  const written = writeFileWhole(out ?? path, workbook.bytes());
  return written.ok ? ok(out ?? path) : written;
}

async function countFileAt(
  path: string,
  { unit }: CompareArguments,
): Promise<Result<Counted, string>> {
  const workbook = readWorkbookFile(path);
  if (!workbook.ok) return workbook;
  const own = await readSettings(workbook.value);
  const settings = unit === null ? own : { ...own, unit };
  const takeOff = await takeOffWorkbook(workbook.value, settings);
  if (!takeOff.ok) return err(`${path}: ${takeOff.error.message}`);
  if (takeOff.value.inputs.schedules.length === 0) {
    const stops = takeOff.value.findings.filter(({ level }) => level === "stop");
    return err(`${path}: ${stops.map(({ message }) => message).join(" ")}`);
  }
  return ok({ workbook: workbook.value, settings, takeOff: takeOff.value });
}

/** Error: what was said of two marks of which it is not so that one is gone and the other new. */
function answersHeard(
  answers: readonly MarkAnswer[],
  { openings }: Revision["comparison"],
): Result<null, string> {
  const renamed = openings.renamed.map(({ from, to }) => ({
    job: to.job,
    from: from.mark,
    to: to.mark,
  }));
  const heard = new Set([...renamed, ...openings.refused].map(markPairKey));
  const unheard = answers.find((each) => !heard.has(markPairKey(each)));
  if (unheard === undefined) return ok(null);
  const { job, from, to, isSame } = unheard;
  return err(
    `${isSame ? "--same" : "--not-same"} ${job}:${from}=${to} fits nothing: name a job, a mark that only the older count has, and one that only the newer has.`,
  );
}

/** The comparison as it is asked for, and its sheet in a copy of the workbook. */
async function told(
  { json, out, answers }: CompareArguments,
  { workbook, settings }: Counted,
  revision: Revision,
): Promise<Result<Answer, string>> {
  const heard = answersHeard(answers, revision.comparison);
  if (!heard.ok) return heard;
  if (out !== null) {
    const written = await workbook.write([revisionDrawing(revision, settings)]);
    if (!written.ok) return err(written.error.message);
    const saved = writeFileWhole(out, workbook.bytes());
    if (!saved.ok) return saved;
  }
  const { from, to } = revision.comparison.isComplete;
  const text = json
    ? JSON.stringify(compareJson(revision), null, 2)
    : compareText(revision, lengthStyleOf(settings), currencyOfRevision(revision, settings));
  return ok({ text, complete: from && to });
}

answer(await run(process.argv.slice(2)));
