/** A row that two kit books do not have alike: what it is, and its cells before and after. */
import { Checkbox, mergeClasses } from "@fluentui/react-components";
import { cellText } from "../../core/base/cell";
import type { RowChange } from "../../core/bookcheck/compareBooks";
import { kitBookColumns } from "../../tables/kitBookColumns";
import { useSharedStyles } from "../parts/parts.styles";
import { useBookStyles } from "./book.styles";

export type ChangeCardProps = {
  readonly change: RowChange;
  /** Whether it is taken over; absent where there is nothing to choose. */
  readonly choice?: { readonly isTaken: boolean; readonly onTake: (taken: boolean) => void };
};

const kindWords = { added: "Added", removed: "Not there", changed: "Changed" } as const;

export function ChangeCard({ change, choice }: ChangeCardProps) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  const { section, kind, what, before, after, cells } = change;
  const title = `${kindWords[kind]}: ${what}`;
  const labels = new Map<string, string>(
    kitBookColumns[section].map(({ key, label }) => [key, label]),
  );
  return (
    <li className={mergeClasses(shared.card, styles.row)}>
      {choice === undefined ? (
        <span className={mergeClasses(shared.strong, styles.name)}>{title}</span>
      ) : (
        <Checkbox
          label={title}
          checked={choice.isTaken}
          onChange={(_, { checked }) => choice.onTake(checked === true)}
        />
      )}
      <div className={shared.small}>
        {section}, row {after ?? before}
      </div>
      {kind !== "changed"
        ? null
        : cells.map(({ column, before: old, after: now }) => (
            <div key={column}>
              <span className={shared.small}>{labels.get(column) ?? column} </span>
              <span className={styles.code}>{cellText(old.value) || "blank"}</span>
              <span aria-hidden> → </span>
              <span className={shared.hidden}> becomes </span>
              <span className={mergeClasses(styles.code, shared.strong)}>
                {cellText(now.value) || "blank"}
              </span>
            </div>
          ))}
    </li>
  );
}
