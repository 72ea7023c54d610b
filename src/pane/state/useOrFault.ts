/** What to do with what a spreadsheet threw instead of answering. */
import { useCallback } from "react";
import type { WorkbookFault } from "../../workbook/workbook";
import { hostFault } from "./hostFault";
import { useBroken } from "./useBroken";

/** Told as a fault where it is the host's; thrown to where it is shown where it is this program's. */
export function useOrFault(onFault: (fault: WorkbookFault) => void): (error: unknown) => void {
  const onBroken = useBroken();
  return useCallback(
    (error: unknown) => {
      const fault = hostFault(error);
      if (fault === null) onBroken(error);
      else onFault(fault);
    },
    [onFault, onBroken],
  );
}
