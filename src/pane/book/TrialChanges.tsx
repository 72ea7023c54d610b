/** The rows that do not do the same for two openings. */
import { mergeClasses } from "@fluentui/react-components";
import type { TrialChange } from "../../core/bookcheck/compareTrials";
import { useSharedStyles } from "../parts/parts.styles";
import { RowPlace } from "./RowPlace";
import { useBookStyles } from "./book.styles";
import { MoreList } from "./MoreList";

export function TrialChanges({ changes }: { readonly changes: readonly TrialChange[] }) {
  const styles = useBookStyles();
  const shared = useSharedStyles();
  return (
    <MoreList items={changes}>
      {({ source, what, one, other }) => (
        <li
          key={`${source.section} ${source.number}`}
          className={mergeClasses(shared.card, styles.row)}
        >
          <div className={styles.head}>
            <span className={mergeClasses(styles.name, styles.code)}>{what}</span>
            <RowPlace source={source} />
          </div>
          <div>
            {one} <span aria-hidden>→</span>
            <span className={shared.hidden}> becomes </span> <strong>{other}</strong>
          </div>
        </li>
      )}
    </MoreList>
  );
}
