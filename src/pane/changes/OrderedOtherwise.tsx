/** What is ordered in another number than the newer count needs. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { writeSize, type LengthStyle } from "../../core/lengths/writeLength";
import type { OrderedLine } from "../../core/revisions/ordered";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { useMore } from "../parts/useMore";

const useStyles = makeStyles({
  part: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalXS },
  line: {
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalM}`,
    overflowWrap: "anywhere",
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  },
  more: { alignSelf: "flex-start" },
});

export type OrderedOtherwiseProps = {
  readonly ordered: readonly OrderedLine[];
  readonly lengths: LengthStyle;
};

/** Nothing where all that is ordered is what is needed. */
export function OrderedOtherwise({ ordered, lengths }: OrderedOtherwiseProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { shown, left, showMore } = useMore(ordered, 20, 100);
  if (ordered.length === 0) return null;
  return (
    <section aria-label="Ordered already" className={styles.part}>
      <h3 className={shared.subheading}>Ordered already</h3>
      <ul className={mergeClasses(shared.list, shared.card)}>
        {shown.map((line) => (
          <li key={[line.job, line.item, ...line.size].join("\n")} className={styles.line}>
            <div>
              {line.item} {writeSize(line.size, lengths)}{" "}
              <span className={shared.small}>{line.job}</span>
            </div>
            <div className={shared.small}>{orderedWords(line)}</div>
          </li>
        ))}
      </ul>
      {left === 0 ? null : (
        <SmallButton className={styles.more} onClick={showMore}>
          Show more ({countText(left)})
        </SmallButton>
      )}
    </section>
  );
}

function orderedWords({ ordered, come, needed, stillToOrder, tooMany }: OrderedLine): string {
  const rest =
    tooMany > 0 ? `${countText(tooMany)} too many` : `${countText(stillToOrder)} still to order`;
  const here = come === 0 ? "" : `, ${countText(come)} of them come`;
  return `${countText(ordered)} ordered${here}; ${countText(needed)} needed: ${rest}.`;
}
