/** Long work in one line: how far it is and a way to stop it, or that it was stopped and a way to go on. */
import { makeStyles } from "@fluentui/react-components";
import { useSharedStyles } from "./parts.styles";
import { ProgressLine } from "./ProgressLine";
import { SmallButton } from "./SmallButton";
import { tokens } from "./tokens";

const useStyles = makeStyles({
  row: { display: "flex", alignItems: "center", gap: tokens.spacingHorizontalM },
  line: { flexGrow: 1 },
});

export type UnderWayProps = {
  /** What is under way, such as `Checking the kit book`. */
  readonly name: string;
  /** From 0 to 1; `null` where it was stopped. */
  readonly progress: number | null;
  readonly onStop: () => void;
  readonly onGoOn: () => void;
};

export function UnderWay({ name, progress, onStop, onGoOn }: UnderWayProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  if (progress === null) {
    return (
      <div className={styles.row}>
        <span className={styles.line}>Stopped.</span>
        <SmallButton onClick={onGoOn}>Go on</SmallButton>
      </div>
    );
  }
  return (
    <div className={styles.row}>
      <div className={styles.line}>
        <div className={shared.small}>
          {name}: {Math.round(progress * 100)} %
        </div>
        <ProgressLine name={name} done={progress} />
      </div>
      <SmallButton onClick={onStop}>Stop</SmallButton>
    </div>
  );
}
