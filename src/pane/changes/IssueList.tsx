/** The issues of the workbook: name, day, who and note, and the way to take one away. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { useState } from "react";
import { dateText } from "../../core/base/date";
import type { IssueHead } from "../../core/revisions/issue";
import { useSharedStyles } from "../parts/parts.styles";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";

const useStyles = makeStyles({
  issue: {
    display: "flex",
    alignItems: "flex-start",
    justifyContent: "space-between",
    flexWrap: "wrap",
    gap: tokens.spacingHorizontalS,
    padding: `${tokens.spacingVerticalXS} 0`,
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  },
  words: { flexGrow: 1, flexBasis: "160px", minWidth: 0, overflowWrap: "anywhere" },
  sure: {
    display: "flex",
    alignItems: "center",
    gap: tokens.spacingHorizontalXS,
    outlineStyle: "none",
  },
});

export type IssueListProps = {
  readonly issues: readonly IssueHead[];
  readonly onRemove: (name: string) => void;
  /** The button that had the focus goes away. */
  readonly onGone: () => void;
};

export function IssueList({ issues, onRemove, onGone }: IssueListProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const [toRemove, setToRemove] = useState<string | null>(null);
  return (
    <ul className={shared.list}>
      {issues.map(({ name, day, who, note }) => (
        <li key={name} className={styles.issue}>
          <div className={styles.words}>
            <div className={shared.strong}>{name}</div>
            <div className={shared.small}>
              {[dateText(day), who, note].filter((words) => words !== "").join(" · ")}
            </div>
          </div>
          {toRemove === name ? (
            <Sure
              onYes={() => {
                onGone();
                setToRemove(null);
                onRemove(name);
              }}
              onNo={() => {
                onGone();
                setToRemove(null);
              }}
            />
          ) : (
            <SmallButton look="bare" onClick={() => setToRemove(name)}>
              Remove<span className={shared.hidden}> {name}</span>
            </SmallButton>
          )}
        </li>
      ))}
    </ul>
  );
}

type SureProps = { readonly onYes: () => void; readonly onNo: () => void };

/** Takes the focus of the button that was pressed, which is gone. */
function Sure({ onYes, onNo }: SureProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  return (
    <div
      role="group"
      aria-label="Remove for good?"
      tabIndex={-1}
      ref={useFocusOnAppear(true)}
      className={mergeClasses(shared.small, styles.sure)}
    >
      For good?
      <SmallButton onClick={onYes}>Yes, remove</SmallButton>
      <SmallButton look="bare" onClick={onNo}>
        Keep it
      </SmallButton>
    </div>
  );
}
