/** The words after `npm run compare --`. */
import { nowName } from "../../app/revisions/issues";
import { err, ok, type Result } from "../../core/base/result";
import { readDate } from "../../core/base/cell";
import type { LengthUnit } from "../../core/lengths/length";
import type { MarkAnswer } from "../../core/revisions/markPairs";
import { readUnit, readWords, wrongWords } from "./words";

/** `files`: two files. `issues`: two counts of one workbook, by their names. */
export type CompareArguments = {
  readonly json: boolean;
  readonly unit: LengthUnit | null;
  /** Where to save the workbook with what it is to hold; `null` for nowhere, or for its own place. */
  readonly out: string | null;
  readonly answers: readonly MarkAnswer[];
} & (
  | { readonly kind: "files"; readonly older: string; readonly newer: string }
  | {
      readonly kind: "issues";
      readonly workbook: string;
      readonly from: string;
      readonly to: string;
    }
  | { readonly kind: "list"; readonly workbook: string }
  | { readonly kind: "remove"; readonly workbook: string; readonly name: string }
  | {
      readonly kind: "freeze";
      readonly workbook: string;
      readonly name: string;
      readonly who: string;
      readonly note: string;
      /** A date serial; `null` for today. */
      readonly day: number | null;
    }
);

const usage = [
  "Use: npm run --silent compare -- OLD NEW [options]",
  "     npm run --silent compare -- BOOK.xlsx --issue NAME [--issue NAME] [options]",
  "     npm run --silent compare -- BOOK.xlsx --freeze NAME --who WHO [--note TEXT] [--date 2026-11-25]",
  "     npm run --silent compare -- BOOK.xlsx --list | --remove NAME",
  "",
  "  OLD NEW             two schedules or workbooks (.csv or .xlsx), the older one first",
  "  --issue NAME        a count that was frozen in the workbook; with one, it is compared with now",
  "  --freeze NAME       keep what is counted now in the workbook, under that name",
  "  --list              what was frozen in the workbook",
  "  --remove NAME       take a frozen count away for good",
  "  --same JOB:OLD=NEW  two marks that are one opening; may be given several times",
  "  --not-same JOB:OLD=NEW  two marks that look alike and are two openings",
  "  --unit in|mm        what a bare number in a schedule means (in)",
  "  --out FILE.xlsx     write the sheet of changes into a copy of the newer workbook; with --freeze and",
  "                      --remove, save a copy instead of the workbook itself",
  "  --json              print one JSON object instead of text",
  "",
  "Exit status: 0 compared and all counted, 1 some openings not counted, 2 unusable input.",
].join("\n");

const options = {
  json: { type: "boolean" },
  out: { type: "string" },
  unit: { type: "string" },
  issue: { type: "string", multiple: true },
  same: { type: "string", multiple: true },
  "not-same": { type: "string", multiple: true },
  remove: { type: "string" },
  freeze: { type: "string" },
  who: { type: "string" },
  note: { type: "string" },
  date: { type: "string" },
  list: { type: "boolean" },
} as const;

/** Error: what is wrong with the words, with the usage. */
export function readCompareArguments(words: readonly string[]): Result<CompareArguments, string> {
  const wrong = (says: string): Result<never, string> => err(wrongWords(says, usage));
  const parsed = readWords(words, options, usage);
  if (!parsed.ok) return parsed;
  const { values, positionals } = parsed.value;
  const unit = readUnit(values.unit);
  if (!unit.ok) return wrong(unit.error);
  const answers = readAnswers(values.same ?? [], values["not-same"] ?? []);
  if (!answers.ok) return wrong(answers.error);
  const { json = false, out = null } = values;
  const common = { json, unit: unit.value, out, answers: answers.value };
  const [first, second, ...more] = positionals;
  if (first === undefined) return wrong("Name two files, or one workbook and an issue.");
  if (more.length > 0) return wrong(`${more.join(" ")} is one too many.`);
  const { issue = [], freeze, remove, list = false } = values;
  const doings = [issue.length > 0, freeze !== undefined, remove !== undefined, list];
  const asked = doings.filter((isAsked) => isAsked).length;
  if (asked > 1) return wrong("Choose one of --issue, --freeze, --list and --remove.");
  if (asked === 1 && second !== undefined) return wrong("Issues are those of one workbook.");
  if (freeze !== undefined) {
    const day = values.date === undefined ? null : readDate(values.date);
    if (values.date !== undefined && day === null) {
      return wrong(`--date is such as 2026-11-25, and not ${values.date}.`);
    }
    if (values.who === undefined) return wrong("Say who freezes it with --who.");
    const { who, note = "" } = values;
    return ok({ ...common, kind: "freeze", workbook: first, name: freeze, who, note, day });
  }
  if (remove !== undefined) return ok({ ...common, kind: "remove", workbook: first, name: remove });
  if (list) return ok({ ...common, kind: "list", workbook: first });
  const [from, to = nowName, ...others] = issue;
  if (others.length > 0) return wrong("Name one issue or two.");
  if (from !== undefined) return ok({ ...common, kind: "issues", workbook: first, from, to });
  if (second === undefined) return wrong("Name two files, or one workbook and an issue.");
  return ok({ ...common, kind: "files", older: first, newer: second });
}

function readAnswers(
  same: readonly string[],
  notSame: readonly string[],
): Result<readonly MarkAnswer[], string> {
  const words = [
    ...same.map((word) => ({ option: "--same", word, isSame: true })),
    ...notSame.map((word) => ({ option: "--not-same", word, isSame: false })),
  ];
  const answers: MarkAnswer[] = [];
  for (const { option, word, isSame } of words) {
    const [, job, from, to] = /^(.*):([^:=]+)=([^=]+)$/.exec(word) ?? [];
    if (job === undefined || from === undefined || to === undefined) {
      return err(`${option} is such as "Tool crib:D1=D101", and not ${word}.`);
    }
    answers.push({ job, from, to, isSame });
  }
  return ok(answers);
}
