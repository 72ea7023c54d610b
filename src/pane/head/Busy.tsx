/** That the pane is reading or counting, how far it is, and a way to stop it. */
import { usePane } from "../state/paneContext";
import { ProgressLine } from "../parts/ProgressLine";
import { useSharedStyles } from "../parts/parts.styles";
import { useCountStatusStyles } from "./CountStatus.styles";
import { SmallButton } from "../parts/SmallButton";

export function Busy() {
  const styles = useCountStatusStyles();
  const shared = useSharedStyles();
  const { state, cancel } = usePane();
  const isCounting = state.phase === "counting";
  const percent = Math.round(state.progress * 100);
  return (
    <div className={styles.busy}>
      <div className={styles.busyWords}>
        <div className={shared.small}>
          {isCounting ? `Counting: ${percent} %` : "Reading the workbook…"}
        </div>
        <ProgressLine
          name={isCounting ? "Counting" : "Reading the workbook"}
          done={isCounting ? state.progress : null}
        />
      </div>
      <SmallButton onClick={cancel}>Stop</SmallButton>
    </div>
  );
}
