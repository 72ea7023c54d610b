/** How often each margin came up, drawn, with what is below the target striped. */
import { makeStyles } from "@fluentui/react-components";
import { useId } from "react";
import { shareOf } from "../../core/pricing/rates/percent";
import type { Simulation } from "../../core/pricing/chances/simulation";
import { Disclosure } from "../parts/Disclosure";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { tokens } from "../parts/tokens";
import { shareWords, typedWords } from "./marginWords";

const useStyles = makeStyles({
  figure: { margin: 0 },
  picture: { display: "block", width: "100%" },
  solid: {
    fill: tokens.colorCompoundBrandBackground,
    "@media (forced-colors: active)": { fill: "Highlight" },
  },
  stripe: {
    stroke: tokens.colorStatusWarningForeground1,
    strokeWidth: "2px",
    "@media (forced-colors: active)": { stroke: "CanvasText" },
  },
  striped: {
    stroke: tokens.colorStatusWarningForeground1,
    "@media (forced-colors: active)": { stroke: "CanvasText" },
  },
  axis: { stroke: tokens.colorNeutralStroke1 },
  line: {
    stroke: tokens.colorNeutralForeground1,
    strokeWidth: "2px",
    "@media (forced-colors: active)": { stroke: "CanvasText" },
  },
  ends: { display: "flex", justifyContent: "space-between" },
  table: {
    width: "100%",
    borderCollapse: "collapse",
    "& th": { fontWeight: tokens.fontWeightRegular, textAlign: "left" },
    "& thead th:not(:first-child)": { textAlign: "right" },
  },
});

const height = 120;

export function Histogram({ simulation }: { readonly simulation: Simulation }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const stripes = useId();
  const { histogram, target, draws } = simulation;
  const goal = shareOf(target);
  const low = Math.min(histogram[0]?.from ?? 0, goal);
  const high = Math.max(histogram.at(-1)?.to ?? 0, goal);
  const most = Math.max(...histogram.map(({ count }) => count));
  const along = (margin: number): number =>
    high === low ? 50 : (100 * (margin - low)) / (high - low);
  const rects = histogram.flatMap(({ from, to, count }) => {
    const tall = (count / most) * height;
    // A bar across the target is drawn in two pieces, each in its own look.
    const cut = Math.min(to, Math.max(from, goal));
    return [
      { from, to: cut, tall, isBelow: true },
      { from: cut, to, tall, isBelow: false },
    ].filter((piece) => piece.to > piece.from || from === to);
  });
  const below = shareWords(simulation.belowTarget);
  return (
    <figure className={styles.figure}>
      <svg
        role="img"
        aria-label={`Histogram of ${countText(draws)} margins, from ${shareWords(low)} to ${shareWords(high)}: ${below} of them are below the target of ${typedWords(target)}.`}
        height={height}
        className={styles.picture}
      >
        <pattern
          id={stripes}
          width="6"
          height="6"
          patternUnits="userSpaceOnUse"
          patternTransform="rotate(45)"
        >
          <line y2="6" className={styles.stripe} />
        </pattern>
        {rects.map(({ from, to, tall, isBelow }, index) => (
          <rect
            key={index}
            x={`${along(from)}%`}
            width={`${Math.max(0.3, along(to) - along(from) - 0.3)}%`}
            y={height - tall}
            height={tall}
            className={isBelow ? styles.striped : styles.solid}
            {...(isBelow ? { fill: `url(#${stripes})` } : {})}
          />
        ))}
        <line x2="100%" y1={height - 0.5} y2={height - 0.5} className={styles.axis} />
        <line x1={`${along(goal)}%`} x2={`${along(goal)}%`} y2={height} className={styles.line} />
      </svg>
      <div aria-hidden className={`${shared.small} ${styles.ends}`}>
        <span>{shareWords(low)}</span>
        <span>{shareWords(high)}</span>
      </div>
      <figcaption className={shared.small}>
        How often each margin came up. Line: the target. Striped: below it.
      </figcaption>
      <Disclosure label="As a table">
        {() => (
          <table className={`${shared.small} ${styles.table}`}>
            <thead>
              <tr>
                <th scope="col">Margin from</th>
                <th scope="col">to</th>
                <th scope="col">Draws</th>
              </tr>
            </thead>
            <tbody>
              {histogram.map(({ from, to, count }) => (
                <tr key={from}>
                  <th scope="row">{shareWords(from)}</th>
                  <td className={shared.number}>{shareWords(to)}</td>
                  <td className={shared.number}>{countText(count)}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </Disclosure>
    </figure>
  );
}
