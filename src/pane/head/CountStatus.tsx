/** How many openings are counted, and, where it cannot be missed, how many are not. */
import { mergeClasses } from "@fluentui/react-components";
import { CheckmarkCircleFilled } from "@fluentui/react-icons/svg/checkmark-circle";
import { ChevronRightRegular } from "@fluentui/react-icons/svg/chevron-right";
import { ErrorCircleFilled } from "@fluentui/react-icons/svg/error-circle";
import { useMemo } from "react";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { useSharedStyles } from "../parts/parts.styles";
import { Bar } from "../parts/ProgressLine";
import { counted, countText } from "../parts/quantities";
import { useCountStatusStyles } from "./CountStatus.styles";
import { countSummary, type CountSummary } from "./countSummary";

export type CountStatusProps = {
  readonly takeOff: WorkbookTakeOff;
  /** Shows what stops the count. */
  readonly onShowStops: () => void;
};

export function CountStatus({ takeOff, onShowStops }: CountStatusProps) {
  const styles = useCountStatusStyles();
  const shared = useSharedStyles();
  const summary = useMemo(() => countSummary(takeOff), [takeOff]);
  const alarm = alarmWords(summary);
  return (
    <div className={styles.status}>
      <div role="status" className={styles.line}>
        <Counted {...summary} />
        <span className={shared.hidden}>{alarm}</span>
      </div>
      {summary.rows === 0 ? null : <Bar share={summary.counted / summary.rows} />}
      {alarm === "" ? null : (
        <button
          type="button"
          className={mergeClasses(shared.plainButton, styles.alarm)}
          onClick={onShowStops}
        >
          <span aria-hidden className={styles.alarmIcon}>
            <ErrorCircleFilled />
          </span>
          <span className={styles.alarmWords}>{alarm}</span>
          <span className={shared.hidden}>Show what to mend</span>
          <ChevronRightRegular aria-hidden />
        </button>
      )}
    </div>
  );
}

function Counted({ rows, counted: done, uncounted, otherStops }: CountSummary) {
  const styles = useCountStatusStyles();
  if (rows === 0) return <span>No openings yet. Type the first below the headings.</span>;
  if (uncounted > 0) {
    return (
      <>
        <span className={styles.big}>{countText(done)}</span>
        <span>of {counted(rows, "opening")} counted</span>
      </>
    );
  }
  return (
    <>
      {otherStops > 0 ? null : (
        <span aria-hidden className={styles.doneIcon}>
          <CheckmarkCircleFilled />
        </span>
      )}
      {rows === 1 ? null : <span>All</span>}
      <span className={styles.big}>{countText(rows)}</span>
      <span>{rows === 1 ? "opening" : "openings"} counted</span>
    </>
  );
}

function alarmWords({ uncounted, otherStops }: CountSummary): string {
  if (uncounted > 0) return `${counted(uncounted, "opening is", "openings are")} not counted`;
  return otherStops > 0 ? `Not complete: ${counted(otherStops, "error")} to mend` : "";
}
