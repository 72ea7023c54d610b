/** Writes the price sheet of every job, the margins of all, and what an owner asks of them. */
import { Button } from "@fluentui/react-components";
import type { WorkbookPrices } from "../../app/pricing/priceWorkbook";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";
import { usePriceSheets } from "./usePriceSheets";
import { WritingLine } from "./WritingLine";

export type AllSheetsPartProps = {
  readonly takeOff: WorkbookTakeOff;
  readonly prices: WorkbookPrices;
};

export function AllSheetsPart({ takeOff, prices }: AllSheetsPartProps) {
  const shared = useSharedStyles();
  const { writing, cancel, writePrices, writeOwnerSheets } = usePriceSheets();
  const { length } = prices.jobs;
  return (
    <>
      <div className={shared.small}>
        Live formulas from cost to price: change a figure on the sheet, and all below follows. For
        the firm only.
      </div>
      {writing.kind === "busy" ? null : (
        <>
          <Button appearance="primary" onClick={() => writePrices(prices)}>
            Write margins and {counted(length, "price sheet")}
          </Button>
          <Button onClick={() => writePrices(prices, () => false)}>Write the margins only</Button>
          <Button onClick={() => writeOwnerSheets(takeOff, prices)}>
            Write what-if, loads and actuals
          </Button>
        </>
      )}
      <WritingLine writing={writing} cancel={cancel} />
    </>
  );
}
