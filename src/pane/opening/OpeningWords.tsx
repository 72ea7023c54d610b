/** What the schedule and the kit book say of an opening: its sizes, how many alike, its order of work. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { lengthWriter } from "../../app/settings";
import { openingNotes, openingWords } from "../../core/bags/openingNotes";
import type { OpeningCounts } from "../../core/bags/openingCounts";
import { LevelIcon } from "../parts/LevelIcon";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { tokens } from "../parts/tokens";
import { usePane } from "../state/paneContext";

const useStyles = makeStyles({
  note: { display: "flex", alignItems: "flex-start", gap: tokens.spacingHorizontalXS },
});

export function OpeningWords({ counts }: { readonly counts: OpeningCounts }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const show = lengthWriter(usePane().state.settings);
  const { take, row, opening } = counts;
  return (
    <>
      <div className={shared.small}>{openingWords(take, row, show).join(" · ")}</div>
      {opening.quantity === 1 ? null : (
        <div className={shared.small}>
          {countText(opening.quantity)} alike. The picture and the list are for one of them.
        </div>
      )}
      {openingNotes(take, row, show).map(({ level, text }) => (
        <div key={text} className={mergeClasses(shared.small, styles.note)}>
          <LevelIcon level={level} />
          <span>{text}</span>
        </div>
      ))}
    </>
  );
}
