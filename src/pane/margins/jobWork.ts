/** What a person typed about a job in this view: kept while they look at other jobs and views. */
import { useState } from "react";
import { usualSimulation, type TypedSimulation } from "./SimulationPart";
import { nothingTyped, type TypedWhatIf } from "./typedWhatIf";

export type JobWork = {
  readonly whatIf: TypedWhatIf;
  readonly simulation: TypedSimulation;
};

const newWork: JobWork = { whatIf: nothingTyped, simulation: usualSimulation };

export type JobWorkHandle = {
  /** By `jobKey`. */
  readonly workOn: (job: string) => JobWork;
  readonly change: (job: string, changed: Partial<JobWork>) => void;
};

export function useJobWork(): JobWorkHandle {
  const [work, setWork] = useState<ReadonlyMap<string, JobWork>>(new Map());
  return {
    workOn: (job) => work.get(job) ?? newWork,
    change: (job, changed) =>
      setWork((last) => new Map([...last, [job, { ...(last.get(job) ?? newWork), ...changed }]])),
  };
}
