/** Changes: counts that were frozen, what differs between any two of them or one and now. */
import { makeStyles } from "@fluentui/react-components";
import { useRef, useState } from "react";
import { nowName } from "../../app/revisions/issues";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import type { IssueHead } from "../../core/revisions/issue";
import { Disclosure } from "../parts/Disclosure";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";
import { tokens } from "../parts/tokens";
import { usePane } from "../state/paneContext";
import { ComparedIssues } from "./ComparedIssues";
import { FreezeForm } from "./FreezeForm";
import { IssueList } from "./IssueList";
import { SideChoice, type Sides } from "./SideChoice";
import { useIssues } from "./useIssues";

const useStyles = makeStyles({
  view: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalM },
  content: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalS,
    outlineStyle: "none",
    padding: `0 ${tokens.spacingHorizontalM} ${tokens.spacingVerticalM}`,
  },
});

export function ChangesView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { phase } = usePane().state;
  const { issues, fault, done, isBusy, freeze, remove } = useIssues(takeOff);
  const content = useRef<HTMLDivElement | null>(null);
  const [chosen, setChosen] = useState<Sides | null>(null);
  if (issues === null) {
    return fault === null ? (
      <p>Reading the issues…</p>
    ) : (
      <Notice level="stop">{fault.message}</Notice>
    );
  }
  const sides = chosenSides(chosen, issues);
  return (
    <div className={styles.view}>
      {fault === null ? null : <Notice level="stop">{fault.message}</Notice>}
      {done === "" ? null : <Notice level="done">{done}</Notice>}
      <section className={shared.card} aria-label="Issues">
        <Disclosure
          isHeading
          startsOpen={issues.length === 0}
          label={
            <span className={shared.subheading}>
              {issues.length === 0 ? "Freeze a count" : counted(issues.length, "issue")}
            </span>
          }
        >
          {() => (
            <div className={styles.content} tabIndex={-1} ref={content}>
              {issues.length === 0 ? (
                <div>
                  No count is frozen in this workbook yet. Freeze one when you send it out: when the
                  next revision comes, this view says what it changes.
                </div>
              ) : (
                <IssueList
                  issues={issues}
                  onRemove={remove}
                  onGone={() => content.current?.focus({ preventScroll: true })}
                />
              )}
              {takeOff.complete ? null : (
                <Notice level="warn" quiet>
                  Not all openings are counted now. An issue frozen now will say so.
                </Notice>
              )}
              <FreezeForm
                lastWho={issues.at(-1)?.who ?? ""}
                isReady={phase === "ready" && !isBusy}
                onFreeze={freeze}
              />
            </div>
          )}
        </Disclosure>
      </section>
      {sides === null ? null : (
        <>
          <section aria-label="What to compare">
            <SideChoice issues={issues} sides={sides} onSides={setChosen} />
          </section>
          {sides.from === sides.to ? (
            <p className={shared.small}>Choose two that are not the same.</p>
          ) : (
            <ComparedIssues key={`${sides.from}\n${sides.to}`} takeOff={takeOff} sides={sides} />
          )}
        </>
      )}
    </div>
  );
}

/** What was chosen, as far as it is there; else the latest issue and now. `null` without an issue. */
function chosenSides(chosen: Sides | null, issues: readonly IssueHead[]): Sides | null {
  const latest = issues.at(-1);
  if (latest === undefined) return null;
  const isThere = (name: string): boolean =>
    name === nowName || issues.some((issue) => issue.name === name);
  return chosen !== null && isThere(chosen.from) && isThere(chosen.to)
    ? chosen
    : { from: latest.name, to: nowName };
}
