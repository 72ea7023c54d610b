import { makeStyles } from "@fluentui/react-components";
import { ArrowLeftRegular } from "@fluentui/react-icons/svg/arrow-left";
import { useEffect, useRef } from "react";
import { tokens } from "../parts/tokens";
import { SmallButton } from "../parts/SmallButton";

const useStyles = makeStyles({
  back: {
    minWidth: 0,
    marginLeft: "-8px",
    marginBottom: tokens.spacingVerticalXS,
  },
});

/** Goes out of what is open, as Escape does anywhere in its view; `to` is where. */
export function BackButton({ to, onBack }: { readonly to: string; readonly onBack: () => void }) {
  const styles = useStyles();
  const ref = useRef<HTMLButtonElement>(null);
  useEffect(() => {
    const view = ref.current?.closest("[role=tabpanel]");
    const onKeyDown = (event: KeyboardEvent): void => {
      const { key, target, defaultPrevented } = event;
      const isMeant = key === "Escape" && !defaultPrevented && !isFilledIn(target);
      if (isMeant && target instanceof Node && view?.contains(target) === true) onBack();
    };
    document.addEventListener("keydown", onKeyDown);
    return () => document.removeEventListener("keydown", onKeyDown);
  }, [onBack]);
  return (
    <SmallButton
      ref={ref}
      look="bare"
      className={styles.back}
      icon={<ArrowLeftRegular />}
      onClick={onBack}
    >
      {to}
    </SmallButton>
  );
}

/** There Escape is the field's own: it takes back what is typed. */
const isFilledIn = (target: EventTarget | null): boolean =>
  target instanceof HTMLInputElement && target.value !== "";
