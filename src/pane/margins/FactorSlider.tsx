/** One figure that can be moved: by a slider, or by typing the change. */
import { Field, Input, makeStyles, Slider } from "@fluentui/react-components";
import type { Finding } from "../../core/base/finding";
import { inPercent, readPercent } from "../../core/pricing/rates/percent";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  factor: {
    display: "grid",
    gridTemplateColumns: "1fr 92px",
    alignItems: "center",
    columnGap: tokens.spacingHorizontalS,
  },
  name: { gridColumn: "1 / span 2", overflowWrap: "anywhere" },
  slider: { minWidth: 0, width: "100%" },
  // A mark at each of many steps is no scale.
  rail: { "::before": { backgroundImage: "none" } },
  field: { minWidth: 0 },
  input: { minWidth: 0, width: "100%" },
  typed: { minWidth: 0, width: "100%", textAlign: "right", fontVariantNumeric: "tabular-nums" },
});

export type FactorSliderProps = {
  readonly name: string;
  /** As typed; the empty text is as estimated. */
  readonly typed: string;
  readonly fault: Finding | undefined;
  /** The slider's ends, in percent; more can be typed. */
  readonly low: number;
  readonly high: number;
  readonly onType: (typed: string) => void;
};

export function FactorSlider({ name, typed, fault, low, high, onType }: FactorSliderProps) {
  const styles = useStyles();
  const read = typed.trim() === "" ? null : readPercent(typed);
  const at = read === null ? 0 : inPercent(read.percent);
  return (
    <div className={styles.factor}>
      <span className={styles.name}>{name}</span>
      <Slider
        className={styles.slider}
        rail={{ className: styles.rail }}
        aria-label={`${name}: change in percent`}
        min={low}
        max={high}
        step={1}
        value={Math.min(high, Math.max(low, at))}
        onChange={(_, { value }) => onType(value === 0 ? "" : String(value))}
      />
      <Field
        className={styles.field}
        {...(fault === undefined
          ? {}
          : { validationState: "error" as const, validationMessage: fault.message })}
      >
        <Input
          className={styles.input}
          input={{ className: styles.typed }}
          aria-label={`${name}: typed change`}
          inputMode="decimal"
          placeholder="0"
          contentAfter="%"
          value={typed}
          onChange={(_, { value }) => onType(value)}
        />
      </Field>
    </div>
  );
}
