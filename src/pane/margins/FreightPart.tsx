/** What a job weighs and what carrying it costs, with the next weight break where that is cheaper. */
import { currencyIn, measureStyleIn } from "../../app/settings";
import { moneyText, unitCostText } from "../../core/money/writeMoney";
import { billedText } from "../../core/pricing/freight";
import type { JobPrice } from "../../core/pricing/priceJob";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { weightText } from "../parts/quantities";
import { usePane } from "../state/paneContext";
import { Line } from "./RollUpPart";

export function FreightPart({ shipment, freight }: Pick<JobPrice, "shipment" | "freight">) {
  const shared = useSharedStyles();
  const { settings } = usePane().state;
  const currency = currencyIn(settings);
  const style = measureStyleIn(settings);
  return (
    <>
      <ul className={shared.list}>
        <Line label="Goods" words="" value={weightText(shipment.goods, style)} />
        <Line
          label="Shipment"
          words={shipment.because}
          value={weightText(shipment.weight, style)}
        />
        {freight === null ? null : (
          <>
            <Line
              label="Charged by weight"
              words={
                freight.billed > freight.weight
                  ? "shipped as the next weight break, which costs less"
                  : "its own weight, in whole pounds"
              }
              value={billedText(freight.billed, style)}
            />
            <Line
              label="Rate per hundredweight"
              words={style === "pounds" ? "" : "of 100 lb"}
              value={unitCostText(freight.rate, currency)}
            />
            <Line
              isSum
              label="Freight"
              words={freight.because}
              value={moneyText(freight.charge, currency)}
            />
          </>
        )}
      </ul>
      {freight !== null && freight.saved > 0 ? (
        <Notice level="note" quiet>
          Ship it as {billedText(freight.billed, style)}: that saves{" "}
          {moneyText(freight.saved, currency)}.
        </Notice>
      ) : null}
      {freight === null ? (
        <Notice level="warn" quiet>
          No freight rate is set: freight is not in the price.
        </Notice>
      ) : null}
      {shipment.notWeighed.length === 0 ? null : (
        <Notice level="warn" quiet>
          Of unknown weight, so the weight is only a least: {shipment.notWeighed.join(", ")}.
        </Notice>
      )}
    </>
  );
}
