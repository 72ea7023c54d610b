/** The hanging loads of one job, worked out in short turns as long as they are looked at. */
import { useEffect, useState } from "react";
import type { WorkbookPrices } from "../../app/pricing/priceWorkbook";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { loadStepsOf } from "../../app/pricing/workbookLoads";
import type { Finding } from "../../core/base/finding";
import type { JobLoads } from "../../core/pricing/loads/openingLoads";
import { jobKey } from "../../core/takeoff/takeOff";
import { usePane } from "../state/paneContext";
import { runSteps } from "../state/runSteps";
import { useBroken } from "../state/useBroken";

/** `progress` is from 0 to 1 before there are loads. */
export type JobLoadsHandle = {
  readonly loads: JobLoads | null;
  /** What of the capacities and other rates cannot be read, or is doubted. */
  readonly entered: readonly Finding[];
  readonly progress: number;
};

const before: JobLoadsHandle = { loads: null, entered: [], progress: 0 };

export function useJobLoads(
  takeOff: WorkbookTakeOff,
  prices: WorkbookPrices,
  job: string,
): JobLoadsHandle {
  const { settings } = usePane().state;
  const [handle, setHandle] = useState(before);
  const onBroken = useBroken();
  useEffect(() => {
    const run = new AbortController();
    const { signal } = run;
    const counted = takeOff.estimate.jobs.find((each) => jobKey(each.job) === jobKey(job));
    if (counted === undefined) return;
    runSteps(loadStepsOf(counted, takeOff, prices, settings), {
      signal,
      onProgress: (progress) => setHandle((last) => ({ ...last, progress })),
    }).then((made) => {
      if (made !== null && !signal.aborted)
        setHandle({ loads: made.loads, entered: made.entered, progress: 1 });
    }, onBroken);
    return () => run.abort();
  }, [takeOff, prices, settings, job, onBroken]);
  return handle;
}
