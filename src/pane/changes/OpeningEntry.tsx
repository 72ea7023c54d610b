/** One opening that differs: its mark with the way to its row, its job, and what of it changed. */
import { makeStyles } from "@fluentui/react-components";
import type { ReactNode } from "react";
import type { LengthStyle } from "../../core/lengths/writeLength";
import type { FieldChange } from "../../core/revisions/compareOpenings";
import type { IssuedOpening } from "../../core/revisions/issue";
import { changeText } from "../../sheets/revisions/revisionWords";
import { PlaceButton } from "../parts/PlaceButton";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import type { PlaceOf } from "./openingPlaces";

const useStyles = makeStyles({
  entry: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalXXS,
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalM}`,
    overflowWrap: "anywhere",
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  },
  head: {
    display: "flex",
    flexWrap: "wrap",
    alignItems: "center",
    gap: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalS}`,
  },
});

export type OpeningEntryProps = {
  /** The newer one where there are two. */
  readonly opening: IssuedOpening;
  /** Its older mark where that is another. */
  readonly was?: string;
  /** What it is, for one that came or went. */
  readonly words?: string;
  readonly changes?: readonly FieldChange[];
  readonly lengths: LengthStyle;
  readonly placeOf: PlaceOf;
  /** What can be done about it. */
  readonly children?: ReactNode;
};

export function OpeningEntry(props: OpeningEntryProps) {
  const { opening, was = "", words = "", changes = [], lengths, placeOf, children } = props;
  const styles = useStyles();
  const shared = useSharedStyles();
  const place = placeOf(opening, changes[0]?.field.name) ?? placeOf({ ...opening, mark: was });
  return (
    <li className={styles.entry}>
      <div className={styles.head}>
        {place === null ? (
          <strong>{opening.mark}</strong>
        ) : (
          <PlaceButton place={place} of={opening.mark} />
        )}
        {was === "" ? null : <span>was {was}</span>}
        <span className={shared.small}>{opening.job}</span>
      </div>
      {words === "" ? null : <div>{words}</div>}
      {changes.map((change) => (
        <div key={change.field.name} className={shared.small}>
          {changeText(change, lengths)}
        </div>
      ))}
      {children}
    </li>
  );
}
