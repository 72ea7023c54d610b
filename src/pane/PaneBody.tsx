/** The pane inside its colours: the head, one of the views or the first steps, and the caution. */
import { Suspense, useCallback, useMemo, useState } from "react";
import type { CellPlace } from "../core/base/cell";
import { caution } from "../sheets/caution";
import type { WorkbookFault } from "../workbook/workbook";
import { PaneHead } from "./head/PaneHead";
import { usePaneStyles } from "./Pane.styles";
import { Notice } from "./parts/Notice";
import { paneMark } from "./parts/useFocusOnAppear";
import { useKeptFocus } from "./parts/useKeptFocus";
import { hostFault } from "./state/hostFault";
import { PaneContext, type PaneValue } from "./state/paneContext";
import { useBroken } from "./state/useBroken";
import { useTakeOff } from "./state/useTakeOff";
import { FirstRun } from "./views/laterViews";
import { Views } from "./views/Views";
import { tabId, type ViewName } from "./views/ViewTabs";

type PaneBodyProps = Pick<PaneValue, "workbook" | "doors" | "saveFile">;

export function PaneBody({ workbook, doors, saveFile }: PaneBodyProps) {
  const styles = usePaneStyles();
  const [fault, setFault] = useState<WorkbookFault | null>(null);
  const [view, setView] = useState<ViewName | null>(null);
  const onBroken = useBroken();
  const { state, count, cancel, change } = useTakeOff(workbook, setFault);
  const { takeOff } = state;

  const goTo = useCallback(
    (place: CellPlace) => {
      workbook.goTo(place).then(
        (gone) => setFault(gone.ok ? null : gone.error),
        (error: unknown) => {
          const said = hostFault(error);
          if (said === null) onBroken(error);
          else setFault(said);
        },
      );
    },
    [workbook, onBroken],
  );
  const value = useMemo<PaneValue>(
    () => ({ workbook, doors, saveFile, state, count, cancel, change, goTo, showFault: setFault }),
    [workbook, doors, saveFile, state, count, cancel, change, goTo],
  );
  // The first view is the one that wants a person most; from then on it is theirs to choose.
  const firstView = takeOff?.complete === false ? "mend" : "jobs";
  if (view === null && takeOff !== null && takeOff.inputs.scheduleSources.length > 0) {
    setView(firstView);
  }
  const showStops = (): void => {
    setView("mend");
    document.getElementById(tabId("mend"))?.focus();
  };
  return (
    <PaneContext value={value}>
      <div ref={useKeptFocus()} className={styles.pane} {...{ [paneMark]: "" }}>
        <PaneHead onShowStops={showStops} />
        {fault === null ? null : (
          <div className={styles.notice}>
            <Notice level="stop" onClose={() => setFault(null)}>
              {fault.message}
            </Notice>
          </div>
        )}
        {takeOff === null ? (
          <div className={styles.start} />
        ) : takeOff.inputs.scheduleSources.length === 0 ? (
          <div className={styles.start}>
            <Suspense>
              <FirstRun takeOff={takeOff} />
            </Suspense>
          </div>
        ) : (
          <Views takeOff={takeOff} view={view ?? firstView} onView={setView} />
        )}
        <p className={styles.foot}>{caution}</p>
      </div>
    </PaneContext>
  );
}
