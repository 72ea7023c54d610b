/** What changed since the sheets were last written, in one sentence. */
import { cents } from "../../core/base/units";
import type { Currency } from "../../core/money/currency";
import { moneyText } from "../../core/money/writeMoney";
import { jobKey } from "../../core/takeoff/takeOff";
import type { JobSummary, WrittenSummary } from "./lastWritten";

/**
 * What changed in the jobs of `now`, in one sentence. The empty text where none of them was written
 * before.
 */
export function changesSince(
  before: WrittenSummary | null,
  now: WrittenSummary,
  currency: Currency,
): string {
  const known = new Map((before?.jobs ?? []).map((job) => [jobKey(job.job), job]));
  const pairs = now.jobs.map((job) => ({ now: job, was: known.get(jobKey(job.job)) }));
  const same = pairs.flatMap(({ now: job, was }) => (was === undefined ? [] : [{ now: job, was }]));
  if (same.length === 0) return "";
  const added = pairs.filter(({ was }) => was === undefined).map(({ now: { job } }) => job);
  const parts = [
    openingsWords(same),
    piecesWords(same),
    before?.currency === now.currency ? moneyWords(same, currency) : "",
    added.length === 0 ? "" : `${added.join(", ")} ${added.length === 1 ? "is" : "are"} new`,
  ].filter((words) => words !== "");
  return parts.length === 0
    ? "Nothing has changed since these sheets were last written."
    : `Since these sheets were last written, ${listed(parts)}.`;
}

type Pair = { readonly now: JobSummary; readonly was: JobSummary };

function openingsWords(pairs: readonly Pair[]): string {
  const more = pairs.reduce((sum, { now, was }) => sum + now.counted - was.counted, 0);
  if (more === 0) return "";
  const [count, openings] = [Math.abs(more), Math.abs(more) === 1 ? "opening is" : "openings are"];
  return `${count} ${more > 0 ? "more" : "fewer"} ${openings} counted`;
}

function piecesWords(pairs: readonly Pair[]): string {
  let [more, fewer, lines] = [0, 0, 0];
  for (const { now, was } of pairs) {
    for (const line of new Set([...Object.keys(now.lines), ...Object.keys(was.lines)])) {
      const change = (now.lines[line] ?? 0) - (was.lines[line] ?? 0);
      if (change === 0) continue;
      lines += 1;
      if (change > 0) more += change;
      else fewer -= change;
    }
  }
  const counts = [more > 0 ? `${more} more` : "", fewer > 0 ? `${fewer} fewer` : ""];
  const said = counts.filter((words) => words !== "").join(" and ");
  const pieces = more + fewer === 1 ? "piece is" : "pieces are";
  return said === ""
    ? ""
    : `${said} ${pieces} needed in ${lines} ${lines === 1 ? "line" : "lines"}`;
}

function moneyWords(pairs: readonly Pair[], currency: Currency): string {
  const sum = (pick: (pair: Pair) => JobSummary): number =>
    pairs.reduce((total, pair) => total + (pick(pair).total ?? 0), 0);
  const change = sum(({ now }) => now) - sum(({ was }) => was);
  if (change === 0) return "";
  return `the material costs ${moneyText(cents(Math.abs(change)), currency)} ${change > 0 ? "more" : "less"}`;
}

/** `a`, `a and b`, `a, b and c`. */
const listed = (parts: readonly string[]): string =>
  [parts.slice(0, -1).join(", "), parts.at(-1) ?? ""].filter((part) => part !== "").join(" and ");
