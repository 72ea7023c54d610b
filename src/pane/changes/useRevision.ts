/** Two counts of the workbook compared, again whenever one of them or an answer changes. */
import { useCallback, useEffect, useState } from "react";
import type { IssueFault } from "../../app/issues";
import { forgetAnswer, keepAnswer } from "../../app/markAnswers";
import { today } from "../../app/today";
import { compareRevisions, type Revision } from "../../app/revisions";
import type { WorkbookTakeOff } from "../../app/takeOffWorkbook";
import type { MarkAnswer, MarkPair } from "../../core/revisions/markPairs";
import { usePane } from "../state/paneContext";
import { useOrFault } from "../state/useOrFault";

export type Compared =
  | { readonly kind: "busy" }
  | { readonly kind: "done"; readonly revision: Revision }
  | { readonly kind: "failed"; readonly fault: IssueFault };

export type RevisionHandle = {
  /** While it is compared anew it is what it was. */
  readonly compared: Compared;
  readonly say: (answer: MarkAnswer) => void;
  readonly takeBack: (pair: MarkPair) => void;
};

export function useRevision(takeOff: WorkbookTakeOff, from: string, to: string): RevisionHandle {
  const { workbook, state, showFault } = usePane();
  const { settings } = state;
  const [compared, setCompared] = useState<Compared>({ kind: "busy" });
  const [said, setSaid] = useState(0);
  const onThrown = useOrFault(
    useCallback((fault: IssueFault) => setCompared({ kind: "failed", fault }), []),
  );
  const onAnswerThrown = useOrFault(showFault);
  useEffect(() => {
    let isLeft = false;
    compareRevisions(workbook, takeOff, settings, { from, to, today: today() }).then((revision) => {
      if (isLeft) return;
      setCompared(
        revision.ok
          ? { kind: "done", revision: revision.value }
          : { kind: "failed", fault: revision.error },
      );
    }, onThrown);
    return () => {
      isLeft = true;
    };
  }, [workbook, takeOff, settings, from, to, said, onThrown]);

  const keep = (kept: ReturnType<typeof keepAnswer>): void => {
    kept.then((written) => {
      if (!written.ok) showFault(written.error);
      setSaid((count) => count + 1);
    }, onAnswerThrown);
  };
  return {
    compared,
    say: (answer) => keep(keepAnswer(workbook, answer)),
    takeBack: (pair) => keep(forgetAnswer(workbook, pair)),
  };
}
