/**
 * What a person typed about jobs in this view. What-ifs are kept in the workbook, so that they are there
 * when it is opened again; ranges of a simulation's draws last as long as the view.
 */
import { useCallback, useEffect, useRef, useState } from "react";
import {
  keepWhatIfs,
  noWhatIfs,
  nothingTyped,
  readWhatIfs,
  type KeptWhatIfs,
  type TypedChanges,
  type TypedWhatIf,
} from "../../app/pricing/keptWhatIfs";
import { usePane } from "../state/paneContext";
import { useOrFault } from "../state/useOrFault";
import { usualSimulation, type TypedSimulation } from "./SimulationPart";

export type JobWork = {
  readonly whatIf: TypedWhatIf;
  readonly simulation: TypedSimulation;
};

export type JobWorkHandle = {
  /** By `jobKey`. */
  readonly workOn: (job: string) => JobWork;
  readonly change: (job: string, changed: Partial<JobWork>) => void;
  readonly onAll: TypedChanges;
  readonly changeOnAll: (changes: TypedChanges) => void;
};

/** Long enough for a slider to be moved to its place. */
const pause = 600;

export function useJobWork(): JobWorkHandle {
  const { workbook, showFault } = usePane();
  const onThrown = useOrFault(showFault);
  const [simulations, setSimulations] = useState<ReadonlyMap<string, TypedSimulation>>(new Map());
  const [whatIfs, setWhatIfs] = useState(noWhatIfs);
  /** What is typed and not kept yet. */
  const waiting = useRef<KeptWhatIfs | null>(null);
  const timer = useRef<ReturnType<typeof setTimeout> | undefined>(undefined);

  const keep = useCallback(() => {
    clearTimeout(timer.current);
    const wanted = waiting.current;
    waiting.current = null;
    if (wanted === null) return;
    keepWhatIfs(workbook, wanted).then((kept) => {
      if (!kept.ok) showFault(kept.error);
    }, onThrown);
  }, [workbook, showFault, onThrown]);

  useEffect(() => {
    let isLeft = false;
    readWhatIfs(workbook).then((kept) => {
      // Whoever typed before it was read goes by what they typed.
      if (!isLeft && waiting.current === null) setWhatIfs(kept);
    }, onThrown);
    return () => {
      isLeft = true;
      keep();
    };
  }, [workbook, onThrown, keep]);

  const changeWhatIfs = (changed: KeptWhatIfs): void => {
    setWhatIfs(changed);
    waiting.current = changed;
    clearTimeout(timer.current);
    timer.current = setTimeout(keep, pause);
  };
  return {
    workOn: (job) => ({
      whatIf: whatIfs.byJob.get(job) ?? nothingTyped,
      simulation: simulations.get(job) ?? usualSimulation,
    }),
    change: (job, { whatIf, simulation }) => {
      if (simulation !== undefined) {
        setSimulations((last) => new Map([...last, [job, simulation]]));
      }
      if (whatIf !== undefined) {
        changeWhatIfs({ ...whatIfs, byJob: new Map([...whatIfs.byJob, [job, whatIf]]) });
      }
    },
    onAll: whatIfs.onAll,
    changeOnAll: (onAll) => changeWhatIfs({ ...whatIfs, onAll }),
  };
}
