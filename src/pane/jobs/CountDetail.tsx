/** The numbers that were put in for one opening, and the way to its row. */
import { makeStyles } from "@fluentui/react-components";
import { lengthWriter } from "../../app/settings";
import type { Opening } from "../../core/openings/opening";
import { explainCount } from "../../core/takeoff/explain";
import { openingAt, type Count } from "../../core/takeoff/take";
import { SmallButton } from "../parts/SmallButton";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { usePane } from "../state/paneContext";
import { NumbersPutIn } from "./NumbersPutIn";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  detail: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalXS,
    padding: `0 ${tokens.spacingHorizontalM} ${tokens.spacingVerticalS} 28px`,
  },
  row: { display: "flex", alignItems: "center", gap: tokens.spacingHorizontalS },
});

export type CountDetailProps = {
  readonly count: Count;
  readonly onOpening: (opening: Opening) => void;
};

export function CountDetail({ count, onOpening }: CountDetailProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { settings } = usePane().state;
  const { numbers } = explainCount(count, lengthWriter(settings));
  const opening = openingAt(count.take, count.row);
  const { place, mark } = opening;
  return (
    <div className={styles.detail}>
      {numbers.length === 0 ? (
        <div className={shared.small}>The same for every opening: nothing is put in.</div>
      ) : (
        <NumbersPutIn numbers={numbers} />
      )}
      <div className={styles.row}>
        <span className={shared.small}>In the schedule</span>
        <PlaceButton place={place} of={mark} />
        <SmallButton onClick={() => onOpening(opening)}>
          Picture<span className={shared.hidden}> of {mark}</span>
        </SmallButton>
      </div>
    </div>
  );
}
