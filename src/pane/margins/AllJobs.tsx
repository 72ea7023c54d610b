/** All jobs beside one another: what is most at risk first, or in another order. */
import { Field, makeStyles, mergeClasses, Select } from "@fluentui/react-components";
import { useMemo, type ReactNode } from "react";
import { currencyIn } from "../../app/settings";
import { moneyText } from "../../core/money/writeMoney";
import { marginFormula, markupFormula } from "../../core/pricing/margin";
import type { MarginTable } from "../../core/pricing/marginTable";
import { jobKey } from "../../core/takeoff/takeOff";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { useMore } from "../parts/useMore";
import { usePane } from "../state/paneContext";
import { FigureList } from "./FigureList";
import { JobCard } from "./JobCard";
import { inOrder, jobOrders, orderWords, type JobOrder } from "./jobOrder";
import { MarginChart } from "./MarginChart";
import { shareWords } from "./marginWords";

const useStyles = makeStyles({
  total: { padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}` },
});

/** Jobs shown at first: the page stays quick with hundreds. */
const firstJobs = 12;
const moreJobs = 24;

export type AllJobsProps = {
  readonly margins: MarginTable;
  readonly order: JobOrder;
  readonly onOrder: (order: JobOrder) => void;
  /** The job that was left last, by `jobKey`. */
  readonly left: string | null;
  readonly onOpen: (job: string) => void;
  /** What stands behind the jobs. */
  readonly children: ReactNode;
};

export function AllJobs({ margins, order, onOrder, left, onOpen, children }: AllJobsProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const currency = currencyIn(usePane().state.settings);
  const rows = useMemo(() => inOrder(margins.rows, order), [margins, order]);
  const more = useMore(rows, firstJobs, moreJobs);
  const { cost, price, profit, markup, margin, short } = margins.total;
  return (
    <div className={shared.stack}>
      <section className={mergeClasses(shared.card, styles.total)}>
        <h2 className={shared.subheading}>All {countText(rows.length)} jobs</h2>
        <FigureList
          figures={[
            { name: "Cost", value: moneyText(cost, currency) },
            { name: "Price", value: moneyText(price, currency) },
            { name: "Profit", value: moneyText(profit, currency) },
            { name: "Markup", value: shareWords(markup) },
            { name: "Margin", value: shareWords(margin) },
            { name: "Short", value: moneyText(short, currency) },
          ]}
        />
        <div className={shared.small}>
          profit = price - cost; {markupFormula}; {marginFormula}; gap = margin - target; short =
          what the prices lack to keep their targets.
        </div>
      </section>
      <Field label="First comes">
        <Select
          value={order}
          onChange={(_, { value }) => {
            const chosen = jobOrders.find((one) => one === value);
            if (chosen !== undefined) onOrder(chosen);
          }}
        >
          {jobOrders.map((one) => (
            <option key={one} value={one}>
              {orderWords[one]}
            </option>
          ))}
        </Select>
      </Field>
      <MarginChart rows={more.shown} />
      <ul className={mergeClasses(shared.list, shared.stack)} aria-label="Jobs">
        {more.shown.map((row) => (
          <JobCard
            key={jobKey(row.job)}
            row={row}
            takesFocus={jobKey(row.job) === left}
            onOpen={() => onOpen(jobKey(row.job))}
          />
        ))}
      </ul>
      {more.left === 0 ? null : (
        <SmallButton onClick={more.showMore}>Show more jobs ({countText(more.left)})</SmallButton>
      )}
      {children}
    </div>
  );
}
