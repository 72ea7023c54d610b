/** Adding sheets to start with, beside what the workbook has. */
import { useState } from "react";
import { demoDrawings } from "../../app/demo/demoDrawings";
import { setUpDrawings, type SetUpPart } from "../../app/setUpWorkbook";
import { hostFault } from "../state/hostFault";
import { usePane } from "../state/paneContext";
import { useBroken } from "../state/useBroken";

export type Adding = {
  readonly isBusy: boolean;
  /** Adds the parts and shows the first of their sheets. `types` are the opening types to choose from. */
  readonly add: (parts: ReadonlySet<SetUpPart>, types: readonly string[]) => void;
  readonly addDemo: () => void;
};

export function useAdding(): Adding {
  const { workbook, goTo, showFault } = usePane();
  const [isBusy, setBusy] = useState(false);
  const onBroken = useBroken();
  const write = (drawings: Parameters<typeof workbook.write>[0]): void => {
    setBusy(true);
    workbook
      .write(drawings)
      .then(
        (written) => {
          const first = written.ok ? written.value[0] : undefined;
          if (!written.ok) showFault(written.error);
          if (first !== undefined) goTo({ sheet: first.name, row: 0, column: 0 });
        },
        (error: unknown) => {
          const fault = hostFault(error);
          if (fault === null) onBroken(error);
          else showFault(fault);
        },
      )
      .finally(() => setBusy(false));
  };
  return {
    isBusy,
    add: (parts, types) => write(setUpDrawings(parts, types)),
    addDemo: () => write(demoDrawings()),
  };
}
