/** Numbers that went into a formula; one that was worked out shows how, down to the schedule. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { NumberPutIn, SizeReason } from "../../core/takeoff/explain";
import { sourceWords } from "../parts/quantities";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { Disclosure } from "../parts/Disclosure";
import { Formula } from "./Formula";
import { tokens } from "../parts/tokens";

const useStyles = makeStyles({
  number: {
    display: "flex",
    justifyContent: "space-between",
    gap: tokens.spacingHorizontalM,
  },
  plain: {
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalS} ${tokens.spacingVerticalXS} 28px`,
  },
  from: {
    display: "flex",
    flexDirection: "column",
    gap: tokens.spacingVerticalXS,
    marginLeft: "13px",
    paddingLeft: tokens.spacingHorizontalS,
    borderLeft: `1px solid ${tokens.colorNeutralStroke2}`,
  },
  row: { display: "flex", alignItems: "center", flexWrap: "wrap", gap: tokens.spacingHorizontalS },
});

export function NumbersPutIn({ numbers }: { readonly numbers: readonly NumberPutIn[] }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  return (
    <ul className={shared.list}>
      {numbers.map((number) => {
        const { from } = number;
        return (
          <li key={number.name}>
            {from === null ? (
              <div className={mergeClasses(styles.number, styles.plain)}>
                <NameAndValue {...number} />
              </div>
            ) : (
              <Disclosure
                label={
                  <span className={styles.number}>
                    <NameAndValue {...number} />
                  </span>
                }
              >
                {() => <SizeFrom size={from} />}
              </Disclosure>
            )}
          </li>
        );
      })}
    </ul>
  );
}

function NameAndValue({ label, text }: NumberPutIn) {
  const shared = useSharedStyles();
  return (
    <>
      <span>{label}</span>
      <span className={mergeClasses(shared.number, shared.strong)}>{text}</span>
    </>
  );
}

function SizeFrom({ size }: { readonly size: SizeReason }) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { source, formula, numbers, note, basis } = size;
  const words = [note, basis].filter((text) => text !== "").join(" · ");
  return (
    <div className={styles.from}>
      <div className={mergeClasses(shared.small, styles.row)}>
        {sourceWords(source)}
        {source.place === null ? null : <PlaceButton place={source.place} />}
      </div>
      <Formula name="Worked out by" text={formula} />
      {words === "" ? null : <div className={shared.small}>{words}</div>}
      {numbers.length === 0 ? null : <NumbersPutIn numbers={numbers} />}
    </div>
  );
}
