/** The views of a workbook that has a schedule. A view that was opened keeps its state. */
import { makeStyles } from "@fluentui/react-components";
import { Suspense, useEffect, useState, type ReactNode } from "react";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { JobsView } from "../jobs/JobsView";
import { MendView } from "../mend/MendView";
import {
  BookView,
  ChangesView,
  fetchLaterViews,
  MarginsView,
  OrderView,
  SetUpView,
  SheetsView,
} from "./laterViews";
import { panelId, tabId, viewNames, ViewTabs, type ViewName } from "./ViewTabs";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  panel: {
    flexGrow: 1,
    flexBasis: 0,
    minHeight: 0,
    overflowY: "auto",
    padding: tokens.spacingHorizontalM,
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "-2px" },
    // Where there is little height, as at 400 %, the pane scrolls as a whole.
    "@media (max-height: 480px)": { flexBasis: "auto", overflowY: "visible" },
  },
});

export type ViewsProps = {
  readonly takeOff: WorkbookTakeOff;
  readonly view: ViewName;
  readonly onView: (view: ViewName) => void;
};

export function Views({ takeOff, view, onView }: ViewsProps) {
  const styles = useStyles();
  const [opened, setOpened] = useState<ReadonlySet<ViewName>>(() => new Set([view]));
  if (!opened.has(view)) setOpened(new Set([...opened, view]));
  useEffect(() => {
    void fetchLaterViews();
  }, []);
  const toMend = takeOff.findings.filter(({ level }) => level !== "note").length;
  const content: Readonly<Record<ViewName, () => ReactNode>> = {
    mend: () => <MendView findings={takeOff.findings} />,
    jobs: () => <JobsView takeOff={takeOff} />,
    sheets: () => <SheetsView takeOff={takeOff} />,
    order: () => <OrderView takeOff={takeOff} />,
    margins: () => <MarginsView takeOff={takeOff} />,
    changes: () => <ChangesView takeOff={takeOff} />,
    book: () => <BookView takeOff={takeOff} />,
    setUp: () => <SetUpView takeOff={takeOff} />,
  };
  return (
    <>
      <ViewTabs view={view} onView={onView} toMend={toMend} />
      {viewNames.map((name) => (
        <div
          key={name}
          role="tabpanel"
          id={panelId(name)}
          aria-labelledby={tabId(name)}
          hidden={name !== view}
          tabIndex={0}
          className={styles.panel}
        >
          {opened.has(name) ? (
            <Suspense fallback={<p>Loading…</p>}>{content[name]()}</Suspense>
          ) : null}
        </div>
      ))}
    </>
  );
}
