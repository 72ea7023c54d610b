/** Issues: counts that were frozen, kept inside the workbook. */
import { err, ok, type Result } from "../../core/base/result";
import { issueKey, type Count, type Issue, type IssueHead } from "../../core/revisions/issue";
import { countText, longestIssue, readCount } from "../../core/revisions/issueText";
import type { Workbook } from "../../workbook/workbook";
import { jsonValue } from "../jsonValue";

const indexKey = "issues";
const textKey = (number: number): string => `issues.${number}`;

/** Characters of all issues together, so that a workbook stays small enough to be sent around. */
const longestTogether = 3_000_000;

/** What the count of today is called beside the issues. */
export const nowName = "now";

export type IssueFault = { readonly code: string; readonly message: string };

/** An issue in the list; `number` is where its count is kept. */
type Listed = IssueHead & { readonly number: number; readonly length: number };

type Settings = Pick<Workbook, "readSetting" | "writeSetting">;

/** Every issue, the oldest first. Error: what is kept of them cannot be read. */
export async function listIssues(
  workbook: Pick<Workbook, "readSetting">,
): Promise<Result<readonly IssueHead[], IssueFault>> {
  const listed = await readIndex(workbook);
  return listed.ok
    ? ok(listed.value.map(({ name, day, who, note }) => ({ name, day, who, note })))
    : listed;
}

/**
 * Keeps a count under a name. Error: the name is missing or taken, the count is too large, or the
 * host refused; then nothing is kept.
 */
export async function freezeIssue(
  workbook: Settings,
  head: IssueHead,
  count: Count,
): Promise<Result<IssueHead, IssueFault>> {
  const name = oneLine(head.name);
  if (name === "") return err(nameMissing);
  if (issueKey(name) === issueKey(nowName)) return err(nameMeansNow);
  const listed = await readIndex(workbook);
  if (!listed.ok) return listed;
  if (named(listed.value, name) !== undefined) return err(nameTaken(name));
  const text = countText(count);
  const together = listed.value.reduce((sum, { length }) => sum + length, text.length);
  if (text.length > longestIssue) return err(tooLarge);
  if (together > longestTogether) return err(full);
  const number = 1 + Math.max(0, ...listed.value.map((each) => each.number));
  // The count first: an index without its count would be a broken issue.
  const kept = await workbook.writeSetting(textKey(number), text);
  if (!kept.ok) return kept;
  const issue = { name, day: head.day, who: oneLine(head.who), note: oneLine(head.note) };
  const next: readonly Listed[] = [...listed.value, { ...issue, number, length: text.length }];
  const written = await workbook.writeSetting(indexKey, JSON.stringify(next));
  return written.ok ? ok(issue) : written;
}

/** Error: there is no such issue, or it is damaged. */
export async function readIssue(
  workbook: Pick<Workbook, "readSetting">,
  name: string,
): Promise<Result<Issue, IssueFault>> {
  const listed = await readIndex(workbook);
  if (!listed.ok) return listed;
  const found = named(listed.value, name);
  if (found === undefined) return err(unknown(name, listed.value));
  const text = await workbook.readSetting(textKey(found.number));
  const read = text === null ? err(null) : readCount(text);
  if (!read.ok) return err(damaged(found.name));
  const { day, who, note } = found;
  return ok({ name: found.name, day, who, note, count: read.value });
}

/** Takes an issue away for good. Error: there is no such issue, or the host refused. */
export async function removeIssue(
  workbook: Settings,
  name: string,
): Promise<Result<IssueHead, IssueFault>> {
  const listed = await readIndex(workbook);
  if (!listed.ok) return listed;
  const found = named(listed.value, name);
  if (found === undefined) return err(unknown(name, listed.value));
  const rest = listed.value.filter((each) => each !== found);
  const written = await workbook.writeSetting(indexKey, JSON.stringify(rest));
  if (!written.ok) return written;
  const emptied = await workbook.writeSetting(textKey(found.number), "");
  return emptied.ok ? ok(found) : emptied;
}

const named = (listed: readonly Listed[], name: string): Listed | undefined =>
  listed.find((each) => issueKey(each.name) === issueKey(name));

const oneLine = (words: string): string => words.trim().replace(/\s+/g, " ");

/** Error: it is not what is written here, or not all of it. It is left as it stands. */
async function readIndex(
  workbook: Pick<Workbook, "readSetting">,
): Promise<Result<readonly Listed[], IssueFault>> {
  const text = await workbook.readSetting(indexKey);
  const read = text === null ? [] : jsonValue(text);
  return Array.isArray(read) && read.every(isListed) ? ok(read) : err(unreadable);
}

function isListed(value: unknown): value is Listed {
  if (typeof value !== "object" || value === null) return false;
  const { name, day, who, note, number, length } = value as Readonly<Record<string, unknown>>;
  return (
    [name, who, note].every((text) => typeof text === "string") &&
    [day, number, length].every((count) => Number.isSafeInteger(count))
  );
}

const nameMissing: IssueFault = {
  code: "issue-name-missing",
  message: "Name the issue, such as Bid or Revision B.",
};

const nameMeansNow: IssueFault = {
  code: "issue-name-now",
  message: `“${nowName}” is what is counted today. Give the issue another name, such as Bid or Revision B.`,
};

const nameTaken = (name: string): IssueFault => ({
  code: "issue-name-taken",
  message: `There is an issue ${name} already. Give this one another name, or remove the old one first.`,
});

const tooLarge: IssueFault = {
  code: "issue-too-large",
  message:
    "The count is too large to be kept inside the workbook. Save a copy of the workbook and compare the two files.",
};

const full: IssueFault = {
  code: "issues-full",
  message: "The workbook holds as many issues as it can. Remove an old one first.",
};

const unreadable: IssueFault = {
  code: "issues-unreadable",
  message:
    "What this workbook keeps of its issues cannot be read. A later version of Cribsheet may have written it. It is left as it is.",
};

const unknown = (name: string, listed: readonly IssueHead[]): IssueFault => ({
  code: "issue-unknown",
  message:
    listed.length === 0
      ? `There is no issue ${name}: none was frozen in this workbook.`
      : `There is no issue ${name}. There are: ${listed.map((each) => each.name).join(", ")}.`,
});

const damaged = (name: string): IssueFault => ({
  code: "issue-damaged",
  message: `What the workbook kept of ${name} cannot be read. Compare with a saved copy of the workbook instead.`,
});
