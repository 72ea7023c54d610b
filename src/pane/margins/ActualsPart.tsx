/** What jobs really cost and took against their estimates, and what would have fitted. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { ActualsReport, PlacedSuggestion } from "../../app/jobActuals";
import { currencyIn } from "../../app/settings";
import type { Difference } from "../../core/pricing/actuals";
import { cents } from "../../core/base/units";
import { moneyText } from "../../core/money/writeMoney";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { useMore } from "../parts/useMore";
import { usePane } from "../state/paneContext";
import { shareWords } from "./marginWords";

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
  suggestion: { padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}` },
});

const firstSuggestions = 8;

export function ActualsPart({ report }: { readonly report: ActualsReport }) {
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
      <Suggestions suggestions={report.suggestions} />
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

function Suggestions({ suggestions }: { readonly suggestions: readonly PlacedSuggestion[] }) {
  const shared = useSharedStyles();
  const more = useMore(suggestions, firstSuggestions);
  if (suggestions.length === 0) {
    return <div className={shared.small}>Nothing: minutes and spares are close to what was.</div>;
  }
  return (
    <>
      <div className={shared.small}>
        Suggestions only. Take the ones you trust: go to the cell and type the new value. A
        suggestion that was taken goes away.
      </div>
      {suggestions.every(({ place }) => place === null) ? (
        <Notice level="note" quiet>
          The workbook has no kit book or items sheet of its own to change. Add them in Set-up
          first.
        </Notice>
      ) : null}
      <ul className={mergeClasses(shared.list, shared.stack)}>
        {more.shown.map((suggestion) => (
          <Suggested key={`${suggestion.kind} ${suggestion.row}`} suggestion={suggestion} />
        ))}
      </ul>
      {more.left === 0 ? null : (
        <SmallButton onClick={more.showMore}>Show more ({countText(more.left)})</SmallButton>
      )}
    </>
  );
}

function Suggested({ suggestion }: { readonly suggestion: PlacedSuggestion }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { kind, item, from, to, because, place } = suggestion;
  const unit = kind === "minutes" ? "minutes" : "% of spares";
  return (
    <li className={mergeClasses(shared.card, styles.suggestion)}>
      <div>
        {item}: <strong>{to}</strong> {unit} instead of {from === "" ? "none" : from}
      </div>
      <div className={shared.small}>{because}</div>
      {place === null ? null : <PlaceButton place={place} of={place.sheet} />}
    </li>
  );
}
