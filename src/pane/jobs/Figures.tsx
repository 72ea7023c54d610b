/** Material, weight and openings of a job, or of all jobs, side by side. */
import { makeStyles } from "@fluentui/react-components";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { currencyIn, measureStyleIn } from "../../app/settings";
import { sumOf } from "../../core/money/amounts";
import { moneyText } from "../../core/money/writeMoney";
import { useSharedStyles } from "../parts/parts.styles";
import { countText, weightText } from "../parts/quantities";
import { usePane } from "../state/paneContext";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  figures: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "space-between",
    gap: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalS}`,
    margin: 0,
  },
  value: {
    margin: 0,
    fontSize: tokens.fontSizeBase400,
    fontWeight: tokens.fontWeightSemibold,
    lineHeight: tokens.lineHeightBase400,
    fontVariantNumeric: "tabular-nums",
    whiteSpace: "nowrap",
  },
});

export function Figures({ jobs }: { readonly jobs: readonly JobEstimate[] }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { settings, takeOff } = usePane().state;
  const priced = jobs.flatMap(({ material }) => (material.total === null ? [] : [material.total]));
  const rows = jobs.reduce((sum, job) => sum + job.rows, 0);
  const uncounted = jobs.reduce((sum, job) => sum + job.uncounted.length, 0);
  const weight = jobs.reduce((sum, { material }) => sum + material.weight, 0);
  const figures = [
    [
      "Material",
      priced.length === 0 ? "not priced" : moneyText(sumOf(priced), currencyIn(settings)),
    ],
    ["Weight", weightText(weight, measureStyleIn(settings))],
    [
      "Openings",
      uncounted === 0 ? countText(rows) : `${countText(rows - uncounted)} of ${countText(rows)}`,
    ],
  ] as const;
  const isInvented = takeOff?.inputs.hasOwnItems === false;
  return (
    <>
      <dl className={styles.figures}>
        {figures.map(([name, value]) => (
          <div key={name}>
            <dt className={shared.small}>{name}</dt>
            <dd className={styles.value}>{value}</dd>
          </div>
        ))}
      </dl>
      {isInvented ? (
        <div className={shared.small}>By the starter’s items: costs and weights are invented.</div>
      ) : null}
    </>
  );
}
