/** Hardware and money by job: how many more or fewer, and each line behind it. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { Cents } from "../../core/base/units";
import type { LengthStyle } from "../../core/lengths/writeLength";
import type { Currency } from "../../core/money/currency";
import { moneyText } from "../../core/money/writeMoney";
import type { LineDifference, LineDifferences } from "../../core/revisions/compareLines";
import { writeSize } from "../../core/lengths/writeLength";
import { jobKey } from "../../core/takeoff/takeOff";
import { Disclosure } from "../parts/Disclosure";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { useMore } from "../parts/useMore";

const useStyles = makeStyles({
  jobs: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalXS },
  label: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "flex-end",
    columnGap: tokens.spacingHorizontalM,
  },
  name: { flexGrow: 1, flexBasis: "120px", minWidth: 0, overflowWrap: "anywhere" },
  table: { width: "100%", borderCollapse: "collapse" },
  cell: {
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalXS}`,
    borderTop: `1px solid ${tokens.colorNeutralStroke3}`,
    verticalAlign: "top",
    ":first-child": { paddingLeft: tokens.spacingHorizontalM },
    ":last-child": { paddingRight: tokens.spacingHorizontalM },
  },
  item: { textAlign: "left", fontWeight: tokens.fontWeightRegular, overflowWrap: "anywhere" },
  more: { padding: tokens.spacingHorizontalM },
});

export type HardwareChangesProps = {
  readonly hardware: LineDifferences;
  readonly lengths: LengthStyle;
  readonly currency: Currency;
};

export function HardwareChanges({ hardware, lengths, currency }: HardwareChangesProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  if (hardware.lines.length === 0) return null;
  return (
    <section aria-label="Hardware and money" className={styles.jobs}>
      <h3 className={shared.subheading}>Hardware and money</h3>
      {hardware.jobs.map(({ name, quantity, cost, unknown }) => (
        <div key={jobKey(name)} className={shared.card}>
          <Disclosure
            startsOpen={hardware.jobs.length === 1}
            label={
              <span className={styles.label}>
                <span className={styles.name}>{name}</span>
                <span className={shared.number}>{signedCount(quantity)} pcs</span>
                <span className={shared.number}>{signedMoney(cost, currency)}</span>
                {unknown === 0 ? null : (
                  <span className={shared.small}>{countText(unknown)} without a cost</span>
                )}
              </span>
            }
          >
            {() => (
              <JobLines
                job={name}
                lines={hardware.lines.filter(({ job }) => jobKey(job) === jobKey(name))}
                lengths={lengths}
                currency={currency}
              />
            )}
          </Disclosure>
        </div>
      ))}
    </section>
  );
}

const firstShown = 40;

type JobLinesProps = Pick<HardwareChangesProps, "lengths" | "currency"> & {
  readonly job: string;
  readonly lines: readonly LineDifference[];
};

function JobLines({ job, lines, lengths, currency }: JobLinesProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { shown, left, showMore } = useMore(lines, firstShown, 200);
  const number = mergeClasses(styles.cell, shared.number);
  return (
    <>
      <table className={styles.table}>
        <caption className={shared.hidden}>Lines of {job} that differ</caption>
        <thead className={shared.small}>
          <tr>
            <th scope="col" className={mergeClasses(styles.cell, styles.item)}>
              Item
            </th>
            {["Was", "Is", "Cost"].map((heading) => (
              <th key={heading} scope="col" className={number}>
                {heading}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {shown.map((line) => (
            <tr key={`${line.item}\n${line.size.join(" ")}`}>
              <th scope="row" className={mergeClasses(styles.cell, styles.item)}>
                {line.item}
                <div className={shared.small}>{writeSize(line.size, lengths)}</div>
              </th>
              <td className={number}>{countText(line.from?.quantity ?? 0)}</td>
              <td className={number}>
                {countText(line.to?.quantity ?? 0)}
                <div className={shared.small}>{signedCount(line.quantity)}</div>
              </td>
              <td className={number}>{signedMoney(line.cost, currency)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {left === 0 ? null : (
        <div className={styles.more}>
          <SmallButton onClick={showMore}>Show more ({countText(left)})</SmallButton>
        </div>
      )}
    </>
  );
}

const signedCount = (count: number): string =>
  count > 0 ? `+${countText(count)}` : countText(count);

function signedMoney(cost: Cents | null, currency: Currency): string {
  if (cost === null) return "not known";
  return cost > 0 ? `+${moneyText(cost, currency)}` : moneyText(cost, currency);
}
