import { makeStyles } from "@fluentui/react-components";
import { ArrowLeftRegular } from "@fluentui/react-icons/svg/arrow-left";
import { tokens } from "../parts/tokens";
import { SmallButton } from "../parts/SmallButton";

const useStyles = makeStyles({
  back: {
    minWidth: 0,
    marginLeft: "-8px",
    marginBottom: tokens.spacingVerticalXS,
  },
});

/** Goes out of what is open; `to` is where. */
export function BackButton({ to, onBack }: { readonly to: string; readonly onBack: () => void }) {
  const styles = useStyles();
  return (
    <SmallButton look="bare" className={styles.back} icon={<ArrowLeftRegular />} onClick={onBack}>
      {to}
    </SmallButton>
  );
}
