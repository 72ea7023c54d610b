/** This workbook as one of those that are ordered from: its name, and its purchasing sheets as they are now. */
import { useCallback, useEffect, useMemo, useRef, useState } from "react";
import type { CountedFile } from "../../app/orders/countFile";
import type { OtherInputs } from "../../app/reading/inputs";
import { keptBlocks, type KeptBlocks } from "../../app/reading/keptBlocks";
import { readKeptBook } from "../../app/orders/orderBook";
import { readOrderTables } from "../../app/orders/orderTables";
import { countToOrder, readToOrder } from "../../app/orders/readToOrder";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { ok, type Result } from "../../core/base/result";
import type { Workbook, WorkbookFault } from "../../workbook/workbook";
import { usePane } from "../state/paneContext";
import { runSteps } from "../state/runSteps";
import { today } from "../../app/today";

export type OwnWorkbook = {
  readonly name: string;
  /** As counted already, or anew where other inputs hold. `null` when it was aborted. */
  readonly read: (
    takeOff: WorkbookTakeOff,
    others: OtherInputs,
    signal: AbortSignal,
  ) => Promise<Result<CountedFile | null, WorkbookFault>>;
};

const nameless = "this workbook";

export function useOwnWorkbook(): OwnWorkbook {
  const { workbook, state } = usePane();
  const { settings, takeOff: counted } = state;
  const [name, setName] = useState(nameless);
  const blocks = useRef<KeptBlocks | null>(null);
  useEffect(() => {
    const kept = keptBlocks(workbook);
    blocks.current = kept;
    const watching = workbook.watch(kept.forget);
    // A host that does not let itself be watched says so where the take-off is kept up.
    watching.catch(() => undefined);
    return () => {
      watching.then((stop) => stop()).catch(() => undefined);
    };
  }, [workbook]);
  useEffect(() => {
    let isLeft = false;
    workbook.name().then(
      (read) => {
        if (!isLeft) setName(read === "" ? nameless : read);
      },
      () => undefined,
    );
    return () => {
      isLeft = true;
    };
  }, [workbook, counted]);

  const read = useCallback<OwnWorkbook["read"]>(
    async (takeOff, others, signal) => {
      const fromMemory: Workbook = { ...workbook, read: blocks.current?.readOne ?? workbook.read };
      if (others.kitBook === undefined && others.items === undefined) {
        const tables = await readOrderTables(fromMemory);
        if (!tables.ok) return tables;
        const book = await readKeptBook(fromMemory, settings, today());
        if (!book.ok) return book;
        return ok({ file: name, settings, takeOff, tables: tables.value, book: book.value });
      }
      const toCount = await readToOrder({ file: name, workbook: fromMemory }, today());
      if (!toCount.ok) return toCount;
      return ok(await runSteps(countToOrder(toCount.value, others), { signal }));
    },
    [workbook, name, settings],
  );
  // The same object for the same workbook: what is made from it is looked at again when it changes.
  return useMemo(() => ({ name, read }), [name, read]);
}
