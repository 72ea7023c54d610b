/** One job among all: what it costs, brings and leaves, and what to know of it. Opens the job. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { ChevronRightRegular } from "@fluentui/react-icons/svg/chevron-right";
import { currencyIn } from "../../app/settings";
import { dateText } from "../../core/base/date";
import { moneyText } from "../../core/money/writeMoney";
import type { MarginRow } from "../../core/pricing/marginTable";
import { LevelIcon } from "../parts/LevelIcon";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { usePane } from "../state/paneContext";
import { FigureList } from "./FigureList";
import { gapWords, shareWords, typedWords } from "./marginWords";

const useStyles = makeStyles({
  job: {
    display: "flex",
    alignItems: "center",
    gap: tokens.spacingHorizontalS,
    minHeight: "34px",
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalM}`,
    borderRadius: tokens.borderRadiusLarge,
  },
  name: { flexGrow: 1, minWidth: 0, overflowWrap: "anywhere" },
  chevron: { fontSize: "12px", lineHeight: 0 },
  figures: { padding: `0 ${tokens.spacingHorizontalM} ${tokens.spacingVerticalS}` },
  doubt: {
    display: "flex",
    alignItems: "center",
    gap: tokens.spacingHorizontalXS,
    fontSize: tokens.fontSizeBase200,
    fontWeight: tokens.fontWeightSemibold,
  },
});

export type JobCardProps = {
  readonly row: MarginRow;
  /** Whether it was left last. */
  readonly takesFocus: boolean;
  readonly onOpen: () => void;
};

export function JobCard({ row, takesFocus, onOpen }: JobCardProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const currency = currencyIn(usePane().state.settings);
  const { short, oldestPrice, isIncomplete } = row;
  const doubts = [
    ...(row.price < row.cost ? ["Sold below cost"] : []),
    ...(short > 0 ? [`${moneyText(short, currency)} short of the target`] : []),
    ...(isIncomplete ? ["Not complete: cost and price are only a least"] : []),
  ];
  return (
    <li className={shared.card}>
      <button
        type="button"
        ref={useFocusOnAppear(takesFocus)}
        className={mergeClasses(shared.plainButton, styles.job)}
        onClick={onOpen}
      >
        <span className={mergeClasses(shared.strong, styles.name)}>{row.job}</span>
        <span aria-hidden className={styles.chevron}>
          <ChevronRightRegular />
        </span>
      </button>
      <div className={styles.figures}>
        <FigureList
          figures={[
            { name: "Cost", value: moneyText(row.cost, currency) },
            { name: "Price", value: moneyText(row.price, currency) },
            { name: "Profit", value: moneyText(row.profit, currency) },
            { name: "Markup", value: shareWords(row.markup) },
            { name: "Margin", value: shareWords(row.margin) },
            { name: "Target", value: typedWords(row.target) },
            { name: "Gap", value: gapWords(row.gap), isWide: true },
            {
              name: "Oldest price",
              value: oldestPrice === null ? "no date" : dateText(oldestPrice),
              isWide: true,
            },
            { name: "Lines not priced", value: shareWords(row.shareNotPriced, 0), isWide: true },
          ]}
        />
        {doubts.map((doubt) => (
          <div key={doubt} className={styles.doubt}>
            <LevelIcon level="warn" />
            {doubt}
          </div>
        ))}
      </div>
    </li>
  );
}
