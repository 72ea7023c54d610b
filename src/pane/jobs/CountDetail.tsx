/** The numbers that were put in for one opening, and the way to its row. */
import { makeStyles } from "@fluentui/react-components";
import { lengthWriter } from "../../app/settings";
import { explainCount } from "../../core/takeoff/explain";
import { openingAt, type Count } from "../../core/takeoff/take";
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

export function CountDetail({ count }: { readonly count: Count }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { settings } = usePane().state;
  const { numbers } = explainCount(count, lengthWriter(settings));
  const { place, mark } = openingAt(count.take, count.row);
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
      </div>
    </div>
  );
}
