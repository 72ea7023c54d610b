/** Adding sheets to start with, beside what the workbook has. */
import { demoDrawings } from "../../app/demo/demoDrawings";
import { setUpDrawings, type SetUpPart } from "../../app/writing/setUpWorkbook";
import { useAddSheets } from "../sheets/useAddSheets";

export type Adding = {
  readonly isBusy: boolean;
  /** Adds the parts and shows the first of their sheets. `types` are the opening types to choose from. */
  readonly add: (parts: ReadonlySet<SetUpPart>, types: readonly string[]) => void;
  readonly addDemo: () => void;
};

export function useAdding(): Adding {
  const { isBusy, add } = useAddSheets();
  return {
    isBusy,
    add: (parts, types) => add(setUpDrawings(parts, types)),
    addDemo: () => add(demoDrawings()),
  };
}
