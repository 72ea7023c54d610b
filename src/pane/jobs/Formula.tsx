/** A formula of the kit book, under what it says. */
import { makeStyles } from "@fluentui/react-components";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  code: {
    display: "block",
    padding: `${tokens.spacingVerticalXXS} ${tokens.spacingHorizontalSNudge}`,
    borderRadius: tokens.borderRadiusSmall,
    backgroundColor: tokens.colorNeutralBackground3,
    fontFamily: tokens.fontFamilyMonospace,
    fontSize: tokens.fontSizeBase200,
    overflowWrap: "anywhere",
    whiteSpace: "pre-wrap",
  },
});

export function Formula({ name, text }: { readonly name: string; readonly text: string }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  return (
    <div>
      <span className={shared.small}>{name}</span>
      <code className={styles.code}>{text}</code>
    </div>
  );
}
