/** Writing the sheets of prices: drawn in turns, then written as one act. */
import { drawOwnerSheets } from "../../app/pricing/ownerDrawings";
import { drawPrices, type WorkbookPrices } from "../../app/pricing/priceWorkbook";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { err, ok, type Result } from "../../core/base/result";
import type { Steps } from "../../core/base/steps";
import { cancelled } from "../../workbook/faults";
import type { Drawing } from "../../workbook/drawing";
import type { WorkbookFault, WriteOptions } from "../../workbook/workbook";
import { useWritingAct, type WritingActHandle, type Written } from "../sheets/useWritingAct";
import { usePane } from "../state/paneContext";
import { runSteps } from "../state/runSteps";

export type PriceSheetsHandle = Pick<WritingActHandle, "writing" | "cancel"> & {
  /** The price sheets of the jobs that `isIn`, and the margins of all. */
  readonly writePrices: (prices: WorkbookPrices, isIn?: (job: string) => boolean) => void;
  /** What-if, hanging loads, and actuals where any were typed. */
  readonly writeOwnerSheets: (takeOff: WorkbookTakeOff, prices: WorkbookPrices) => void;
  readonly writeDrawing: (drawing: Drawing) => void;
};

/** How much of the way is done once the sheets are drawn. */
const whenDrawn = 0.3;

export function usePriceSheets(): PriceSheetsHandle {
  const { workbook, state } = usePane();
  const { settings } = state;
  const { writing, begin, cancel } = useWritingAct();
  const write = async (
    drawings: readonly Drawing[],
    { signal, onProgress }: Required<WriteOptions>,
  ): Promise<Result<Written, WorkbookFault>> => {
    const sheets = await workbook.write(drawings, {
      signal,
      onProgress: (done) => onProgress(whenDrawn + done * (1 - whenDrawn)),
    });
    return sheets.ok ? ok({ sheets: sheets.value, changes: "", older: [] }) : sheets;
  };
  const writeDrawn = (steps: Steps<readonly Drawing[]>): void =>
    begin(async (options) => {
      const { signal, onProgress } = options;
      const drawings = await runSteps(steps, {
        signal,
        onProgress: (done) => onProgress(done * whenDrawn),
      });
      return drawings === null ? err(cancelled) : await write(drawings, options);
    });
  return {
    writing,
    cancel,
    writePrices: (prices, isIn) => writeDrawn(drawPrices(prices, settings, isIn)),
    writeOwnerSheets: (takeOff, prices) => writeDrawn(drawOwnerSheets(takeOff, prices, settings)),
    writeDrawing: (drawing) => begin((options) => write([drawing], options)),
  };
}
