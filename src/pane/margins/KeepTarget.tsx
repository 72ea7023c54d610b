/** The price that keeps the target, and the discount that loses it. */
import type { JobToChange } from "../../app/pricing/whatIfJobs";
import { cents } from "../../core/base/units";
import type { Currency } from "../../core/money/currency";
import { moneyText } from "../../core/money/writeMoney";
import { inPercent } from "../../core/pricing/rates/percent";
import type { WhatIfAnswer } from "../../core/pricing/chances/whatIf";
import { useSharedStyles } from "../parts/parts.styles";
import { typedWords } from "./marginWords";
import { Line } from "./RollUpPart";

export type KeepTargetProps = {
  readonly job: JobToChange;
  readonly answer: WhatIfAnswer;
  readonly currency: Currency;
};

export function KeepTarget({ job: { target }, answer, currency }: KeepTargetProps) {
  const shared = useSharedStyles();
  const { amount, percent } = answer.discountThatKeeps;
  const share = percent === null ? "" : ` (${Math.abs(inPercent(percent)).toFixed(2)} %)`;
  return (
    <ul className={shared.list} aria-label="Keeping the target">
      <Line
        isSum
        label="Price that keeps the target"
        words={`the least price with a margin of ${typedWords(target)}; a cent less loses it`}
        value={moneyText(answer.priceThatKeeps, currency)}
      />
      {amount >= 0 ? (
        <Line
          label="Discount that still keeps it"
          words="a cent more loses the target"
          value={`${moneyText(amount, currency)}${share}`}
        />
      ) : (
        <Line
          label="Missing to the target"
          words="the price must rise by this much"
          value={`${moneyText(cents(0 - amount), currency)}${share}`}
        />
      )}
      <Line
        label="Price that earns nothing"
        words="below it the job loses money"
        value={moneyText(answer.breakEvenPrice, currency)}
      />
    </ul>
  );
}
