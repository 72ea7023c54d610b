/** The lines from cost to price, each with how it comes about. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { currencyIn } from "../../app/settings";
import { moneyText } from "../../core/money/writeMoney";
import type { RollUp } from "../../core/pricing/rollup/rollUp";
import { lineKeys } from "../../core/pricing/rollup/rollUpPrice";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { usePane } from "../state/paneContext";
import { shareWords } from "./marginWords";

const useStyles = makeStyles({
  line: {
    display: "grid",
    gridTemplateColumns: "1fr auto",
    columnGap: tokens.spacingHorizontalM,
    padding: `${tokens.spacingVerticalXS} 0`,
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  },
  words: {
    gridColumn: "1 / span 2",
    fontWeight: tokens.fontWeightRegular,
    overflowWrap: "anywhere",
  },
});

const sums: ReadonlySet<string> = new Set([
  lineKeys.cost,
  lineKeys.price,
  lineKeys.profit,
  lineKeys.priceWithTax,
]);

export function RollUpPart({ rollUp }: { readonly rollUp: RollUp }) {
  const shared = useSharedStyles();
  const currency = currencyIn(usePane().state.settings);
  return (
    <>
      {rollUp.notPriced.length === 0 ? null : (
        <Notice level="warn" quiet>
          Not in cost and price, which are only a least: {rollUp.notPriced.join(", ")}.
        </Notice>
      )}
      <ul className={shared.list}>
        {rollUp.lines.map(({ key, label, words, amount }) => (
          <Line
            key={key}
            label={label}
            words={words}
            value={moneyText(amount, currency)}
            isSum={sums.has(key)}
          />
        ))}
        {rollUp.ratios.map(({ label, words, value }) => (
          <Line key={label} label={label} words={words} value={shareWords(value, 2)} isSum />
        ))}
      </ul>
    </>
  );
}

type LineProps = {
  readonly label: string;
  readonly words: string;
  readonly value: string;
  readonly isSum?: boolean;
};

/** One line: its name, its amount, and the reason for it below. */
export function Line({ label, words, value, isSum = false }: LineProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  return (
    <li className={mergeClasses(styles.line, isSum && shared.strong)}>
      <span>{label}</span>
      <span className={shared.number}>{value}</span>
      {words === "" ? null : (
        <span className={mergeClasses(shared.small, styles.words)}>{words}</span>
      )}
    </li>
  );
}
