/** What jobs really cost and took against their estimates, and what would have fitted. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { Inputs } from "../../app/reading/inputs";
import type { ActualsReport } from "../../app/pricing/jobActuals";
import { currencyIn } from "../../app/settings";
import type { Difference } from "../../core/pricing/actuals/actuals";
import { cents } from "../../core/base/units";
import { moneyText } from "../../core/money/writeMoney";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { usePane } from "../state/paneContext";
import { shareWords } from "./marginWords";
import { Suggestions } from "./Suggestions";

const useStyles = makeStyles({
  difference: {
    padding: `${tokens.spacingVerticalXS} 0`,
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  },
  words: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "space-between",
    columnGap: tokens.spacingHorizontalS,
  },
});

export type ActualsPartProps = {
  readonly report: ActualsReport;
  readonly inputs: Inputs;
};

export function ActualsPart({ report, inputs }: ActualsPartProps) {
  const shared = useSharedStyles();
  const currency = currencyIn(usePane().state.settings);
  const money = (amount: number): string => moneyText(cents(Math.round(amount)), currency);
  if (report.jobs.length === 0) {
    return (
      <div className={shared.small}>
        Nothing actual is typed yet. Open a job to add a sheet for what it really cost, took and
        used.
      </div>
    );
  }
  return (
    <>
      <h3 className={shared.subheading}>By job</h3>
      <ul className={shared.list}>
        {report.outcomes.map(({ job, estimated, actual, over, notTyped }) => (
          <Row
            key={job}
            name={job}
            words={`estimated ${money(estimated)}, actual ${money(actual)}${notTyped.length === 0 ? "" : `; as estimated: ${notTyped.join(", ")}`}`}
            over={overWords(over, money)}
          />
        ))}
      </ul>
      <Differences title="By cost" differences={report.costs} write={money} />
      <Differences title="By step of the work" differences={report.bags} write={minutesText} />
      <h3 className={shared.subheading}>What would have fitted</h3>
      <Suggestions suggestions={report.suggestions} inputs={inputs} />
    </>
  );
}

const minutesText = (minutes: number): string =>
  `${minutes.toLocaleString("en-US", { maximumFractionDigits: 0 })} min`;

const overWords = (over: number, write: (amount: number) => string): string =>
  over === 0 ? "as estimated" : over > 0 ? `${write(over)} more` : `${write(-over)} less`;

type DifferencesProps = {
  readonly title: string;
  readonly differences: readonly Difference[];
  readonly write: (amount: number) => string;
};

function Differences({ title, differences, write }: DifferencesProps) {
  const shared = useSharedStyles();
  if (differences.length === 0) return null;
  return (
    <>
      <h3 className={shared.subheading}>{title}</h3>
      <ul className={shared.list}>
        {differences.map(({ name, estimated, actual, over, share }) => (
          <Row
            key={name}
            name={name}
            words={`estimated ${write(estimated)}, actual ${write(actual)}`}
            over={`${overWords(over, write)}${share === null ? "" : ` (${shareWords(Math.abs(share))})`}`}
          />
        ))}
      </ul>
    </>
  );
}

type RowProps = { readonly name: string; readonly words: string; readonly over: string };

function Row({ name, words, over }: RowProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  return (
    <li className={styles.difference}>
      <div className={styles.words}>
        <span>{name}</span>
        <span className={mergeClasses(shared.number, shared.strong)}>{over}</span>
      </div>
      <div className={shared.small}>{words}</div>
    </li>
  );
}
