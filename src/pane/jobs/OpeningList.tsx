/** The openings of a job, each with the way to its picture and its kit. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { useMemo } from "react";
import { lengthWriter } from "../../app/settings";
import { inches } from "../../core/base/units";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { Opening } from "../../core/openings/opening";
import { Disclosure } from "../parts/Disclosure";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { useFocusOnAppear } from "../parts/useFocusOnAppear";
import { useMore } from "../parts/useMore";
import { usePane } from "../state/paneContext";
import { openingKeys } from "./openingKeys";

const useStyles = makeStyles({
  head: { display: "flex", justifyContent: "space-between", gap: tokens.spacingHorizontalM },
  opening: {
    display: "grid",
    gridTemplateColumns: "1fr auto",
    columnGap: tokens.spacingHorizontalM,
    padding: `${tokens.spacingVerticalSNudge} ${tokens.spacingHorizontalM}`,
    overflowWrap: "anywhere",
  },
  more: { padding: tokens.spacingHorizontalS },
});

const firstOpenings = 20;
const moreOpenings = 100;

export type OpeningListProps = {
  readonly job: JobEstimate;
  /** The key of the opening that was left last, or that of something else. */
  readonly left: string | null;
  readonly onOpen: (opening: Opening) => void;
};

/** Closed until it is opened, or come back to. Nothing where no opening is counted. */
export function OpeningList({ job, left, onOpen }: OpeningListProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { openings, stopped } = job.takeOff;
  const keys = useMemo(() => openingKeys(openings), [openings]);
  const shown = useMemo(() => {
    const without = new Set(stopped);
    return [...keys].filter(([, opening]) => !without.has(opening));
  }, [keys, stopped]);
  if (shown.length === 0) return null;
  return (
    <div className={shared.card}>
      <Disclosure
        isHeading
        startsOpen={left !== null && keys.has(left)}
        label={
          <span className={mergeClasses(shared.subheading, styles.head)}>
            <span>Pictures by opening</span>
            <span className={shared.number}>{countText(shown.length)}</span>
          </span>
        }
      >
        {() => <Openings openings={shown} left={left} onOpen={onOpen} />}
      </Disclosure>
    </div>
  );
}

type OpeningsProps = Omit<OpeningListProps, "job"> & {
  readonly openings: readonly (readonly [key: string, opening: Opening])[];
};

function Openings({ openings, left, onOpen }: OpeningsProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const at = openings.findIndex(([key]) => key === left);
  const more = useMore(openings, Math.max(firstOpenings, at + 1), moreOpenings);
  return (
    <>
      <ul className={shared.list}>
        {more.shown.map(([key, opening]) => (
          <li key={key}>
            <OpeningRow opening={opening} takesFocus={key === left} onOpen={onOpen} />
          </li>
        ))}
      </ul>
      {more.left === 0 ? null : (
        <div className={styles.more}>
          <SmallButton onClick={more.showMore}>Show more ({countText(more.left)})</SmallButton>
        </div>
      )}
    </>
  );
}

type OpeningRowProps = {
  readonly opening: Opening;
  readonly takesFocus: boolean;
  readonly onOpen: (opening: Opening) => void;
};

function OpeningRow({ opening, takesFocus, onOpen }: OpeningRowProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const show = lengthWriter(usePane().state.settings);
  const { mark, type, quantity, fields } = opening;
  const sides = (["width", "height"] as const).flatMap((name) => {
    const length = fields[name];
    return typeof length === "number" ? [show(inches(length))] : [];
  });
  return (
    <button
      type="button"
      ref={useFocusOnAppear(takesFocus)}
      className={mergeClasses(shared.plainButton, styles.opening)}
      onClick={() => onOpen(opening)}
    >
      <span className={shared.strong}>{mark}</span>
      <span className={shared.number}>{sides.join(" × ")}</span>
      <span className={shared.small}>{type}</span>
      <span className={mergeClasses(shared.small, shared.number)}>
        {quantity === 1 ? "" : `${countText(quantity)} alike`}
      </span>
      <span className={shared.hidden}>: show its picture</span>
    </button>
  );
}
