/** The opening of the schedule row that is selected in the spreadsheet, with the way to its picture. */
import { makeStyles } from "@fluentui/react-components";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { Opening } from "../../core/openings/opening";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { useSelection } from "./useSelection";

const useStyles = makeStyles({
  bar: {
    position: "sticky",
    bottom: "-12px",
    zIndex: 1,
    display: "flex",
    alignItems: "center",
    flexWrap: "wrap",
    gap: tokens.spacingHorizontalS,
    margin: "12px -12px -12px",
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}`,
    borderTop: `1px solid ${tokens.colorNeutralStroke2}`,
    backgroundColor: tokens.colorNeutralBackground2,
  },
  words: { flexGrow: 1, minWidth: 0, overflowWrap: "anywhere" },
});

export type SelectedOpeningProps = {
  readonly jobs: readonly JobEstimate[];
  /** The opening that is shown already. */
  readonly shown: Opening | undefined;
  readonly onOpen: (job: JobEstimate, opening: Opening) => void;
};

/** Nothing where the selected cell is in no counted row of the schedule, or its opening is shown. */
export function SelectedOpening({ jobs, shown, onOpen }: SelectedOpeningProps) {
  const styles = useStyles();
  const selection = useSelection();
  const found = selection === null ? null : openingIn(jobs, selection);
  if (found === null || found.opening === shown) return null;
  const { job, opening } = found;
  return (
    <div className={styles.bar}>
      <span className={styles.words}>
        Selected in the schedule: <strong>{opening.mark}</strong>
      </span>
      <SmallButton onClick={() => onOpen(job, opening)}>Show its picture</SmallButton>
    </div>
  );
}

type Found = { readonly job: JobEstimate; readonly opening: Opening };

function openingIn(
  jobs: readonly JobEstimate[],
  { sheet, row }: { readonly sheet: string; readonly row: number },
): Found | null {
  for (const job of jobs) {
    const { openings, stopped } = job.takeOff;
    const opening = openings.find(({ place }) => place.sheet === sheet && place.row === row);
    if (opening !== undefined) return stopped.includes(opening) ? null : { job, opening };
  }
  return null;
}
