/** The issues that the workbook keeps, and ways to keep one more or to take one away. */
import { useCallback, useEffect, useState } from "react";
import { freezeIssue, listIssues, removeIssue, type IssueFault } from "../../app/revisions/issues";
import { countNowInSteps } from "../../app/revisions/revisions";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { err, type Result } from "../../core/base/result";
import type { IssueHead } from "../../core/revisions/issue";
import { cancelled } from "../../workbook/faults";
import { usePane } from "../state/paneContext";
import { runSteps } from "../state/runSteps";
import { useOrFault } from "../state/useOrFault";

export type IssuesHandle = {
  /** The oldest first; `null` until they are read. */
  readonly issues: readonly IssueHead[] | null;
  /** Why they cannot be read, or why one was not kept or taken away. */
  readonly fault: IssueFault | null;
  /** What was done last, in a sentence; the empty text for nothing. */
  readonly done: string;
  readonly isBusy: boolean;
  /** Whether it was kept, once that is known. */
  readonly freeze: (head: IssueHead) => Promise<boolean>;
  readonly remove: (name: string) => void;
};

type Told = {
  readonly fault: IssueFault | null;
  readonly done: string;
  /** The issues that `done` was true of: another workbook may have come since. */
  readonly of: string;
};

const nothingTold: Told = { fault: null, done: "", of: "" };

const faultTold = (fault: IssueFault): Told => ({ ...nothingTold, fault });

export function useIssues(takeOff: WorkbookTakeOff): IssuesHandle {
  const { workbook, state } = usePane();
  const [issues, setIssues] = useState<readonly IssueHead[] | null>(null);
  const [told, setTold] = useState<Told>(nothingTold);
  const [isBusy, setBusy] = useState(false);
  const onThrown = useOrFault(useCallback((fault) => setTold(faultTold(fault)), []));

  // Another workbook may stand in the same place after a change.
  useEffect(() => {
    let isLeft = false;
    listIssues(workbook).then((listed) => {
      if (isLeft) return;
      if (listed.ok) setIssues(listed.value);
      else setTold(faultTold(listed.error));
    }, onThrown);
    return () => {
      isLeft = true;
    };
  }, [workbook, takeOff, onThrown]);

  const act = async (
    doing: () => Promise<Result<IssueHead, IssueFault>>,
    doneWords: (issue: IssueHead) => string,
  ): Promise<boolean> => {
    setBusy(true);
    setTold(nothingTold);
    try {
      const outcome = await doing();
      const listed = await listIssues(workbook);
      if (listed.ok) setIssues(listed.value);
      setTold(
        outcome.ok
          ? {
              fault: null,
              done: doneWords(outcome.value),
              of: JSON.stringify(listed.ok ? listed.value : issues),
            }
          : faultTold(outcome.error),
      );
      return outcome.ok;
    } catch (error) {
      onThrown(error);
      return false;
    } finally {
      setBusy(false);
    }
  };
  return {
    issues,
    fault: told.fault,
    done: told.of === JSON.stringify(issues) ? told.done : "",
    isBusy,
    freeze: (head) =>
      act(
        async () => {
          const { signal } = new AbortController();
          const count = await runSteps(countNowInSteps(takeOff, state.settings), { signal });
          return count === null ? err(cancelled) : await freezeIssue(workbook, head, count);
        },
        ({ name }) => `${name} is frozen and kept in this workbook.`,
      ),
    remove: (name) =>
      void act(
        () => removeIssue(workbook, name),
        (issue) => `${issue.name} is removed.`,
      ),
  };
}
