/** Which two counts are compared: any issue, or what is counted now. */
import { Field, makeStyles, Select } from "@fluentui/react-components";
import { nowName } from "../../app/revisions/issues";
import { dateText } from "../../core/base/date";
import type { IssueHead } from "../../core/revisions/issue";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  sides: {
    display: "grid",
    gridTemplateColumns: "repeat(auto-fit, minmax(170px, 1fr))",
    gap: tokens.spacingHorizontalS,
  },
  side: { minWidth: 0 },
});

/** Names of issues, or `now`. */
export type Sides = { readonly from: string; readonly to: string };

export type SideChoiceProps = {
  readonly issues: readonly IssueHead[];
  readonly sides: Sides;
  readonly onSides: (sides: Sides) => void;
};

export function SideChoice({ issues, sides, onSides }: SideChoiceProps) {
  const styles = useStyles();
  const choices = [
    ...issues.map(({ name, day }) => ({ name, label: `${name} (${dateText(day)})` })),
    { name: nowName, label: "What is counted now" },
  ];
  const side = (label: string, value: string, onChange: (name: string) => void) => (
    <Field label={label}>
      <Select
        className={styles.side}
        value={value}
        onChange={(_, chosen) => onChange(chosen.value)}
      >
        {choices.map(({ name, label: words }) => (
          <option key={name} value={name}>
            {words}
          </option>
        ))}
      </Select>
    </Field>
  );
  return (
    <div className={styles.sides}>
      {side("From", sides.from, (from) => onSides({ ...sides, from }))}
      {side("To", sides.to, (to) => onSides({ ...sides, to }))}
    </div>
  );
}
