/** What may be had instead of a part of the job, or besides it: each priced in full beside the base. */
import { Button } from "@fluentui/react-components";
import { alternatesDrawing } from "../../app/ownerSheets";
import { currencyIn } from "../../app/settings";
import { moneyText } from "../../core/money/writeMoney";
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
          No alternate or option is typed for this job. On a sheet of them each row adds something
          to the job, or takes it away: with a closer, without floor guides.
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
        {alternates.map(({ name, kind, addsPrice, addsCost, rollUp }) => (
          <Line
            key={name}
            label={`${name} (${kind})`}
            words={`adds ${moneyText(addsCost, currency)} of cost; the job with it: price ${moneyText(rollUp.price, currency)}, margin ${shareWords(rollUp.margin)}`}
            value={moneyText(addsPrice, currency)}
          />
        ))}
      </ul>
    </>
  );
}
