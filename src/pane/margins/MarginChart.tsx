/** The margin of each job beside its target, on one scale: a bar, a line, and the words. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { MarginRow } from "../../core/pricing/marginTable";
import { shareOf } from "../../core/pricing/rates/percent";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { Bars, scaleOf } from "./Bars";
import { gapWords, shareWords, typedWords } from "./marginWords";

const useStyles = makeStyles({
  chart: { margin: 0, padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}` },
  rows: { display: "grid", gap: tokens.spacingVerticalXS, marginTop: tokens.spacingVerticalXS },
  words: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "space-between",
    columnGap: tokens.spacingHorizontalS,
  },
  name: { overflowWrap: "anywhere" },
});

export function MarginChart({ rows }: { readonly rows: readonly MarginRow[] }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const scale = scaleOf([
    0,
    ...rows.flatMap(({ margin, target }) => [margin ?? 0, shareOf(target)]),
  ]);
  return (
    <figure className={mergeClasses(shared.card, styles.chart)}>
      <figcaption>
        <h3 className={shared.subheading}>Margin and target</h3>
        <div className={shared.small}>
          Bar: margin. Line across: target. Striped: below the target.
        </div>
      </figcaption>
      <ul className={mergeClasses(shared.list, styles.rows)}>
        {rows.map(({ job, margin, target, gap, short }) => (
          <li key={job}>
            <div className={mergeClasses(shared.small, styles.words)}>
              <span className={styles.name}>{job}</span>
              <span className={shared.number}>
                {shareWords(margin)}, target {typedWords(target)}: {gapWords(gap)}
              </span>
            </div>
            <Bars
              scale={scale}
              axis={0}
              lines={[shareOf(target)]}
              bars={
                margin === null
                  ? []
                  : [{ from: 0, to: margin, look: short > 0 ? "striped" : "solid" }]
              }
            />
          </li>
        ))}
      </ul>
    </figure>
  );
}
