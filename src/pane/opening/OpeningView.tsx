/** One opening: where it stands in the schedule, its picture, and the kit that goes there. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { useMemo } from "react";
import { countsOfOpening } from "../../core/bags/openingCounts";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { Opening } from "../../core/openings/opening";
import { BackButton } from "../jobs/BackButton";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { tokens } from "../parts/tokens";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { OpeningKit } from "./OpeningKit";
import { OpeningWords } from "./OpeningWords";

const useStyles = makeStyles({
  row: {
    display: "flex",
    alignItems: "center",
    flexWrap: "wrap",
    gap: tokens.spacingHorizontalS,
  },
});

export type OpeningViewProps = {
  readonly job: JobEstimate;
  readonly opening: Opening;
  /** What is gone back to. */
  readonly backTo: string;
  readonly onBack: () => void;
};

export function OpeningView({ job, opening, backTo, onBack }: OpeningViewProps) {
  const shared = useSharedStyles();
  const styles = useStyles();
  const counts = useMemo(() => countsOfOpening(job.takeOff, opening), [job, opening]);
  return (
    <div className={shared.stack}>
      <div>
        <BackButton to={backTo} onBack={onBack} />
        <h2 tabIndex={-1} ref={useFocusOnAppear(true)} className={shared.heading}>
          {opening.mark}: {opening.type}
        </h2>
        <div className={mergeClasses(shared.small, styles.row)}>
          In the schedule
          <PlaceButton place={opening.place} of={opening.mark} />
        </div>
      </div>
      {counts === null ? (
        <Notice level="note" quiet>
          Nothing is counted for this opening, so there is nothing to draw.
        </Notice>
      ) : (
        <>
          <OpeningWords counts={counts} />
          <OpeningKit job={job} counts={counts} />
        </>
      )}
    </div>
  );
}
