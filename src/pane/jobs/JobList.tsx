/** Every job with its totals, and what they do not hold. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { ChevronRightRegular } from "@fluentui/react-icons/svg/chevron-right";
import { currencyIn, measureStyleIn } from "../../app/settings";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { moneyText } from "../../core/money/writeMoney";
import { jobKey } from "../../core/takeoff/takeOff";
import { LevelIcon } from "../parts/LevelIcon";
import { useSharedStyles } from "../parts/parts.styles";
import { counted, weightText } from "../parts/quantities";
import { usePane } from "../state/paneContext";
import { doubtsOf } from "./doubts";
import { Figures } from "./Figures";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  total: { padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}` },
  job: {
    display: "grid",
    gridTemplateColumns: "1fr auto 12px",
    alignItems: "center",
    columnGap: tokens.spacingHorizontalS,
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}`,
    borderRadius: tokens.borderRadiusLarge,
  },
  name: { overflowWrap: "anywhere" },
  chevron: { gridRow: "1 / span 2", gridColumn: "3", fontSize: "12px", lineHeight: 0 },
  doubt: {
    display: "flex",
    alignItems: "center",
    gap: tokens.spacingHorizontalXS,
    gridColumn: "1 / span 2",
    marginTop: tokens.spacingVerticalXS,
    fontSize: tokens.fontSizeBase200,
    fontWeight: tokens.fontWeightSemibold,
  },
});

export type JobListProps = {
  readonly jobs: readonly JobEstimate[];
  /** The job that was left last. */
  readonly left: string | null;
  readonly onOpen: (job: string) => void;
};

export function JobList({ jobs, left, onOpen }: JobListProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  if (jobs.length === 0)
    return <p>No job yet. Each row of the schedule names the job it belongs to.</p>;
  return (
    <div className={shared.stack}>
      {jobs.length === 1 ? null : (
        <section className={mergeClasses(shared.card, styles.total)}>
          <h2 className={shared.subheading}>All {jobs.length} jobs</h2>
          <Figures jobs={jobs} />
        </section>
      )}
      <ul className={mergeClasses(shared.list, shared.stack)}>
        {jobs.map((job) => (
          <JobCard
            key={jobKey(job.job)}
            job={job}
            takesFocus={jobKey(job.job) === left}
            onOpen={() => onOpen(jobKey(job.job))}
          />
        ))}
      </ul>
    </div>
  );
}

type JobCardProps = {
  readonly job: JobEstimate;
  readonly takesFocus: boolean;
  readonly onOpen: () => void;
};

function JobCard({ job, takesFocus, onOpen }: JobCardProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { settings } = usePane().state;
  const { material, rows } = job;
  const total =
    material.total === null ? "not priced" : moneyText(material.total, currencyIn(settings));
  return (
    <li className={shared.card}>
      <button
        type="button"
        ref={useFocusOnAppear(takesFocus)}
        className={mergeClasses(shared.plainButton, styles.job)}
        onClick={onOpen}
      >
        <span className={mergeClasses(shared.strong, styles.name)}>{job.job}</span>
        <span className={mergeClasses(shared.strong, shared.number)}>{total}</span>
        <span className={shared.small}>{counted(rows, "opening")}</span>
        <span className={mergeClasses(shared.small, shared.number)}>
          {weightText(material.weight, measureStyleIn(settings))}
        </span>
        {doubtsOf(job).map((doubt, index) => (
          <span key={doubt} className={styles.doubt}>
            <LevelIcon level={index === 0 && job.uncounted.length > 0 ? "stop" : "warn"} />
            {doubt}
          </span>
        ))}
        <span aria-hidden className={styles.chevron}>
          <ChevronRightRegular />
        </span>
      </button>
    </li>
  );
}
