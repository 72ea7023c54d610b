/**
 * An opening whose hanging load is over a capacity that the firm entered is stopped, as by any other
 * stop: what hangs there would not hold, so its hardware is likely wrong. It is neither counted nor
 * priced nor ordered, and every total says that it is left out.
 */
import type { Finding } from "../base/finding";
import { between, type Steps } from "../base/steps";
import type { Opening } from "../openings/opening";
import type { Items } from "../pricing/item";
import {
  isAnyEntered,
  jobLoadsSteps,
  type JobLoads,
  type LoadRules,
} from "../pricing/loads/openingLoads";
import { jobKey, type JobTakeOff, type TakeOff } from "../takeoff/takeOff";
import { withoutOpenings } from "../takeoff/withoutOpenings";
import type { StoppedTakeOff } from "./overloadStop";

export type LoadRulesOf = (job: string) => LoadRules;

export function* stopOverloaded(
  taken: TakeOff,
  items: Items,
  rulesOf: LoadRulesOf,
): Steps<StoppedTakeOff> {
  const loads = new Map<string, JobLoads>();
  const jobs: JobTakeOff[] = [];
  const stops: Finding[] = [];
  for (const [index, job] of taken.jobs.entries()) {
    const rules = rulesOf(job.job);
    if (!isAnyEntered(rules)) {
      jobs.push(job);
      continue;
    }
    const share = 1 / taken.jobs.length;
    const steps = jobLoadsSteps(job, items, rules);
    const checked = yield* between(share * index, share * (index + 1), steps);
    const stopped = stopsIn(checked);
    loads.set(jobKey(job.job), checked);
    stops.push(...stopped.findings);
    jobs.push(withoutOpenings(job, stopped.openings));
  }
  if (loads.size === 0) return { taken, loads };
  return { taken: { ...taken, jobs, findings: [...taken.findings, ...stops] }, loads };
}

function stopsIn({ openings, findings }: JobLoads): {
  readonly openings: ReadonlySet<Opening>;
  readonly findings: readonly Finding[];
} {
  return {
    openings: new Set(
      openings
        .filter(({ checked }) => checked.findings.some(({ level }) => level === "stop"))
        .map(({ opening }) => opening),
    ),
    findings: findings.filter(({ level }) => level === "stop"),
  };
}
