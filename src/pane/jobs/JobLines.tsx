/** The lines of one job by family, each with its reasons behind its quantity. */
import { Input, makeStyles, mergeClasses } from "@fluentui/react-components";
import { SearchRegular } from "@fluentui/react-icons/svg/search";
import { useDeferredValue, useMemo } from "react";
import { lengthStyleOf } from "../../app/settings";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { Opening } from "../../core/openings/opening";
import { writeSize } from "../../core/lengths/writeLength";
import { useSharedStyles } from "../parts/parts.styles";
import { usePane } from "../state/paneContext";
import { BackButton } from "./BackButton";
import { Figures } from "./Figures";
import type { CorrectionPlaceOf } from "./correctionPlaces";
import { lineKey } from "./lineKey";
import { LineRow } from "./LineRow";
import { OpeningList } from "./OpeningList";
import { searchLines } from "./searchLines";
import { TypedByHand } from "./TypedByHand";
import { Uncounted } from "./Uncounted";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  figures: { padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}` },
  lines: { marginTop: tokens.spacingVerticalXS, overflow: "hidden" },
  family: { marginTop: tokens.spacingVerticalS },
});

export type JobLinesProps = {
  readonly job: JobEstimate;
  readonly placeOf: CorrectionPlaceOf;
  /** The line or the opening that was left last. */
  readonly left: string | null;
  /** What the lines are searched for; it stays while a line of them is looked at. */
  readonly search: string;
  readonly onSearch: (words: string) => void;
  readonly onBack: () => void;
  readonly onOpen: (line: string) => void;
  readonly onOpening: (opening: Opening) => void;
};

export function JobLines(props: JobLinesProps) {
  const { job, placeOf, left, search: typed, onSearch, onBack, onOpen, onOpening } = props;
  const styles = useStyles();
  const shared = useSharedStyles();
  const { settings } = usePane().state;
  const search = useDeferredValue(typed);
  const lengths = lengthStyleOf(settings);
  const families = useMemo(
    () => searchLines(job.material.lines, search, ({ line }) => writeSize(line.size, lengths)),
    [job, search, lengths],
  );
  return (
    <div className={shared.stack}>
      <div>
        <BackButton to="All jobs" onBack={onBack} />
        <h2 tabIndex={-1} ref={useFocusOnAppear(left === null)} className={shared.heading}>
          {job.job}
        </h2>
      </div>
      <div className={mergeClasses(shared.card, styles.figures)}>
        <Figures jobs={[job]} />
      </div>
      <Uncounted job={job} />
      <TypedByHand job={job} placeOf={placeOf} />
      <OpeningList job={job} left={left} onOpen={onOpening} />
      <Input
        type="search"
        aria-label="Search the lines"
        placeholder="Search item, size, family"
        contentBefore={<SearchRegular />}
        value={typed}
        onChange={(_, { value }) => onSearch(value)}
      />
      {families.length === 0 ? (
        <p role="status">{search === "" ? "Nothing is needed." : `No line has “${search}”.`}</p>
      ) : null}
      {families.map(({ family, lines }) => (
        <section key={family} className={styles.family}>
          <h3 className={shared.subheading}>{family}</h3>
          <ul className={mergeClasses(shared.list, shared.card, styles.lines)}>
            {lines.map((line) => {
              const key = lineKey(line.line);
              return (
                <LineRow
                  key={key}
                  line={line}
                  takesFocus={key === left}
                  onOpen={() => onOpen(key)}
                />
              );
            })}
          </ul>
        </section>
      ))}
    </div>
  );
}
