/** Writes the price sheet of a job, and its quotation: as a sheet, or as a file of its own. */
import { Button } from "@fluentui/react-components";
import { useState } from "react";
import { termsDrawing } from "../../app/pricing/ownerSheets";
import type { WorkbookPrices } from "../../app/pricing/priceWorkbook";
import { quoteJob, type JobQuotation } from "../../app/pricing/quoteJob";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { today } from "../../app/today";
import type { JobPrice } from "../../core/pricing/priceJob";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { useAddSheets } from "../sheets/useAddSheets";
import { usePane } from "../state/paneContext";
import { useOrFault } from "../state/useOrFault";
import { FindingList } from "./FindingList";
import { usePriceSheets } from "./usePriceSheets";
import { WritingLine } from "./WritingLine";

export type JobSheetsPartProps = {
  readonly takeOff: WorkbookTakeOff;
  readonly prices: WorkbookPrices;
  readonly job: JobPrice;
};

/** What came of a quotation. */
type Quoting =
  | { readonly kind: "idle" }
  | { readonly kind: "refused"; readonly why: string }
  | { readonly kind: "quoted"; readonly quotation: JobQuotation; readonly savedAs: string | null };

export function JobSheetsPart({ takeOff, prices, job: { job } }: JobSheetsPartProps) {
  const shared = useSharedStyles();
  const { workbook, state, saveFile, showFault } = usePane();
  const { writing, cancel, writePrices, writeDrawing } = usePriceSheets();
  const { isBusy, add } = useAddSheets();
  const onThrown = useOrFault(showFault);
  const [quoting, setQuoting] = useState<Quoting>({ kind: "idle" });
  const name = `Quotation ${job}`;

  const quote = (deliver: (quotation: JobQuotation) => Promise<string | null>): void => {
    const act = async (): Promise<Quoting> => {
      const wanted = { job, today: today() };
      const quoted = await quoteJob(workbook, takeOff, prices, state.settings, wanted);
      if (!quoted.ok) return { kind: "refused", why: quoted.error };
      return { kind: "quoted", quotation: quoted.value, savedAs: await deliver(quoted.value) };
    };
    act().then(setQuoting, onThrown);
  };
  const asSheet = ({ drawing }: JobQuotation): Promise<null> => {
    writeDrawing({ ...drawing, name });
    return Promise.resolve(null);
  };
  const asFile = async ({ workbook: quoted }: JobQuotation): Promise<string | null> => {
    const file = `${name}.xlsx`;
    await saveFile?.({ ...quoted, name: file });
    return file;
  };
  return (
    <>
      {writing.kind === "busy" ? null : (
        <>
          <Button onClick={() => writePrices(prices, (each) => each === job)}>
            Write the price sheet and the margins
          </Button>
          <h3 className={shared.subheading}>Quotation for the customer</h3>
          {saveFile === null ? null : (
            <>
              <Button appearance="primary" onClick={() => quote(asFile)}>
                Save the quotation as a file
              </Button>
              <div className={shared.small}>
                A workbook of its own, with nothing of cost, margin or reasons in it: this is what
                to send.
              </div>
            </>
          )}
          <Button onClick={() => quote(asSheet)}>Write the quotation as a sheet</Button>
          <div className={shared.small}>
            Beside the other sheets, which show costs: print it or copy it into a workbook of its
            own, and never send this one.
          </div>
        </>
      )}
      <WritingLine writing={writing} cancel={cancel} />
      {quoting.kind === "refused" ? <Notice level="stop">{quoting.why}</Notice> : null}
      {quoting.kind === "quoted" ? (
        <>
          {quoting.savedAs === null ? null : (
            <Notice level="done">Saved as {quoting.savedAs}.</Notice>
          )}
          <FindingList findings={quoting.quotation.findings} />
          {quoting.quotation.findings.some(({ code }) => code === "terms-are-starter") ? (
            <Button disabledFocusable={isBusy} onClick={() => add([termsDrawing()])}>
              Add a sheet of terms
            </Button>
          ) : null}
        </>
      ) : null}
    </>
  );
}
