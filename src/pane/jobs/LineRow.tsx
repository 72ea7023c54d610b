/** One line: what it is, how many, and what it costs. The whole row opens the reasons. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { currencyIn, lengthStyleOf } from "../../app/settings";
import { correctionWords, isAdded } from "../../core/corrections/correctedLine";
import { writeSize } from "../../core/lengths/writeLength";
import { moneyText } from "../../core/money/writeMoney";
import type { MaterialLine } from "../../core/pricing/material";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { usePane } from "../state/paneContext";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  line: {
    display: "grid",
    gridTemplateColumns: "1fr auto",
    columnGap: tokens.spacingHorizontalM,
    padding: `${tokens.spacingVerticalSNudge} ${tokens.spacingHorizontalM}`,
  },
  item: {
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  },
  correction: {
    gridColumn: "1 / -1",
    overflowWrap: "anywhere",
    fontStyle: "italic",
  },
  words: { overflowWrap: "anywhere" },
  quantity: {
    color: tokens.colorBrandForegroundLink,
    fontWeight: tokens.fontWeightSemibold,
    textDecorationLine: "underline",
    textUnderlineOffset: "3px",
  },
});

export type LineRowProps = {
  readonly line: MaterialLine;
  readonly takesFocus: boolean;
  readonly onOpen: () => void;
};

export function LineRow({ line: { line, item, cost }, takesFocus, onOpen }: LineRowProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { settings } = usePane().state;
  const size = writeSize(line.size, lengthStyleOf(settings));
  const words = correctionWords(line);
  const correction = words === "" || isAdded(line) ? words : `Corrected: ${words}`;
  const code = item === null ? "" : line.item;
  return (
    <li className={styles.item}>
      <button
        type="button"
        ref={useFocusOnAppear(takesFocus)}
        className={mergeClasses(shared.plainButton, styles.line)}
        onClick={onOpen}
      >
        <span className={styles.words}>{item?.description ?? line.item}</span>
        <span className={mergeClasses(shared.number, styles.quantity)}>
          {countText(line.quantity)} pcs
        </span>
        <span className={mergeClasses(shared.small, styles.words)}>
          {[size, code].filter((words) => words !== "").join(" · ")}
        </span>
        <span className={mergeClasses(shared.small, shared.number)}>
          {cost === null ? "not priced" : moneyText(cost, currencyIn(settings))}
        </span>
        {correction === "" ? null : (
          <span className={mergeClasses(shared.small, styles.correction)}>{correction}</span>
        )}
        <span className={shared.hidden}>: show why</span>
      </button>
    </li>
  );
}
