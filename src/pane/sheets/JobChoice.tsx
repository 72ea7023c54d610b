/** Which jobs are written. */
import { Checkbox, makeStyles, mergeClasses } from "@fluentui/react-components";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { jobKey } from "../../core/takeoff/takeOff";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";

const useStyles = makeStyles({
  group: { minWidth: 0, margin: 0, padding: 0, border: "none" },
  legend: { padding: 0 },
  job: { display: "flex", alignItems: "center", justifyContent: "space-between" },
  name: { minWidth: 0, overflowWrap: "anywhere" },
});

export type JobChoiceProps = {
  readonly jobs: readonly JobEstimate[];
  /** By `jobKey`. */
  readonly leftOut: ReadonlySet<string>;
  readonly onLeaveOut: (leftOut: ReadonlySet<string>) => void;
};

export function JobChoice({ jobs, leftOut, onLeaveOut }: JobChoiceProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const keys = jobs.map(({ job }) => jobKey(job));
  const out = keys.filter((key) => leftOut.has(key)).length;
  const toggle = (key: string, isIn: boolean): void =>
    onLeaveOut(new Set(isIn ? [...leftOut].filter((each) => each !== key) : [...leftOut, key]));
  return (
    <fieldset className={styles.group}>
      <legend className={mergeClasses(shared.subheading, styles.legend)}>Which jobs</legend>
      {jobs.length < 2 ? null : (
        <Checkbox
          label="All jobs"
          checked={out === 0 ? true : out === keys.length ? false : "mixed"}
          onChange={(_, { checked }) => onLeaveOut(new Set(checked === true ? [] : keys))}
        />
      )}
      {jobs.map(({ job, rows, uncounted }) => (
        <div key={jobKey(job)} className={styles.job}>
          <Checkbox
            className={styles.name}
            label={job}
            checked={!leftOut.has(jobKey(job))}
            onChange={(_, { checked }) => toggle(jobKey(job), checked === true)}
          />
          <span className={mergeClasses(shared.small, shared.number)}>
            {uncounted.length === 0
              ? counted(rows, "opening")
              : `${rows - uncounted.length} of ${counted(rows, "opening")}`}
          </span>
        </div>
      ))}
    </fieldset>
  );
}
