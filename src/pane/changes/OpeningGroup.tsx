/** Openings that differ in one way, a page at a time. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { useMore } from "../parts/useMore";

const useStyles = makeStyles({
  group: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalXS },
  more: { alignSelf: "flex-start" },
});

const firstShown = 20;
const moreShown = 100;

export type OpeningGroupProps<Each> = {
  readonly title: string;
  /** Nothing is shown for none. */
  readonly all: readonly Each[];
  readonly entry: (each: Each) => ReactNode;
  readonly children?: ReactNode;
};

export function OpeningGroup<Each>({ title, all, entry, children }: OpeningGroupProps<Each>) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { shown, left, showMore } = useMore(all, firstShown, moreShown);
  if (all.length === 0) return null;
  return (
    <section aria-label={title} className={styles.group}>
      <h3 className={shared.subheading}>
        {title}: {countText(all.length)}
      </h3>
      {children}
      <ul className={mergeClasses(shared.list, shared.card)}>{shown.map(entry)}</ul>
      {left === 0 ? null : (
        <SmallButton className={styles.more} onClick={showMore}>
          Show more ({countText(left)})
        </SmallButton>
      )}
    </section>
  );
}
