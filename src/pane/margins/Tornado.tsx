/** What moves the margin most: each figure by itself from its lowest to its highest, widest first. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { factorWords } from "../../core/pricing/chances/factorWords";
import { shareOf, type Percent } from "../../core/pricing/rates/percent";
import type { SwingEffect } from "../../core/pricing/chances/swings";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { Bars, scaleOf } from "./Bars";
import { changeWords, shareWords, typedWords } from "./marginWords";

const useStyles = makeStyles({
  figure: { margin: 0 },
  rows: { display: "grid", gap: tokens.spacingVerticalS, marginTop: tokens.spacingVerticalXS },
  words: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "space-between",
    columnGap: tokens.spacingHorizontalS,
  },
});

export type TornadoProps = {
  readonly effects: readonly SwingEffect[];
  /** The margin from which each figure is moved. */
  readonly margin: number | null;
  readonly target: Percent;
};

export function Tornado({ effects, margin, target }: TornadoProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const moving = effects.filter(({ swing }) => swing > 0);
  const middle = margin ?? 0;
  const scale = scaleOf([
    middle,
    shareOf(target),
    ...moving.flatMap(({ marginAtLow, marginAtHigh }) => [
      marginAtLow ?? middle,
      marginAtHigh ?? middle,
    ]),
  ]);
  return (
    <figure className={styles.figure}>
      <figcaption>
        <h3 className={shared.subheading}>What moves the margin most</h3>
        <div className={shared.small}>
          Each figure by itself. Striped: at its lowest. Filled: at its highest. Thin line: the
          margin now, {shareWords(margin)}. Thick line: the target, {typedWords(target)}.
        </div>
      </figcaption>
      {moving.length === 0 ? <p>Nothing can move: no figure has a range.</p> : null}
      <ol className={mergeClasses(shared.list, styles.rows)}>
        {moving.map(({ factor, low, high, marginAtLow, marginAtHigh, name }) => (
          <li key={name}>
            <div className={mergeClasses(shared.small, styles.words)}>
              <span className={shared.strong}>{factorWords(factor)}</span>
              <span>
                at {changeWords(low)}: {shareWords(marginAtLow)}; at {changeWords(high)}:{" "}
                {shareWords(marginAtHigh)}
              </span>
            </div>
            <Bars
              scale={scale}
              axis={middle}
              lines={[shareOf(target)]}
              bars={[
                { from: middle, to: marginAtLow ?? middle, look: "striped" },
                { from: middle, to: marginAtHigh ?? middle, look: "solid" },
              ]}
            />
          </li>
        ))}
      </ol>
    </figure>
  );
}
