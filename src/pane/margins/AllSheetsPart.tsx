/** Writes the price sheet of every job, and the margins of all beside one another. */
import { Button } from "@fluentui/react-components";
import type { WorkbookPrices } from "../../app/priceWorkbook";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";
import { usePriceSheets } from "./usePriceSheets";
import { WritingLine } from "./WritingLine";

export function AllSheetsPart({ prices }: { readonly prices: WorkbookPrices }) {
  const shared = useSharedStyles();
  const { writing, cancel, writePrices } = usePriceSheets();
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
        </>
      )}
      <WritingLine writing={writing} cancel={cancel} />
    </>
  );
}
