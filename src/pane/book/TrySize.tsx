/** Try a size: which rows of the kit book do what for an opening, and what changes for a second one. */
import { useMemo } from "react";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import { compareTrials } from "../../core/bookcheck/compareTrials";
import { tryOpening } from "../../core/bookcheck/trial";
import type { Opening } from "../../core/openings/opening";
import { useSharedStyles } from "../parts/parts.styles";
import { counted } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { OpeningForm } from "./OpeningForm";
import { TakeOpening } from "./TakeOpening";
import { TrialChanges } from "./TrialChanges";
import { TrialRows } from "./TrialRows";
import type { TriedOpening } from "./useTriedOpening";

export type TrySizeProps = {
  readonly hand: KitBookAtHand;
  readonly tried: TriedOpening;
  /** Those of the schedule. */
  readonly openings: readonly Opening[];
};

export function TrySize({ hand, tried, openings }: TrySizeProps) {
  const shared = useSharedStyles();
  const { type, fields, one, other } = tried;
  const { book, show, lengths } = hand;
  const first = one.read.opening;
  const second = other?.read.opening ?? null;
  const trial = useMemo(
    () => (first === null ? null : tryOpening(book, type, first, show)),
    [book, type, first, show],
  );
  const otherTrial = useMemo(
    () => (second === null ? null : tryOpening(book, type, second, show)),
    [book, type, second, show],
  );
  const changes = useMemo(
    () => (trial === null || otherTrial === null ? [] : compareTrials(trial, otherTrial, lengths)),
    [trial, otherTrial, lengths],
  );
  return (
    <>
      {openings.length === 0 ? null : <TakeOpening openings={openings} onTake={tried.take} />}
      <OpeningForm
        name="Opening to try"
        fields={fields}
        texts={one.texts}
        onTexts={one.setTexts}
        findings={one.read.findings}
      />
      {other === null ? (
        <div>
          <SmallButton onClick={tried.addOther}>Put a second size beside it</SmallButton>
        </div>
      ) : (
        <>
          <h3 className={shared.subheading}>A second size</h3>
          <OpeningForm
            name="Second opening"
            fields={fields}
            texts={other.texts}
            onTexts={other.setTexts}
            findings={other.read.findings}
          />
          <div>
            <SmallButton onClick={tried.removeOther}>Take the second size away</SmallButton>
          </div>
          {trial === null || otherTrial === null ? null : (
            <>
              <div role="status">
                <h3 className={shared.subheading}>
                  {changes.length === 0
                    ? "Every row does the same for both"
                    : `${counted(changes.length, "row does", "rows do")} something else`}
                </h3>
              </div>
              <TrialChanges changes={changes} />
            </>
          )}
        </>
      )}
      {trial === null ? null : <TrialRows trial={trial} lengths={lengths} />}
    </>
  );
}
