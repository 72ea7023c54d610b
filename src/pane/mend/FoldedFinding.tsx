/** One thing to mend: what is wrong, what to do, and a button for each cell it is about. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { Finding, FindingLevel } from "../../core/base/finding";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { countText } from "../parts/quantities";
import { useMore } from "../parts/useMore";
import type { Fold } from "./foldFindings";
import { tokens } from "../parts/tokens";
import { SmallButton } from "../parts/SmallButton";

const useStyles = makeStyles({
  finding: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalSNudge,
    padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}`,
    borderLeftWidth: "4px",
    overflowWrap: "anywhere",
  },
  stop: { borderLeftColor: tokens.colorStatusDangerBorder2 },
  warn: { borderLeftColor: tokens.colorStatusWarningBorder2 },
  note: { borderLeftColor: tokens.colorNeutralStroke1 },
  places: { display: "flex", flexWrap: "wrap", gap: tokens.spacingHorizontalXS },
});

const firstPlaces = 6;
const morePlaces = 60;

export function FoldedFinding({
  level,
  fold,
}: {
  readonly level: FindingLevel;
  readonly fold: Fold;
}) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { shown, left, showMore } = useMore(fold.findings, firstPlaces, morePlaces);
  const times = fold.findings.length;
  return (
    <li className={mergeClasses(shared.card, styles.finding, styles[level])}>
      <div>
        {times > 1 ? <strong>{countText(times)} times: </strong> : null}
        {fold.message}
      </div>
      {fold.findings.some(({ place }) => place !== null) ? (
        <div className={styles.places}>
          {shown.map((finding, index) => (
            <Place key={index} finding={finding} />
          ))}
          {left === 0 ? null : (
            <SmallButton look="bare" onClick={showMore}>
              {countText(left)} more
            </SmallButton>
          )}
        </div>
      ) : null}
    </li>
  );
}

function Place({ finding }: { readonly finding: Finding }) {
  if (finding.place === null) return null;
  return <PlaceButton place={finding.place} of={finding.mark ?? ""} />;
}
