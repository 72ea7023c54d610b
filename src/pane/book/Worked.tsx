/** What long work comes to, or how far it is. */
import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useSharedStyles } from "../parts/parts.styles";
import { ProgressLine } from "../parts/ProgressLine";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import type { StepsHandle } from "./useSteps";

const useStyles = makeStyles({
  busy: { display: "flex", alignItems: "center", gap: tokens.spacingHorizontalM },
  line: { flexGrow: 1 },
});

export type WorkedProps<Result> = {
  /** What is under way, such as `Checking the kit book`. */
  readonly name: string;
  readonly steps: StepsHandle<Result>;
  readonly children: (result: Result) => ReactNode;
};

export function Worked<Result>({ name, steps, children }: WorkedProps<Result>) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { state, cancel, again } = steps;
  switch (state.kind) {
    case "busy":
      return (
        <div className={styles.busy}>
          <div className={styles.line}>
            <div className={shared.small}>
              {name}: {Math.round(state.progress * 100)} %
            </div>
            <ProgressLine name={name} done={state.progress} />
          </div>
          <SmallButton onClick={cancel}>Stop</SmallButton>
        </div>
      );
    case "stopped":
      return (
        <div className={styles.busy}>
          <span className={styles.line}>Stopped.</span>
          <SmallButton onClick={again}>Go on</SmallButton>
        </div>
      );
    case "done":
      return children(state.result);
  }
}
