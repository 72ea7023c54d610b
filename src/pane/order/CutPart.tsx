/** The cut list: for each item how good its plan is, then its bars, drawn and in words. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { useMemo } from "react";
import type { JobsOrder } from "../../app/orders/orderJobs";
import type { Bar, CutPlan, SawRules } from "../../core/purchasing/cutting/cutProblem";
import { alikeBars, cutPlanWords, pieceWords } from "../../core/purchasing/cutting/cutWords";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { useMore } from "../parts/useMore";
import { tokens } from "../parts/tokens";
import { BarDrawing } from "./BarDrawing";
import { useOrderStyles } from "./order.styles";
import type { OrderText } from "./orderText";

const useStyles = makeStyles({
  bars: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalM },
});

type CutPartProps = { readonly order: JobsOrder; readonly text: OrderText };

export function CutPart({ order, text }: CutPartProps) {
  const styles = useStyles();
  return (
    <div className={styles.bars}>
      {order.plan.cutPlans.map((plan) => (
        <Plan key={plan.item} plan={plan} saw={order.input.saw(plan.item)} text={text} />
      ))}
    </div>
  );
}

type PlanProps = { readonly plan: CutPlan; readonly saw: SawRules; readonly text: OrderText };

/** More drawings at once would hold the pane up. */
const firstBars = 15;

function Plan({ plan, saw, text }: PlanProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const longest = plan.bars.reduce<number>((most, { length }) => Math.max(most, length), 1);
  const alike = useMemo(() => alikeBars(plan), [plan]);
  const { shown, left, showMore } = useMore(alike, firstBars, 30);
  return (
    <section aria-label={`Cuts of ${plan.item}`} className={styles.bars}>
      <div>
        <h3 className={shared.subheading}>{text.describe(plan.item)}</h3>
        <div>{cutPlanWords(plan, text.currency)}</div>
        <div className={shared.small}>
          Each cut takes {text.length(saw.kerf)}, the ends of a new bar {text.length(saw.endTrim)}{" "}
          together; offcuts from {text.length(saw.shortestOffcut)} are kept.
        </div>
      </div>
      {plan.unplaced.map(({ job, mark, length, count }) => (
        <Notice key={`${job} ${mark} ${length}`} level="stop" quiet>
          Not cut: {countText(count)} of {text.length(length)} for {mark} of {job}. No bar is long
          enough.
        </Notice>
      ))}
      {shown.map((bars, index) => (
        <Bars key={index} {...{ bars, longest, saw, text }} />
      ))}
      {left === 0 ? null : (
        <div>
          <SmallButton onClick={showMore}>Show more bars ({countText(left)})</SmallButton>
        </div>
      )}
    </section>
  );
}

type BarsProps = Omit<PlanProps, "plan"> & {
  readonly bars: readonly Bar[];
  readonly longest: number;
};

function Bars({ bars, longest, saw, text }: BarsProps) {
  const order = useOrderStyles();
  const shared = useSharedStyles();
  const [bar] = bars;
  if (bar === undefined) return null;
  const pieces = pieceWords(bar, text.length);
  const offcut =
    bar.offcut === 0 ? "nothing left" : `${bar.kept ? "keep" : "scrap"} ${text.length(bar.offcut)}`;
  const head = `${countText(bars.length)} × ${text.length(bar.length)}`;
  const from = bar.from === "stock" ? "new" : "on hand";
  return (
    <div>
      <div className={order.row}>
        <span className={shared.strong}>
          {head} {from}
        </span>
        <span className={mergeClasses(shared.small, shared.number)}>{offcut}</span>
      </div>
      <BarDrawing {...{ bar, longest, saw }} words={`${head}, ${from}: ${pieces}; ${offcut}.`} />
      <div className={shared.small}>{pieces}</div>
    </div>
  );
}
