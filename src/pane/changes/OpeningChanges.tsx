/** Openings that came, went and changed, and marks that look renamed, which a person confirms or not. */
import { makeStyles } from "@fluentui/react-components";
import type { LengthStyle } from "../../core/lengths/writeLength";
import type { ChangedOpening, OpeningDifferences } from "../../core/revisions/compareOpenings";
import type { IssuedOpening } from "../../core/revisions/issue";
import type { MarkAnswer, MarkPair } from "../../core/revisions/markPairs";
import { openingText } from "../../sheets/revisions/revisionWords";
import { useSharedStyles } from "../parts/parts.styles";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { OpeningEntry } from "./OpeningEntry";
import { OpeningGroup } from "./OpeningGroup";
import type { PlaceOf } from "./openingPlaces";

const useStyles = makeStyles({
  answers: { display: "flex", flexWrap: "wrap", gap: tokens.spacingHorizontalS },
  refused: {
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalM}`,
    overflowWrap: "anywhere",
    ":not(:first-child)": { borderTop: `1px solid ${tokens.colorNeutralStroke3}` },
  },
});

export type OpeningChangesProps = {
  readonly openings: OpeningDifferences;
  readonly lengths: LengthStyle;
  readonly placeOf: PlaceOf;
  readonly onSay: (answer: MarkAnswer) => void;
  readonly onTakeBack: (pair: MarkPair) => void;
};

export function OpeningChanges(props: OpeningChangesProps) {
  const { openings, lengths, placeOf, onSay, onTakeBack } = props;
  const styles = useStyles();
  const shared = useSharedStyles();
  const whole = (opening: IssuedOpening) => (
    <OpeningEntry
      key={keyOf(opening)}
      opening={opening}
      words={openingText(opening, lengths)}
      lengths={lengths}
      placeOf={placeOf}
    />
  );
  return (
    <>
      <OpeningGroup
        title="Perhaps another mark"
        all={openings.guesses}
        entry={(each) => (
          <OpeningEntry
            key={keyOf(each.to)}
            opening={each.to}
            was={each.from.mark}
            changes={each.changes}
            lengths={lengths}
            placeOf={placeOf}
          >
            <div>
              {Math.round(each.likeness * 100)} % alike. Is {each.to.mark} the opening that was{" "}
              {each.from.mark}?
            </div>
            <div className={styles.answers}>
              <SmallButton onClick={() => onSay({ ...pairOf(each), isSame: true })}>
                Yes<span className={shared.hidden}>{` ${each.to.mark} was ${each.from.mark}`}</span>
              </SmallButton>
              <SmallButton onClick={() => onSay({ ...pairOf(each), isSame: false })}>
                No
                <span
                  className={shared.hidden}
                >{` ${each.to.mark} was not ${each.from.mark}`}</span>
              </SmallButton>
            </div>
          </OpeningEntry>
        )}
      />
      <OpeningGroup title="Added" all={openings.added} entry={whole} />
      <OpeningGroup title="Removed" all={openings.removed} entry={whole} />
      <OpeningGroup
        title="Changed"
        all={openings.changed}
        entry={({ to, changes }) => (
          <OpeningEntry
            key={keyOf(to)}
            opening={to}
            changes={changes}
            lengths={lengths}
            placeOf={placeOf}
          />
        )}
      />
      <OpeningGroup
        title="Under another mark"
        all={openings.renamed}
        entry={(each) => (
          <OpeningEntry
            key={keyOf(each.to)}
            opening={each.to}
            was={each.from.mark}
            changes={each.changes}
            words={each.changes.length === 0 ? "Nothing else changed." : ""}
            lengths={lengths}
            placeOf={placeOf}
          >
            <TakeBack pair={pairOf(each)} onTakeBack={onTakeBack} />
          </OpeningEntry>
        )}
      />
      <OpeningGroup
        title="Said to be two openings"
        all={openings.refused}
        entry={(pair) => (
          <li key={`${pair.job}\n${pair.from}\n${pair.to}`} className={styles.refused}>
            {pair.from} and {pair.to} <span className={shared.small}>{pair.job}</span>
            <TakeBack pair={pair} onTakeBack={onTakeBack} />
          </li>
        )}
      />
    </>
  );
}

const keyOf = ({ job, position }: IssuedOpening): string => `${job}\n${position}`;

const pairOf = ({ from, to }: ChangedOpening): MarkPair => ({
  job: to.job,
  from: from.mark,
  to: to.mark,
});

type TakeBackProps = Pick<OpeningChangesProps, "onTakeBack"> & { readonly pair: MarkPair };

function TakeBack({ pair, onTakeBack }: TakeBackProps) {
  const shared = useSharedStyles();
  return (
    <div>
      <SmallButton look="bare" onClick={() => onTakeBack(pair)}>
        Take back
        <span className={shared.hidden}>{` what was said of ${pair.from} and ${pair.to}`}</span>
      </SmallButton>
    </div>
  );
}
