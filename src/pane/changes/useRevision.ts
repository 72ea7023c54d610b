/** Two counts of the workbook compared in short turns, again whenever one of them or an answer changes. */
import { useCallback, useEffect, useRef, useState } from "react";
import type { IssueFault } from "../../app/revisions/issues";
import { forgetAnswer, keepAnswer } from "../../app/revisions/markAnswers";
import { today } from "../../app/today";
import { readRevisions, type Revision } from "../../app/revisions/revisions";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import type { MarkAnswer, MarkPair } from "../../core/revisions/markPairs";
import { usePane } from "../state/paneContext";
import { runSteps } from "../state/runSteps";
import { useOrFault } from "../state/useOrFault";

/** From 0 to 1 while it is under way. */
export type Comparing = number | "stopped" | "still";

export type Compared = {
  /** While it is compared anew it is what it was. */
  readonly revision: Revision | null;
  readonly fault: IssueFault | null;
  readonly comparing: Comparing;
};

export type RevisionHandle = Compared & {
  readonly say: (answer: MarkAnswer) => void;
  readonly takeBack: (pair: MarkPair) => void;
  readonly stop: () => void;
  readonly again: () => void;
};

export function useRevision(takeOff: WorkbookTakeOff, from: string, to: string): RevisionHandle {
  const { workbook, state, showFault } = usePane();
  const { settings } = state;
  const [compared, setCompared] = useState<Compared>({
    revision: null,
    fault: null,
    comparing: 0,
  });
  const [wanted, setWanted] = useState(0);
  const running = useRef<AbortController | null>(null);
  const onFault = useCallback(
    (fault: IssueFault) => setCompared({ revision: null, fault, comparing: "still" }),
    [],
  );
  const onThrown = useOrFault(onFault);
  const onAnswerThrown = useOrFault(showFault);
  const setComparing = (comparing: Comparing): void =>
    setCompared((last) => ({ ...last, comparing }));

  useEffect(() => {
    const run = new AbortController();
    const { signal } = run;
    running.current = run;
    const compare = async (): Promise<void> => {
      const read = await readRevisions(workbook, takeOff, settings, { from, to, today: today() });
      if (signal.aborted) return;
      if (!read.ok) {
        onFault(read.error);
        return;
      }
      const revision = await runSteps(read.value(), { signal, onProgress: setComparing });
      if (revision !== null) setCompared({ revision, fault: null, comparing: "still" });
    };
    compare().catch((error: unknown) => {
      if (!signal.aborted) onThrown(error);
    });
    return () => run.abort();
  }, [workbook, takeOff, settings, from, to, wanted, onFault, onThrown]);

  const again = (): void => setWanted((count) => count + 1);
  const keep = (kept: ReturnType<typeof keepAnswer>): void => {
    kept.then((written) => {
      if (!written.ok) showFault(written.error);
      again();
    }, onAnswerThrown);
  };
  return {
    ...compared,
    say: (answer) => keep(keepAnswer(workbook, answer)),
    takeBack: (pair) => keep(forgetAnswer(workbook, pair)),
    stop: () => {
      running.current?.abort();
      setComparing("stopped");
    },
    again: () => {
      setComparing(0);
      again();
    },
  };
}
