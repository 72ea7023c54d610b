/** What a job costs, brings and leaves, each figure with its formula, and what is doubtful in it. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { currencyIn } from "../../app/settings";
import type { Finding } from "../../core/base/finding";
import { moneyText } from "../../core/money/writeMoney";
import type { MarginRow } from "../../core/pricing/marginTable";
import type { JobPrice } from "../../core/pricing/priceJob";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { usePane } from "../state/paneContext";
import { FigureList } from "./FigureList";
import { FindingList } from "./FindingList";
import { gapWords, shareWords, typedWords } from "./marginWords";

const useStyles = makeStyles({
  figures: { padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}` },
});

export type JobHeadProps = {
  readonly job: JobPrice;
  readonly row: MarginRow;
  readonly findings: readonly Finding[];
};

export function JobHead({ job: { rollUp }, row, findings }: JobHeadProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const currency = currencyIn(usePane().state.settings);
  return (
    <>
      <div className={mergeClasses(shared.card, styles.figures)}>
        <FigureList
          oneColumn
          figures={[
            { name: "Cost", value: moneyText(rollUp.cost, currency) },
            { name: "Price", value: moneyText(rollUp.price, currency) },
            { name: "Profit", formula: "price - cost", value: moneyText(rollUp.profit, currency) },
            { name: "Markup", formula: "profit / cost", value: shareWords(rollUp.markup) },
            { name: "Margin", formula: "profit / price", value: shareWords(rollUp.margin) },
            { name: "Target margin", value: typedWords(row.target) },
            { name: "Gap", formula: "margin - target", value: gapWords(row.gap) },
            ...(row.short === 0
              ? []
              : [{ name: "Short of the target", value: moneyText(row.short, currency) }]),
          ]}
        />
      </div>
      <FindingList findings={findings} />
    </>
  );
}
