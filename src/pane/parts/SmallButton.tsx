/** The pane's small buttons. What is loaded at first has no room for Fluent's. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { ReactNode, Ref } from "react";
import { useSharedStyles } from "./parts.styles";
import { tokens } from "./tokens";

const useStyles = makeStyles({
  button: {
    display: "inline-flex",
    alignItems: "center",
    justifyContent: "center",
    gap: tokens.spacingHorizontalXS,
    width: "auto",
    minWidth: "24px",
    minHeight: "24px",
    padding: `2px ${tokens.spacingHorizontalS}`,
    borderRadius: tokens.borderRadiusMedium,
    fontSize: tokens.fontSizeBase200,
    lineHeight: tokens.lineHeightBase200,
  },
  framed: {
    border: `1px solid ${tokens.colorNeutralStroke1}`,
    backgroundColor: tokens.colorNeutralBackground1,
    color: tokens.colorNeutralForeground1,
    ":hover": { backgroundColor: tokens.colorNeutralBackground1Hover },
    ":active": { backgroundColor: tokens.colorNeutralBackground1Pressed },
  },
  bare: { border: "1px solid transparent" },
  icon: { fontSize: "16px", lineHeight: 0 },
});

export type SmallButtonProps = {
  readonly onClick: () => void;
  /** `bare` has no frame until it is pointed at. */
  readonly look?: "framed" | "bare";
  readonly icon?: ReactNode;
  /** What it is called where an icon is all that it shows. */
  readonly name?: string;
  readonly className?: string;
  readonly ref?: Ref<HTMLButtonElement>;
  readonly children?: ReactNode;
};

export function SmallButton(props: SmallButtonProps) {
  const { onClick, look = "framed", icon, name, className, ref, children } = props;
  const styles = useStyles();
  const shared = useSharedStyles();
  return (
    <button
      ref={ref}
      type="button"
      aria-label={name}
      className={mergeClasses(shared.plainButton, styles.button, styles[look], className)}
      onClick={onClick}
    >
      {icon === undefined ? null : (
        <span aria-hidden className={styles.icon}>
          {icon}
        </span>
      )}
      {children}
    </button>
  );
}
