/** Two counts compared: issues of the workbook, what is counted now, or those of two files. */
import { ok, type Result } from "../../core/base/result";
import { alreadyDone, between, finish, type Steps } from "../../core/base/steps";
import { currencyOf, type Currency } from "../../core/money/currency";
import { compareInSteps, type Comparison } from "../../core/revisions/compareCounts";
import type { MarkAnswer } from "../../core/revisions/markPairs";
import { countInSteps } from "../../core/revisions/countOf";
import { issueKey, type Count } from "../../core/revisions/issue";
import { againstOrders, type OrderedLine, type OrderedPieces } from "../../core/revisions/ordered";
import { jobKey } from "../../core/takeoff/takeOff";
import { revisionSheet } from "../../sheets/revisions/revisionSheet";
import type { Drawing } from "../../workbook/drawing";
import type { Workbook } from "../../workbook/workbook";
import { nowName, readIssue, type IssueFault } from "./issues";
import { readAnswers } from "./markAnswers";
import { orderedForJobs } from "../orders/orderedForJobs";
import { currencyIn, lengthStyleOf, type Settings } from "../settings";
import type { WorkbookTakeOff } from "../reading/workbookTakeOff";

/** Two counts with what they are called, and how they differ. */
export type Revision = {
  readonly from: string;
  readonly to: string;
  /** What the only job of the older count was called, where the newer one has another name for it. */
  readonly jobWas: string | null;
  readonly comparison: Comparison;
  /** What is ordered in another number than the newer count needs. */
  readonly ordered: readonly OrderedLine[];
  /** False where there is an order book that cannot be read. */
  readonly isOrderedKnown: boolean;
};

/** The count of a take-off, as it would be frozen. */
export const countNow = (takeOff: WorkbookTakeOff, settings: Settings): Count =>
  finish(countNowInSteps(takeOff, settings));

/** The same, a step at a time. */
export function* countNowInSteps(
  { estimate, complete }: WorkbookTakeOff,
  settings: Settings,
): Steps<Count> {
  return { ...(yield* countInSteps(estimate, settings.currency)), isComplete: complete };
}

/** Two counts of a workbook. */
export type RevisionWanted = {
  /** Issues by name, or `now`; the older one first. */
  readonly from: string;
  readonly to: string;
  /** A date serial. */
  readonly today: number;
};

/**
 * Reads the two, with what a person said of marks and what the workbook's order book says is ordered.
 * What is left to do is to compare them. Error: one cannot be read.
 */
export async function readRevisions(
  workbook: Workbook,
  takeOff: WorkbookTakeOff,
  settings: Settings,
  { from, to, today }: RevisionWanted,
): Promise<Result<() => Steps<Revision>, IssueFault>> {
  const read = async (name: string): Promise<Result<() => Steps<NamedCount>, IssueFault>> => {
    if (issueKey(name) === issueKey(nowName)) return ok(() => countedNow(takeOff, settings));
    const issue = await readIssue(workbook, name);
    return issue.ok ? ok(() => alreadyDone(issue.value)) : issue;
  };
  const older = await read(from);
  if (!older.ok) return older;
  const newer = await read(to);
  if (!newer.ok) return newer;
  const ordered = await orderedForJobs(workbook, takeOff, settings, today);
  if (!ordered.ok) return ordered;
  const answers = await readAnswers(workbook);
  return ok(function* (): Steps<Revision> {
    const one = yield* between(0, 0.1, older.value());
    const other = yield* between(0.1, 0.2, newer.value());
    return yield* between(0.2, 1, revisionInSteps(one, other, answers, ordered.value));
  });
}

type NamedCount = { readonly name: string; readonly count: Count };

function* countedNow(takeOff: WorkbookTakeOff, settings: Settings): Steps<NamedCount> {
  return { name: nowName, count: yield* countNowInSteps(takeOff, settings) };
}

/** Two counts from wherever they come. */
export const revisionOf = (
  from: NamedCount,
  to: NamedCount,
  answers: readonly MarkAnswer[] = [],
  ordered: readonly OrderedPieces[] | null = [],
): Revision => finish(revisionInSteps(from, to, answers, ordered));

function* revisionInSteps(
  from: NamedCount,
  to: NamedCount,
  answers: readonly MarkAnswer[],
  ordered: readonly OrderedPieces[] | null,
): Steps<Revision> {
  const { count, jobWas } = underOneJob(from.count, to.count);
  const comparison = yield* compareInSteps(count, to.count, answers);
  const jobs = new Set([...jobsIn(count), ...jobsIn(to.count)].map(jobKey));
  const ofThese = (ordered ?? []).filter(({ job }) => jobs.has(jobKey(job)));
  return {
    from: from.name,
    to: to.name,
    jobWas,
    comparison,
    ordered: againstOrders(to.count, ofThese).filter((line) => line.ordered !== line.needed),
    isOrderedKnown: ordered !== null,
  };
}

type UnderOneJob = { readonly count: Count; readonly jobWas: string | null };

/**
 * Where each of two counts is of one job, the older one under the name of the newer: without a job
 * column a job is called after its file, and files are renamed.
 */
function underOneJob(count: Count, newer: Count): UnderOneJob {
  const [own, ...more] = jobsIn(count);
  const [wanted, ...others] = jobsIn(newer);
  const isOne = more.length + others.length === 0 && own !== undefined && wanted !== undefined;
  if (!isOne || jobKey(own) === jobKey(wanted)) return { count, jobWas: null };
  const openings = count.openings.map((each) => ({ ...each, job: wanted }));
  const lines = count.lines.map((each) => ({ ...each, job: wanted }));
  return { count: { ...count, openings, lines }, jobWas: own };
}

const jobsIn = ({ openings, lines }: Count): readonly string[] => [
  ...new Map([...openings, ...lines].map(({ job }) => [jobKey(job), job])).values(),
];

/** That of the newer count: an issue keeps its own, whatever the settings are now. */
export const currencyOfRevision = ({ comparison }: Revision, settings: Settings): Currency =>
  currencyOf(comparison.currency.to) ?? currencyIn(settings);

/** The comparison as a sheet of ours; a later one of the same two takes its place. */
export const revisionDrawing = (revision: Revision, settings: Settings): Drawing =>
  revisionSheet({
    ...revision,
    lengths: lengthStyleOf(settings),
    currency: currencyOfRevision(revision, settings),
    withCosts: settings.withCosts,
  });
