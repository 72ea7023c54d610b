/** What writing now would change, in one sentence. */
import { useEffect, useMemo, useState } from "react";
import { changesSince } from "../../app/writing/changesSince";
import { readLastWritten, summaryOf, type WrittenSummary } from "../../app/writing/lastWritten";
import { currencyIn } from "../../app/settings";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { usePane } from "../state/paneContext";

/**
 * The empty text while it is not known, and where none of the jobs was written before. What was
 * written last is read again when `isWritten` turns.
 */
export function useChanges(jobs: readonly JobEstimate[], isWritten: boolean): string {
  const { workbook, state } = usePane();
  const { takeOff, settings } = state;
  const [before, setBefore] = useState<WrittenSummary | null>(null);
  useEffect(() => {
    let isLeft = false;
    readLastWritten(workbook).then(
      (read) => {
        if (!isLeft) setBefore(read);
      },
      // A host that does not answer now says so where the workbook is read.
      () => undefined,
    );
    return () => {
      isLeft = true;
    };
  }, [workbook, takeOff, isWritten]);
  const currency = currencyIn(settings);
  return useMemo(
    () => changesSince(before, summaryOf(jobs, currency), currency),
    [before, jobs, currency],
  );
}
