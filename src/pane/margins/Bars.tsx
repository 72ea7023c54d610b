/** A strip of a chart: bars and lines along one scale, drawn as wide as there is room. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { useId } from "react";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  strip: { display: "block", width: "100%", overflow: "visible" },
  solid: {
    fill: tokens.colorCompoundBrandBackground,
    "@media (forced-colors: active)": { fill: "Highlight" },
  },
  /** Told from the solid one by its stripes and its frame, and not by colour alone. */
  striped: {
    stroke: tokens.colorStatusWarningForeground1,
    strokeWidth: "1px",
    "@media (forced-colors: active)": { stroke: "CanvasText" },
  },
  stripe: {
    stroke: tokens.colorStatusWarningForeground1,
    strokeWidth: "2px",
    "@media (forced-colors: active)": { stroke: "CanvasText" },
  },
  ground: { fill: tokens.colorNeutralBackground1 },
  axis: { stroke: tokens.colorNeutralStroke1, strokeWidth: "1px" },
  line: {
    stroke: tokens.colorNeutralForeground1,
    strokeWidth: "2px",
    "@media (forced-colors: active)": { stroke: "CanvasText" },
  },
});

export type Scale = { readonly low: number; readonly high: number };
export type BarLook = "solid" | "striped";

export type BarsProps = {
  readonly scale: Scale;
  /** Between two values of the scale, in either order. */
  readonly bars: readonly { readonly from: number; readonly to: number; readonly look: BarLook }[];
  /** Where a thick line stands across, such as a target. */
  readonly lines: readonly number[];
  /** Where a thin line stands across, such as zero. */
  readonly axis?: number;
};

const height = 16;

/** Not read out: the words beside it say the same. */
export function Bars({ scale, bars, lines, axis }: BarsProps) {
  const styles = useStyles();
  const stripes = useId();
  const place = (value: number): string => `${(100 * shareAlong(scale, value)).toFixed(2)}%`;
  return (
    <svg aria-hidden focusable="false" height={height} className={styles.strip}>
      <pattern
        id={stripes}
        width="6"
        height="6"
        patternUnits="userSpaceOnUse"
        patternTransform="rotate(45)"
      >
        <rect width="6" height="6" className={styles.ground} />
        <line y2="6" className={styles.stripe} />
      </pattern>
      {axis === undefined ? null : (
        <line x1={place(axis)} x2={place(axis)} y2={height} className={styles.axis} />
      )}
      {bars.map(({ from, to, look }, index) => (
        <rect
          key={index}
          x={place(Math.min(from, to))}
          width={`${(100 * Math.abs(shareAlong(scale, to) - shareAlong(scale, from))).toFixed(2)}%`}
          y="3"
          height={height - 6}
          className={look === "solid" ? styles.solid : styles.striped}
          {...(look === "solid" ? {} : { fill: `url(#${stripes})` })}
        />
      ))}
      {lines.map((at, index) => (
        <line
          key={index}
          x1={place(at)}
          x2={place(at)}
          y2={height}
          className={mergeClasses(styles.line)}
        />
      ))}
    </svg>
  );
}

/** Where on the scale a value is, from 0 to 1; beyond the ends it stays at the end. */
const shareAlong = ({ low, high }: Scale, value: number): number =>
  high === low ? 0 : Math.min(1, Math.max(0, (value - low) / (high - low)));

/** A scale that holds all values, with a little room at its ends. */
export function scaleOf(values: readonly number[]): Scale {
  const [low, high] = [Math.min(...values), Math.max(...values)];
  const room = (high - low) * 0.02 || 0.01;
  return { low: low - room, high: high + room };
}
