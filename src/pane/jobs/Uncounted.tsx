/** The openings of a job that are not counted, each with the way to its cell. */
import { makeStyles } from "@fluentui/react-components";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { UncountedRow } from "../../core/openings/opening";
import { Notice } from "../parts/Notice";
import { PlaceButton } from "../parts/PlaceButton";
import { counted, countText } from "../parts/quantities";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  places: {
    display: "flex",
    flexWrap: "wrap",
    gap: tokens.spacingHorizontalXS,
    marginTop: tokens.spacingVerticalXS,
  },
});

const mostShown = 12;

/** Nothing where every opening is counted. */
export function Uncounted({ job }: { readonly job: JobEstimate }) {
  const styles = useStyles();
  const { uncounted } = job;
  if (uncounted.length === 0) return null;
  const left = uncounted.length - mostShown;
  return (
    <Notice level="stop" quiet>
      <strong>{counted(uncounted.length, "opening is", "openings are")} not counted here.</strong>
      <div className={styles.places}>
        {uncounted.slice(0, mostShown).map((row) => (
          <PlaceButton
            key={`${row.mark} ${row.place.row}`}
            place={placeToMend(row)}
            of={row.mark}
          />
        ))}
        {left > 0 ? <span>and {countText(left)} more</span> : null}
      </div>
    </Notice>
  );
}

/** The cell that stops the count, or the row's first. */
const placeToMend = ({ findings, place }: UncountedRow) =>
  findings.find(({ level }) => level === "stop")?.place ?? place;
