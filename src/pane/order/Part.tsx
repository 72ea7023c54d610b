/** A part of the order that opens and closes, with its heading and what it comes to. */
import { mergeClasses } from "@fluentui/react-components";
import type { ReactNode } from "react";
import { Disclosure } from "../parts/Disclosure";
import { useSharedStyles } from "../parts/parts.styles";
import { useOrderStyles } from "./order.styles";

export type PartProps = {
  readonly title: string;
  /** Beside the heading, such as `42 lines`. */
  readonly sum?: string;
  readonly startsOpen?: boolean;
  /** Made only while it is open. */
  readonly children: () => ReactNode;
};

export function Part({ title, sum = "", startsOpen = false, children }: PartProps) {
  const styles = useOrderStyles();
  const shared = useSharedStyles();
  return (
    <section className={shared.card} aria-label={title}>
      <Disclosure
        isHeading
        startsOpen={startsOpen}
        label={
          <span className={styles.row}>
            <span className={shared.subheading}>{title}</span>
            <span className={mergeClasses(shared.small, shared.number)}>{sum}</span>
          </span>
        }
      >
        {() => <div className={styles.part}>{children()}</div>}
      </Disclosure>
    </section>
  );
}
