/** The pane's views, one of them shown: the four arrow keys, Home and End go from tab to tab. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { KeyboardEvent } from "react";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";

export const viewNames = [
  "mend",
  "jobs",
  "sheets",
  "order",
  "margins",
  "changes",
  "book",
  "setUp",
] as const;
export type ViewName = (typeof viewNames)[number];

const viewTitles: Readonly<Record<ViewName, string>> = {
  mend: "To mend",
  jobs: "Jobs",
  sheets: "Sheets",
  order: "Order",
  margins: "Margins",
  changes: "Changes",
  book: "Kit book",
  setUp: "Set-up",
};

export const tabId = (view: ViewName): string => `cribsheet-tab-${view}`;
export const panelId = (view: ViewName): string => `cribsheet-view-${view}`;

/** Two rows of four: at 320 pixels every view is in sight. */
const columns = 4;

const useStyles = makeStyles({
  tabs: {
    display: "grid",
    gridTemplateColumns: `repeat(${columns}, auto)`,
    flexShrink: 0,
    columnGap: tokens.spacingHorizontalXXS,
    padding: `0 ${tokens.spacingHorizontalS}`,
    borderBottom: `1px solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground1,
  },
  tab: {
    display: "inline-flex",
    alignItems: "center",
    justifyContent: "center",
    gap: tokens.spacingHorizontalXS,
    minHeight: "34px",
    padding: `0 ${tokens.spacingHorizontalXS}`,
    borderBottom: "3px solid transparent",
    borderTop: "3px solid transparent",
    color: tokens.colorNeutralForeground2,
    whiteSpace: "nowrap",
  },
  selected: {
    borderBottomColor: tokens.colorCompoundBrandStroke,
    color: tokens.colorNeutralForeground1,
    fontWeight: tokens.fontWeightSemibold,
  },
  badge: {
    minWidth: "18px",
    padding: `0 ${tokens.spacingHorizontalXS}`,
    boxSizing: "border-box",
    borderRadius: tokens.borderRadiusCircular,
    backgroundColor: tokens.colorNeutralBackground6,
    color: tokens.colorNeutralForeground1,
    fontSize: tokens.fontSizeBase200,
    lineHeight: "18px",
    textAlign: "center",
    fontVariantNumeric: "tabular-nums",
  },
});

export type ViewTabsProps = {
  readonly view: ViewName;
  readonly onView: (view: ViewName) => void;
  /** What wants mending; nothing is shown for zero. */
  readonly toMend: number;
};

export function ViewTabs({ view, onView, toMend }: ViewTabsProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const onKeyDown = (event: KeyboardEvent): void => {
    const next = viewAfterKey(view, event.key);
    if (next === null) return;
    event.preventDefault();
    onView(next);
    document.getElementById(tabId(next))?.focus();
  };
  return (
    <div role="tablist" aria-label="Views" className={styles.tabs}>
      {viewNames.map((name) => (
        <button
          key={name}
          type="button"
          role="tab"
          id={tabId(name)}
          aria-selected={name === view}
          aria-controls={panelId(name)}
          tabIndex={name === view ? 0 : -1}
          className={mergeClasses(shared.plainButton, styles.tab, name === view && styles.selected)}
          onClick={() => onView(name)}
          onKeyDown={onKeyDown}
        >
          {viewTitles[name]}
          {name === "mend" && toMend > 0 ? (
            <span className={styles.badge}>{toMend > 999 ? "999+" : toMend}</span>
          ) : null}
        </button>
      ))}
    </div>
  );
}

/** As the tabs stand: along the row and on to the next one, or up and down in a column and round. */
function viewAfterKey(view: ViewName, key: string): ViewName | null {
  const at = viewNames.indexOf(view);
  const last = viewNames.length - 1;
  const column = at % columns;
  const lowest = column + columns * Math.floor((last - column) / columns);
  const places: Readonly<Record<string, number>> = {
    ArrowRight: at === last ? 0 : at + 1,
    ArrowLeft: at === 0 ? last : at - 1,
    ArrowDown: at === lowest ? column : at + columns,
    ArrowUp: at === column ? lowest : at - columns,
    Home: 0,
    End: last,
  };
  return viewNames[places[key] ?? -1] ?? null;
}
