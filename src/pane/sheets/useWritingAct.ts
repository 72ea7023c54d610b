/** Writing sheets as one act that shows how far it is, can be cancelled, and says what came of it. */
import { useRef, useState } from "react";
import type { Result } from "../../core/base/result";
import type { WriteOptions, WrittenSheet } from "../../workbook/workbook";
import { hostFault } from "../state/hostFault";
import { useBroken } from "../state/useBroken";

export type Written = {
  readonly sheets: readonly WrittenSheet[];
  /** What it changed, in one sentence; the empty text where nothing was written before. */
  readonly changes: string;
  /** Sheets of ours that were written before and not this time. */
  readonly older: readonly string[];
};

/** Why nothing was written, in plain words; `cancelled` is no fault. */
export type WritingFault = { readonly code: string; readonly message: string };

export type Writing =
  | { readonly kind: "idle" }
  | { readonly kind: "busy"; readonly progress: number }
  | { readonly kind: "done"; readonly written: Written }
  | { readonly kind: "failed"; readonly fault: WritingFault };

export type WritingAct = (
  options: Required<WriteOptions>,
) => Promise<Result<Written, WritingFault>>;

export type WritingActHandle = {
  readonly writing: Writing;
  readonly begin: (act: WritingAct) => void;
  readonly cancel: () => void;
};

export function useWritingAct(): WritingActHandle {
  const [writing, setWriting] = useState<Writing>({ kind: "idle" });
  const running = useRef<AbortController | null>(null);
  const onBroken = useBroken();
  const begin = (act: WritingAct): void => {
    const run = new AbortController();
    running.current = run;
    setWriting({ kind: "busy", progress: 0 });
    const onProgress = (progress: number): void => setWriting({ kind: "busy", progress });
    act({ signal: run.signal, onProgress }).then(
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
  return { writing, begin, cancel: () => running.current?.abort() };
}
