/** Which kinds of sheets are written. */
import { Checkbox, makeStyles, mergeClasses } from "@fluentui/react-components";
import type { PackingKind } from "../../app/writing/packingLists";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";

export type SheetKind = "hardware" | PackingKind;

const useStyles = makeStyles({
  group: { minWidth: 0, margin: 0, padding: 0, border: "none" },
  legend: { padding: 0 },
  about: { display: "block", color: tokens.colorNeutralForeground2 },
});

const rows: readonly { readonly kind: SheetKind; readonly name: string; readonly about: string }[] =
  [
    { kind: "hardware", name: "Hardware", about: "with the reasons and the findings" },
    { kind: "packing", name: "Packing lists", about: "a page an opening, with its picture" },
    { kind: "labels", name: "Bag labels", about: "on paper of your own" },
    { kind: "loading", name: "Loading lists", about: "what goes on the truck for a job" },
  ];

export type KindChoiceProps = {
  readonly kinds: ReadonlySet<SheetKind>;
  readonly onKinds: (kinds: ReadonlySet<SheetKind>) => void;
};

export function KindChoice({ kinds, onKinds }: KindChoiceProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const toggle = (kind: SheetKind, isIn: boolean): void =>
    onKinds(new Set(isIn ? [...kinds, kind] : [...kinds].filter((each) => each !== kind)));
  return (
    <fieldset className={styles.group}>
      <legend className={mergeClasses(shared.subheading, styles.legend)}>Which sheets</legend>
      {rows.map(({ kind, name, about }) => (
        <div key={kind}>
          <Checkbox
            label={
              <>
                {name}
                <span className={mergeClasses(shared.small, styles.about)}>{about}</span>
              </>
            }
            checked={kinds.has(kind)}
            onChange={(_, { checked }) => toggle(kind, checked === true)}
          />
        </div>
      ))}
    </fieldset>
  );
}
