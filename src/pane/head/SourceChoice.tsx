/** Which sheet or table is the schedule: found by itself, or chosen here. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { useId } from "react";
import { sourceKey } from "../../app/reading/sourceBlocks";
import type { Source } from "../../workbook/workbook";
import { useSharedStyles } from "../parts/parts.styles";
import { usePane } from "../state/paneContext";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  choice: {
    display: "flex",
    alignItems: "center",
    gap: tokens.spacingHorizontalS,
    minWidth: 0,
  },
  // The browser's own, in our colours: Fluent's needs more than this list does.
  label: { whiteSpace: "nowrap" },
  select: {
    flexGrow: 1,
    minWidth: 0,
    height: "28px",
    padding: `0 ${tokens.spacingHorizontalXS}`,
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    borderRadius: tokens.borderRadiusMedium,
    backgroundColor: tokens.colorNeutralBackground1,
    color: tokens.colorNeutralForeground1,
    fontFamily: "inherit",
    fontSize: tokens.fontSizeBase300,
    textOverflow: "ellipsis",
    ":focus-visible": { outline: `2px solid ${tokens.colorStrokeFocus2}`, outlineOffset: "-1px" },
  },
});

const nameOf = (source: Source): string =>
  source.kind === "sheet" ? source.sheet : `${source.table} (table)`;

const foundWords = (found: readonly Source[]): string => {
  const [first, ...others] = found;
  if (first === undefined) return "No schedule found";
  return `Found: ${nameOf(first)}${others.length === 0 ? "" : ` and ${others.length} more`}`;
};

export function SourceChoice() {
  const styles = useStyles();
  const shared = useSharedStyles();
  const id = useId();
  const { state, change } = usePane();
  const { settings, takeOff } = state;
  if (takeOff === null) return null;
  const { sources, scheduleSources } = takeOff.inputs;
  const chosen = settings.schedule;
  const isGone =
    chosen !== null && !sources.some((source) => sourceKey(source) === sourceKey(chosen));
  const isFound = chosen === null || isGone;
  return (
    <div className={styles.choice}>
      <label htmlFor={id} className={mergeClasses(shared.small, styles.label)}>
        Openings from
      </label>
      <select
        id={id}
        className={styles.select}
        value={chosen === null ? "" : sourceKey(chosen)}
        onChange={({ target: { value } }) => {
          const wanted = sources.find((source) => sourceKey(source) === value) ?? null;
          change({ schedule: wanted });
        }}
      >
        <option value="">{isFound ? foundWords(scheduleSources) : "Find it"}</option>
        {sources.map((source) => (
          <option key={sourceKey(source)} value={sourceKey(source)}>
            {nameOf(source)}
          </option>
        ))}
        {isGone ? <option value={sourceKey(chosen)}>{nameOf(chosen)}: gone</option> : null}
      </select>
    </div>
  );
}
