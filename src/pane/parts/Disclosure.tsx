/** A heading that opens and closes what is below it. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { ChevronRightRegular } from "@fluentui/react-icons/svg/chevron-right";
import { useId, useState, type ReactNode } from "react";
import { useSharedStyles } from "./parts.styles";
import { tokens } from "./tokens";

const useStyles = makeStyles({
  button: {
    display: "flex",
    alignItems: "center",
    gap: tokens.spacingHorizontalS,
    minHeight: "32px",
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalS}`,
    borderRadius: tokens.borderRadiusMedium,
  },
  chevron: {
    flexShrink: 0,
    fontSize: "12px",
    lineHeight: 0,
    transitionProperty: "transform",
    transitionDuration: tokens.durationFast,
    "@media (prefers-reduced-motion: reduce)": { transitionDuration: "0.01ms" },
  },
  open: { transform: "rotate(90deg)" },
  around: { margin: 0, fontSize: "inherit", fontWeight: "inherit", lineHeight: "inherit" },
  label: { flexGrow: 1, minWidth: 0 },
});

export type DisclosureProps = {
  /** What the button shows and is called. */
  readonly label: ReactNode;
  readonly startsOpen?: boolean;
  /** Whether the label heads a part of a view. */
  readonly isHeading?: boolean;
  /** Made only while it is open. */
  readonly children: () => ReactNode;
};

export function Disclosure(props: DisclosureProps) {
  const { label, startsOpen = false, isHeading = false, children } = props;
  const styles = useStyles();
  const shared = useSharedStyles();
  const [isOpen, setOpen] = useState(startsOpen);
  const id = useId();
  const Around = isHeading ? "h2" : "div";
  return (
    <div>
      <Around className={styles.around}>
        <button
          type="button"
          aria-expanded={isOpen}
          aria-controls={isOpen ? id : undefined}
          className={mergeClasses(shared.plainButton, styles.button)}
          onClick={() => setOpen(!isOpen)}
        >
          <span aria-hidden className={mergeClasses(styles.chevron, isOpen && styles.open)}>
            <ChevronRightRegular />
          </span>
          <span className={styles.label}>{label}</span>
        </button>
      </Around>
      {isOpen ? <div id={id}>{children()}</div> : null}
    </div>
  );
}
