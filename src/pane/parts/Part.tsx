/** A part of a view on a card of its own, under a heading that opens and closes it. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { Disclosure } from "./Disclosure";
import { useSharedStyles } from "./parts.styles";
import { tokens } from "./tokens";

const useStyles = makeStyles({
  label: {
    display: "grid",
    gridTemplateColumns: "minmax(0, 1fr) auto",
    alignItems: "baseline",
    columnGap: tokens.spacingHorizontalM,
    overflowWrap: "anywhere",
  },
  content: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalS,
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalM} ${tokens.spacingVerticalM}`,
  },
});

export type PartProps = {
  readonly title: string;
  /** Beside the heading, such as `42 lines`. */
  readonly sum?: string;
  readonly startsOpen?: boolean;
  /** Made only while it is open. */
  readonly children: () => ReactNode;
};

export function Part({ title, sum = "", startsOpen = false, children }: PartProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  return (
    <section className={shared.card} aria-label={title}>
      <Disclosure
        isHeading
        startsOpen={startsOpen}
        label={
          <span className={styles.label}>
            <span className={shared.subheading}>{title}</span>
            <span className={mergeClasses(shared.small, shared.number)}>{sum}</span>
          </span>
        }
      >
        {() => <div className={styles.content}>{children()}</div>}
      </Disclosure>
    </section>
  );
}
