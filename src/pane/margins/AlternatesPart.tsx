/** What may be had instead of a part of the job, or besides it: each priced in full beside the base. */
import { Button } from "@fluentui/react-components";
import { alternatesDrawing } from "../../app/pricing/ownerSheets";
import { currencyIn } from "../../app/settings";
import type { Cents } from "../../core/base/units";
import type { Currency } from "../../core/money/currency";
import { moneyText } from "../../core/money/writeMoney";
import type { PricedAlternate } from "../../core/pricing/alternates/alternates";
import type { JobPrice } from "../../core/pricing/priceJob";
import { useSharedStyles } from "../parts/parts.styles";
import { useAddSheets } from "../sheets/useAddSheets";
import { usePane } from "../state/paneContext";
import { shareWords } from "./marginWords";
import { Line } from "./RollUpPart";

export function AlternatesPart({ job, alternates }: Pick<JobPrice, "job" | "alternates">) {
  const shared = useSharedStyles();
  const currency = currencyIn(usePane().state.settings);
  const { isBusy, add } = useAddSheets();
  if (alternates.length === 0) {
    return (
      <>
        <div className={shared.small}>
          No alternate or option is priced for this job. On a sheet of them a row adds something to
          the job or takes it away, such as a closer on each door; or it changes a column of the
          schedule, such as Transom to no, and the job is counted again with it.
        </div>
        <Button disabledFocusable={isBusy} onClick={() => add([alternatesDrawing(job)])}>
          Add a sheet of alternates
        </Button>
      </>
    );
  }
  return (
    <>
      <div className={shared.small}>What each adds to the price. The quotation offers them.</div>
      <ul className={shared.list}>
        {alternates.map((alternate) => (
          <Line
            key={alternate.name}
            label={`${alternate.name} (${alternate.kind})`}
            words={alternateWords(alternate, currency)}
            value={addedMoney(alternate.addsPrice, currency)}
          />
        ))}
      </ul>
    </>
  );
}

/** With its sign, so that it reads as a difference. */
const addedMoney = (amount: Cents, currency: Currency): string =>
  `${amount > 0 ? "+" : ""}${moneyText(amount, currency)}`;

function alternateWords(
  { addsCost, addsHours, rollUp, how, notPriced }: PricedAlternate,
  currency: Currency,
): string {
  const hours = `${addsHours > 0 ? "+" : ""}${addsHours / 100} hours`;
  return [
    `cost ${addedMoney(addsCost, currency)}, ${hours}; the job with it: price ${moneyText(rollUp.price, currency)}, margin ${shareWords(rollUp.margin)}`,
    how,
    ...(notPriced.length === 0 ? [] : [`only a least, without ${notPriced.join(", ")}`]),
  ].join("; ");
}
