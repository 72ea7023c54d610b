/** Taking over another kit book: the file that was chosen, what it would change, and which of it is wanted. */
import { useCallback, useMemo, useState } from "react";
import {
  checkedImport,
  importDrawings,
  importInSteps,
  isOffered,
  kitBookIn,
  type ImportedBook,
} from "../../app/kitbook/importKitBook";
import type { Inputs } from "../../app/reading/inputs";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import type { Finding } from "../../core/base/finding";
import type { RowChange } from "../../core/bookcheck/compareBooks";
import { headingsOf } from "../../core/estimate/estimate";
import type { KitBookRows } from "../../core/kitbook/rows";
import type { Drawing } from "../../workbook/drawing";
import { alreadyDone } from "../../core/base/steps";
import { useSteps, type StepsHandle } from "./useSteps";
import { useBroken } from "../state/useBroken";
import { usePane } from "../state/paneContext";

export type ChosenFile = {
  readonly name: string;
  readonly rows: KitBookRows;
  /** What was wrong with its headings. */
  readonly findings: readonly Finding[];
};

export type ImportState = {
  /** `null` before one is chosen, or while it is read. */
  readonly file: ChosenFile | null;
  /** Why a file was not opened; the empty text where it was. */
  readonly fault: string;
  readonly choose: (file: File) => void;
  readonly leave: () => void;
  readonly changes: readonly RowChange[];
  readonly isTaken: (change: RowChange) => boolean;
  readonly take: (changes: readonly RowChange[], taken: boolean) => void;
  readonly taken: number;
  /** Rows of the starter that go because the other book has none of them; none where a person's own book counts. */
  readonly starterRowsGone: readonly RowChange[];
  readonly comparing: StepsHandle<unknown>;
  /** The book that comes of it, once it is put together and checked. */
  readonly checking: StepsHandle<ImportedBook | null>;
  readonly draw: () => readonly Drawing[];
};

export function useImport(hand: KitBookAtHand, inputs: Inputs): ImportState {
  const { doors } = usePane();
  const [file, setFile] = useState<ChosenFile | null>(null);
  const [fault, setFault] = useState("");
  // What a person chose otherwise than it was offered, by the change's own key.
  const [chosen, setChosen] = useState<ReadonlyMap<string, boolean>>(new Map());
  const onBroken = useBroken();

  const open = async (picked: File): Promise<void> => {
    const opened = await doors.openFile(picked);
    if (!opened.ok) {
      setFault(`${picked.name} was not opened. ${opened.error}`);
      return;
    }
    const read = await kitBookIn(opened.value);
    if (!read.ok) setFault(`${picked.name} was not read. ${read.error.message}`);
    else if (read.value === null) setFault(`${picked.name} ${noKitBook}`);
    else setFile({ name: picked.name, rows: read.value.rows, findings: read.value.findings });
  };

  const comparing = useSteps(
    useCallback(
      () => (file === null ? alreadyDone(null) : importInSteps(hand, file.rows)),
      [hand, file],
    ),
  );
  const change = comparing.state.kind === "done" ? comparing.state.result : null;
  const isTaken = (each: RowChange): boolean =>
    change !== null && (chosen.get(changeKey(each)) ?? isOffered(each, change));
  // What the other book has comes first, and what it lacks behind that.
  const changes = useMemo(
    () =>
      (change?.changes ?? []).toSorted(
        (one, other) => Number(one.kind === "removed") - Number(other.kind === "removed"),
      ),
    [change],
  );
  const headings = headingsOf(inputs.schedules).join("\n");
  const checking = useSteps(
    useCallback(
      () =>
        change === null
          ? alreadyDone(null)
          : checkedImport(
              change,
              (each) => chosen.get(changeKey(each)) ?? isOffered(each, change),
              headings === "" ? [] : headings.split("\n"),
            ),
      [change, chosen, headings],
    ),
  );
  const book = checking.state.kind === "done" ? checking.state.result : null;
  return {
    file,
    fault,
    choose: (picked) => {
      setFile(null);
      setFault("");
      setChosen(new Map());
      open(picked).catch(onBroken);
    },
    leave: () => setFile(null),
    changes,
    isTaken,
    take: (changes, taken) =>
      setChosen(new Map([...chosen, ...changes.map((each) => [changeKey(each), taken] as const)])),
    taken: changes.filter(isTaken).length,
    starterRowsGone: hand.isStarter
      ? changes.filter((each) => each.kind === "removed" && isTaken(each))
      : [],
    comparing,
    checking,
    draw: () => (book === null ? [] : importDrawings(book.rows, inputs.kitBookEdition)),
  };
}

const noKitBook =
  "has no kit book: no rows under headings such as Type, Name, Formula, or Type, Bag, Item, Quantity. Save this book as .csv to see what one looks like.";

export const changeKey = ({ section, before, after }: RowChange): string =>
  `${section} ${before ?? "-"} ${after ?? "-"}`;
