/** Adding sheets to start with, beside what the workbook has. */
import { demoDrawings } from "../../app/demo/demoDrawings";
import { measureStyleIn } from "../../app/settings";
import { setUpDrawings, type SetUpPart } from "../../app/writing/setUpWorkbook";
import { usePane } from "../state/paneContext";
import { useAddSheets } from "../sheets/useAddSheets";

export type Adding = {
  readonly isBusy: boolean;
  /** Adds the parts and shows the first of their sheets. `types` are the opening types to choose from. */
  readonly add: (parts: ReadonlySet<SetUpPart>, types: readonly string[]) => void;
  readonly addDemo: () => void;
};

export function useAdding(): Adding {
  const { isBusy, add } = useAddSheets();
  const style = measureStyleIn(usePane().state.settings);
  return {
    isBusy,
    add: (parts, types) => add(setUpDrawings(parts, types, style)),
    addDemo: () => add(demoDrawings()),
  };
}
