/** Writing the sheets: drawn in turns, then written as one act; how far it is and what came of it. */
import { useRef, useState } from "react";
import { keepLastWritten, readLastWritten, summaryOf } from "../../app/lastWritten";
import { changesSince } from "../../app/changesSince";
import { currencyIn } from "../../app/settings";
import type { WorkbookTakeOff } from "../../app/takeOffWorkbook";
import { drawTakeOff, writeDrawings, type IsIn } from "../../app/writeSheets";
import { ok, type Result } from "../../core/base/result";
import { cancelled } from "../../workbook/faults";
import type { SheetSummary, WorkbookFault, WrittenSheet } from "../../workbook/workbook";
import { hostFault } from "../state/hostFault";
import { usePane } from "../state/paneContext";
import { runSteps } from "../state/runSteps";
import { useBroken } from "../state/useBroken";

export type Written = {
  readonly sheets: readonly WrittenSheet[];
  /** What it changed, in one sentence; the empty text where nothing was written before. */
  readonly changes: string;
  /** Sheets of ours that were written before and not this time. */
  readonly older: readonly string[];
};

export type Writing =
  | { readonly kind: "idle" }
  | { readonly kind: "busy"; readonly progress: number }
  | { readonly kind: "done"; readonly written: Written }
  | { readonly kind: "failed"; readonly fault: WorkbookFault };

export type WritingHandle = {
  readonly writing: Writing;
  readonly write: (takeOff: WorkbookTakeOff, isIn: IsIn) => void;
  readonly cancel: () => void;
};

/** How much of the way is done once the sheets are drawn. */
const whenDrawn = 0.3;

export function useWriting(): WritingHandle {
  const { workbook, state } = usePane();
  const { settings } = state;
  const [writing, setWriting] = useState<Writing>({ kind: "idle" });
  const running = useRef<AbortController | null>(null);
  const onBroken = useBroken();

  const act = async (
    takeOff: WorkbookTakeOff,
    isIn: IsIn,
    signal: AbortSignal,
  ): Promise<Result<Written, WorkbookFault>> => {
    const onProgress = (progress: number): void => setWriting({ kind: "busy", progress });
    const drawings = await runSteps(drawTakeOff(takeOff, settings, isIn), {
      signal,
      onProgress: (done) => onProgress(done * whenDrawn),
    });
    if (drawings === null) return { ok: false, error: cancelled };
    const before = await readLastWritten(workbook);
    const sheets = await writeDrawings(workbook, takeOff, drawings, {
      signal,
      onProgress: (done) => onProgress(whenDrawn + done * (1 - whenDrawn)),
    });
    if (!sheets.ok) return sheets;
    const currency = currencyIn(settings);
    const now = summaryOf(takeOff.estimate.jobs.filter(isIn), currency);
    // The sheets stand; that the comparison of next time is lost is no fault of this one.
    await keepLastWritten(workbook, before, now);
    const older = olderSheets(await workbook.sheets(), sheets.value);
    return ok({ sheets: sheets.value, changes: changesSince(before, now, currency), older });
  };

  const write = (takeOff: WorkbookTakeOff, isIn: IsIn): void => {
    const run = new AbortController();
    running.current = run;
    setWriting({ kind: "busy", progress: 0 });
    act(takeOff, isIn, run.signal).then(
      (outcome) =>
        setWriting(
          outcome.ok
            ? { kind: "done", written: outcome.value }
            : { kind: "failed", fault: outcome.error },
        ),
      (error: unknown) => {
        const fault = hostFault(error);
        if (fault === null) onBroken(error);
        else setWriting({ kind: "failed", fault });
      },
    );
  };
  return { writing, write, cancel: () => running.current?.abort() };
}

const olderSheets = (
  standing: readonly SheetSummary[],
  written: readonly WrittenSheet[],
): readonly string[] => {
  const names = new Set(written.map(({ name }) => name));
  return standing
    .filter(({ mark, name }) => mark?.kind === "hardware" && !names.has(name))
    .map(({ name }) => name);
};
