/** The prices of the workbook's jobs, kept up with its count. */
import { useCallback, useEffect, useRef, useState } from "react";
import { keptBlocks } from "../../app/reading/keptBlocks";
import { priceSteps, readPriceInputs, type WorkbookPrices } from "../../app/pricing/priceWorkbook";
import { keepOwnerRanges, type OwnerRanges } from "../../app/pricing/ranges";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { today } from "../../app/today";
import type { OwnerRange } from "../../core/pricing/chances/ownerRanges";
import type { WorkbookFault } from "../../workbook/workbook";
import { hostFault } from "../state/hostFault";
import { usePane } from "../state/paneContext";
import { runSteps } from "../state/runSteps";
import { useBroken } from "../state/useBroken";
import { useOrFault } from "../state/useOrFault";

export type PricesHandle = {
  /** The last whole pricing; `null` before the first. */
  readonly prices: WorkbookPrices | null;
  /** From 0 to 1 while a pricing is under way, else `null`. */
  readonly progress: number | null;
  readonly fault: WorkbookFault | null;
  /** Keeps what the owner thinks figures may turn out to be in the workbook, and goes by it. */
  readonly changeRanges: (ranges: readonly OwnerRange[]) => void;
};

type Priced = {
  readonly prices: WorkbookPrices | null;
  /** What `prices` were made from, so that it shows whether they are of now. */
  readonly of: WorkbookTakeOff | null;
  readonly progress: number;
  readonly fault: WorkbookFault | null;
};

const before: Priced = { prices: null, of: null, progress: 0, fault: null };

/** Prices anew whenever the count changed, which it does a moment after any cell did. */
export function usePrices(takeOff: WorkbookTakeOff): PricesHandle {
  const { workbook, state, showFault } = usePane();
  const { settings } = state;
  const onBroken = useBroken();
  const onThrown = useOrFault(showFault);
  const [blocks] = useState(() => keptBlocks(workbook));
  const [priced, setPriced] = useState(before);
  const wanted = useRef<readonly OwnerRange[] | null>(null);
  const isKeeping = useRef(false);

  useEffect(() => {
    const watching = workbook.watch(blocks.forget);
    // A host that cannot be watched says so where the count watches it.
    watching.catch(() => undefined);
    return () => {
      watching.then((stop) => stop()).catch(() => undefined);
    };
  }, [workbook, blocks]);

  useEffect(() => {
    const run = new AbortController();
    const { signal } = run;
    const price = async (): Promise<void> => {
      const { name, sheets, readSetting } = workbook;
      const inputs = await readPriceInputs({ name, sheets, readSetting, read: blocks.readOne });
      if (signal.aborted) return;
      if (!inputs.ok) {
        setPriced((last) => ({ ...last, of: takeOff, fault: inputs.error }));
        return;
      }
      const prices = await runSteps(priceSteps(takeOff, inputs.value, settings, today()), {
        signal,
        onProgress: (progress) => setPriced((last) => ({ ...last, progress })),
      });
      if (prices !== null) setPriced({ prices, of: takeOff, progress: 0, fault: null });
    };
    price().catch((error: unknown) => {
      const fault = hostFault(error);
      if (fault === null) onBroken(error);
      else if (!signal.aborted) setPriced((last) => ({ ...last, of: takeOff, fault }));
    });
    return () => run.abort();
  }, [workbook, blocks, takeOff, settings, onBroken]);

  const changeRanges = useCallback(
    (ranges: readonly OwnerRange[]) => {
      const kept: OwnerRanges = { ranges, from: "kept", findings: [] };
      setPriced((last) =>
        last.prices === null ? last : { ...last, prices: { ...last.prices, ranges: kept } },
      );
      wanted.current = ranges;
      if (isKeeping.current) return;
      isKeeping.current = true;
      const keep = async (): Promise<void> => {
        // Whoever types goes on typing: only what stands last has to be kept.
        for (let next = wanted.current; next !== null; next = wanted.current) {
          wanted.current = null;
          const done = await keepOwnerRanges(workbook, next);
          if (!done.ok) showFault(done.error);
        }
      };
      keep()
        .catch(onThrown)
        .finally(() => {
          isKeeping.current = false;
        });
    },
    [workbook, showFault, onThrown],
  );
  return {
    prices: priced.prices,
    progress: priced.of === takeOff ? null : priced.progress,
    fault: priced.fault,
    changeRanges,
  };
}
