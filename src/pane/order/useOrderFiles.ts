/** The workbooks that the person adds to an order: opened, read and counted while the pane answers. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { CountedFile } from "../../app/orders/countFile";
import { countToOrder, readToOrder, type FileToCount } from "../../app/orders/readToOrder";
import { usePane } from "../state/paneContext";
import { runSteps } from "../state/runSteps";
import { useBroken } from "../state/useBroken";
import { today } from "../../app/today";

export type AddedFile = {
  readonly read: FileToCount;
  /** By its own kit book and items. */
  readonly counted: CountedFile;
};

export type OrderFiles = {
  readonly added: readonly AddedFile[];
  /** Names of files that are being opened. */
  readonly opening: readonly string[];
  /** Why files could not be added, a sentence each. */
  readonly faults: readonly string[];
  readonly add: (files: readonly File[]) => void;
  readonly remove: (file: string) => void;
  readonly clearFaults: () => void;
};

/** `ownName` is this workbook's, which no other has on the order. */
export function useOrderFiles(ownName: string): OrderFiles {
  const { doors } = usePane();
  const onBroken = useBroken();
  const [added, setAdded] = useState<readonly AddedFile[]>([]);
  const [opening, setOpening] = useState<readonly string[]>([]);
  const [faults, setFaults] = useState<readonly string[]>([]);
  const leaving = useRef(new AbortController());
  const taken = useRef<readonly string[]>([]);
  useEffect(() => {
    const left = new AbortController();
    leaving.current = left;
    return () => left.abort();
  }, []);

  const release = (file: string): void => {
    taken.current = taken.current.filter((name) => name !== file);
  };
  const addOne = async (chosen: File): Promise<void> => {
    const { signal } = leaving.current;
    const file = freeName(chosen.name, [ownName, ...taken.current]);
    taken.current = [...taken.current, file];
    const fail = (why: string): void => {
      release(file);
      setFaults((before) => [...before, `${chosen.name} was not added. ${why}`]);
    };
    const opened = await doors.openFile(chosen);
    if (signal.aborted) return;
    if (!opened.ok) {
      fail(opened.error);
      return;
    }
    const read = await readToOrder({ file, workbook: opened.value }, today());
    if (!read.ok) {
      fail(read.error.message);
      return;
    }
    const counted = await runSteps(countToOrder(read.value), { signal });
    if (counted === null) return;
    if (counted.takeOff.inputs.scheduleSources.length === 0) {
      fail("No schedule of openings was found in it.");
      return;
    }
    setAdded((before) => [...before, { read: read.value, counted }]);
  };

  const add = (files: readonly File[]): void => {
    setFaults([]);
    for (const chosen of files) {
      setOpening((before) => [...before, chosen.name]);
      addOne(chosen)
        .catch(onBroken)
        .finally(() => setOpening((before) => before.toSpliced(before.indexOf(chosen.name), 1)));
    }
  };
  return {
    added,
    opening,
    faults,
    add,
    remove: (file) => {
      release(file);
      setAdded((before) => before.filter((each) => each.read.file !== file));
    },
    clearFaults: useCallback(() => setFaults([]), []),
  };
}

/** `Yard.xlsx`, or `Yard.xlsx (2)` where that is taken. */
function freeName(name: string, taken: readonly string[]): string {
  const isFree = (wanted: string): boolean =>
    taken.every((each) => each.toLowerCase() !== wanted.toLowerCase());
  let free = name;
  for (let count = 2; !isFree(free); count += 1) free = `${name} (${count})`;
  return free;
}
