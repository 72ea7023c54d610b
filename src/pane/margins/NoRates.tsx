/** What to do where the workbook has no rates of its own. */
import { Button } from "@fluentui/react-components";
import { ratesDrawing } from "../../app/pricing/ownerSheets";
import { measureStyleIn } from "../../app/settings";
import { Notice } from "../parts/Notice";
import { usePane } from "../state/paneContext";
import { useAddSheets } from "../sheets/useAddSheets";

export function NoRates({ jobs }: { readonly jobs: readonly string[] }) {
  const { isBusy, add } = useAddSheets();
  const style = measureStyleIn(usePane().state.settings);
  return (
    <Notice
      level="warn"
      quiet
      actions={
        <Button disabledFocusable={isBusy} onClick={() => add([ratesDrawing(jobs, style)])}>
          Add a rates sheet
        </Button>
      }
    >
      This workbook has no rates sheet. What is shown goes by the starter’s rates, times and
      percentages, which are invented. Add a sheet of them and type your own: nothing that stands is
      touched.
    </Notice>
  );
}
