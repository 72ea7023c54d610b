/** How far something is. */
import { makeStyles } from "@fluentui/react-components";
import { tokens } from "./tokens";

const useStyles = makeStyles({
  track: {
    height: "6px",
    overflow: "hidden",
    borderRadius: tokens.borderRadiusCircular,
    backgroundColor: tokens.colorNeutralBackground6,
    "@media (forced-colors: active)": { border: "1px solid CanvasText" },
  },
  fill: {
    height: "100%",
    borderRadius: tokens.borderRadiusCircular,
    backgroundColor: tokens.colorCompoundBrandBackground,
    transitionProperty: "width",
    transitionDuration: tokens.durationSlow,
    "@media (prefers-reduced-motion: reduce)": { transitionDuration: "0.01ms" },
    "@media (forced-colors: active)": { backgroundColor: "Highlight" },
  },
});

export type ProgressLineProps = {
  /** What is under way. */
  readonly name: string;
  /** From 0 to 1; `null` while nobody knows. */
  readonly done: number | null;
};

export function ProgressLine({ name, done }: ProgressLineProps) {
  const percent = done === null ? {} : { "aria-valuenow": Math.round(done * 100) };
  return (
    <div role="progressbar" aria-label={name} aria-valuemin={0} aria-valuemax={100} {...percent}>
      <Bar share={done ?? 0} />
    </div>
  );
}

/** The same line as a picture beside words that say as much. */
export function Bar({ share }: { readonly share: number }) {
  const styles = useStyles();
  return (
    <div aria-hidden className={styles.track}>
      <div className={styles.fill} style={{ width: `${share * 100}%` }} />
    </div>
  );
}
