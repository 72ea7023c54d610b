/** What differs between two counts: in one sentence, then openings, then hardware and money. */
import { makeStyles } from "@fluentui/react-components";
import { useMemo, useRef } from "react";
import { currencyOfRevision, type Revision } from "../../app/revisions/revisions";
import { lengthStyleOf } from "../../app/settings";
import type { WorkbookTakeOff } from "../../app/reading/workbookTakeOff";
import { doubtTexts, summaryText } from "../../sheets/revisions/revisionWords";
import { Notice } from "../parts/Notice";
import { useSharedStyles } from "../parts/parts.styles";
import { tokens } from "../parts/tokens";
import { usePane } from "../state/paneContext";
import { HardwareChanges } from "./HardwareChanges";
import { OpeningChanges, type OpeningChangesProps } from "./OpeningChanges";
import { openingPlaces } from "./openingPlaces";
import { OrderedOtherwise } from "./OrderedOtherwise";

const useStyles = makeStyles({
  all: { display: "flex", flexDirection: "column", gap: tokens.spacingVerticalM },
  sentence: { margin: 0, overflowWrap: "anywhere" },
});

export type DifferencesProps = Pick<OpeningChangesProps, "onSay" | "onTakeBack"> & {
  readonly revision: Revision;
  readonly takeOff: WorkbookTakeOff;
};

export function Differences({ revision, takeOff, onSay, onTakeBack }: DifferencesProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { settings } = usePane().state;
  const lengths = lengthStyleOf(settings);
  const currency = currencyOfRevision(revision, settings);
  const placeOf = useMemo(() => openingPlaces(takeOff), [takeOff]);
  const { from, to, comparison, ordered } = revision;
  const heading = useRef<HTMLHeadingElement | null>(null);
  // The button that was pressed goes away, and the focus with it.
  const keepFocus = (): void => heading.current?.focus({ preventScroll: true });
  return (
    <section className={styles.all} aria-label="Differences">
      <h2 className={shared.heading} tabIndex={-1} ref={heading}>
        From {from} to {to}
      </h2>
      <p role="status" className={styles.sentence}>
        <strong>{sentence(summaryText(comparison, currency))}</strong>
      </p>
      {doubtTexts(revision).map((doubt) => (
        <Notice key={doubt} level="warn" quiet>
          {doubt}
        </Notice>
      ))}
      <OpeningChanges
        openings={comparison.openings}
        lengths={lengths}
        placeOf={placeOf}
        onSay={(answer) => {
          keepFocus();
          onSay(answer);
        }}
        onTakeBack={(pair) => {
          keepFocus();
          onTakeBack(pair);
        }}
      />
      <HardwareChanges hardware={comparison.hardware} lengths={lengths} currency={currency} />
      <OrderedOtherwise ordered={ordered} lengths={lengths} />
    </section>
  );
}

const sentence = (words: string): string => `${words.charAt(0).toUpperCase()}${words.slice(1)}.`;
