/** Adds sheets that are the person's from then on, beside what the workbook has, and goes below the headings of the first. */
import { useState } from "react";
import type { Drawing } from "../../workbook/drawing";
import { usePane } from "../state/paneContext";
import { useOrFault } from "../state/useOrFault";

export type AddingSheets = {
  readonly isBusy: boolean;
  readonly add: (drawings: readonly Drawing[]) => void;
};

export function useAddSheets(): AddingSheets {
  const { workbook, goTo, showFault } = usePane();
  const [isBusy, setBusy] = useState(false);
  const onThrown = useOrFault(showFault);
  const add = (drawings: readonly Drawing[]): void => {
    setBusy(true);
    workbook
      .write(drawings)
      .then((written) => {
        const first = written.ok ? written.value[0] : undefined;
        if (!written.ok) showFault(written.error);
        if (first !== undefined)
          goTo({ sheet: first.name, row: drawings[0]?.frozenRows ?? 0, column: 0 });
      }, onThrown)
      .finally(() => setBusy(false));
  };
  return { isBusy, add };
}
