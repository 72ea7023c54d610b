/** What stands above every view: where the openings come from, and how many of them are counted. */
import { makeStyles } from "@fluentui/react-components";
import { Notice } from "../parts/Notice";
import { usePane } from "../state/paneContext";
import { isBusy } from "../state/takeOffState";
import { Busy } from "./Busy";
import { CountStatus } from "./CountStatus";
import { SourceChoice } from "./SourceChoice";
import { tokens } from "../parts/tokens";
import { SmallButton } from "../parts/SmallButton";

const useStyles = makeStyles({
  head: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalS,
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}`,
    backgroundColor: tokens.colorNeutralBackground1,
  },
  // Excel draws its own menu over this corner.
  corner: { paddingRight: "36px" },
});

export function PaneHead({ onShowStops }: { readonly onShowStops: () => void }) {
  const styles = useStyles();
  const { state, count } = usePane();
  const { takeOff, phase, fault } = state;
  const again = <SmallButton onClick={count}>Count again</SmallButton>;
  return (
    <header className={styles.head}>
      <div className={styles.corner}>
        <SourceChoice />
      </div>
      {takeOff === null || takeOff.inputs.scheduleSources.length === 0 ? null : (
        <CountStatus takeOff={takeOff} onShowStops={onShowStops} />
      )}
      {isBusy(state) ? <Busy /> : null}
      {phase === "stopped" ? (
        <Notice level="warn" actions={again}>
          Stopped. {takeOff === null ? "Nothing is counted yet." : "What you see is from before."}
        </Notice>
      ) : null}
      {phase === "failed" && fault !== null ? (
        <Notice level="stop" actions={again}>
          {fault.message}
        </Notice>
      ) : null}
    </header>
  );
}
