/** What came of writing: the sheets, or why there are none. */
import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { Notice } from "../parts/Notice";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import type { Writing } from "./useWritingAct";
import { WrittenSheets } from "./WrittenSheets";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  outcome: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalS,
    outlineStyle: "none",
  },
});

export function Outcome({ writing }: { readonly writing: Writing }) {
  switch (writing.kind) {
    case "done":
      return (
        <Focused>
          <WrittenSheets written={writing.written} />
        </Focused>
      );
    case "failed":
      return (
        <Focused>
          <Notice level={writing.fault.code === "cancelled" ? "note" : "stop"}>
            {writing.fault.message}
          </Notice>
        </Focused>
      );
    case "idle":
    case "busy":
      return null;
  }
}

/** Takes the focus of the button that cancels, which is gone, and comes into sight with it. */
function Focused({ children }: { readonly children: ReactNode }) {
  const styles = useStyles();
  return (
    <div tabIndex={-1} ref={useFocusOnAppear(true)} className={styles.outcome}>
      {children}
    </div>
  );
}
