/** What the order comes to, what ordering together saves, and whose cost it is. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { JobsOrder } from "../../app/orders/orderJobs";
import { cents } from "../../core/base/units";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";
import { tokens } from "../parts/tokens";
import { Sums } from "./Sums";
import type { OrderText } from "./orderText";

const useStyles = makeStyles({
  card: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalS,
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}`,
  },
  total: {
    fontSize: tokens.fontSizeBase500,
    fontWeight: tokens.fontWeightSemibold,
    lineHeight: tokens.lineHeightBase500,
    fontVariantNumeric: "tabular-nums",
  },
});

type SummaryProps = { readonly order: JobsOrder; readonly text: OrderText };

export function Summary({ order, text }: SummaryProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { plan, complete } = order;
  return (
    <section
      className={mergeClasses(shared.card, styles.card)}
      aria-label="What the order comes to"
    >
      <div>
        <div className={shared.small}>Order for {counted(plan.jobs.length, "job")}</div>
        <div className={styles.total}>{text.money(plan.total)}</div>
      </div>
      {complete ? null : (
        <Notice level="stop" quiet>
          <strong>Not complete:</strong> not everything that is needed is on this order. See the
          findings.
        </Notice>
      )}
      {savingSentences(order, text).map((sentence) => (
        <div key={sentence}>{sentence}</div>
      ))}
      <Sums
        sums={[
          ...plan.shares.map(({ job, cost }) => ({
            name: job ?? "Stock: left over in packs and bars",
            value: text.money(cost),
          })),
          { name: "Total", value: text.money(plan.total), isTotal: true },
        ]}
      />
    </section>
  );
}

/** Each a sentence; what saves nothing is said too, where it was a choice. */
export function savingSentences({ plan }: JobsOrder, { money }: OrderText): readonly string[] {
  const { saved, suppliers, total } = plan;
  const than = (difference: number, one: string): string =>
    difference === 0
      ? ""
      : `${counted(Math.abs(difference), one)} ${difference > 0 ? "fewer" : "more"}`;
  const together = (): string => {
    if (saved === null) return "";
    const amounts = [than(saved.packs, "pack"), than(saved.pieces, "piece")].filter(
      (words) => words !== "",
    );
    const counts = amounts.length === 0 ? "" : `, ${amounts.join(" and ")}`;
    const { money: amount } = saved;
    if (amount < 0)
      return `Ordering job by job would cost ${money(cents(0 - amount))} less${counts}.`;
    return `Saves ${money(amount)} against ordering job by job${counts}.`;
  };
  const { againstOne, againstPriceAlone, proven, lowerBound } = suppliers;
  return [
    together(),
    againstOne === null || againstOne.saves === 0
      ? ""
      : `Saves ${money(againstOne.saves)} against buying all from ${againstOne.supplier}.`,
    againstPriceAlone > 0
      ? `Saves ${money(againstPriceAlone)} in freight and least orders against each thing at its lowest price.`
      : "",
    total === 0
      ? ""
      : proven
        ? "No choice of suppliers and packs costs less."
        : `No choice of suppliers and packs costs less than ${money(lowerBound)}.`,
  ].filter((sentence) => sentence !== "");
}
