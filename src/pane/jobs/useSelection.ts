/** Where the person is in the spreadsheet. */
import { useEffect, useState } from "react";
import type { Selection } from "../../workbook/workbook";
import { usePane } from "../state/paneContext";

/** `null` while it is not known, and in a host that does not tell. */
export function useSelection(): Selection | null {
  const { workbook } = usePane();
  const [selection, setSelection] = useState<Selection | null>(null);
  useEffect(() => {
    let isLeft = false;
    const see = (seen: Selection | null): void => {
      if (!isLeft) setSelection(seen);
    };
    // What a host does not answer here it says where the workbook is read.
    workbook.selection().then(see, () => undefined);
    const watching = workbook.watch((change) => {
      if (change.kind === "selection") see(change.selection);
    });
    watching.catch(() => undefined);
    return () => {
      isLeft = true;
      watching.then((stop) => stop()).catch(() => undefined);
    };
  }, [workbook]);
  return selection;
}
