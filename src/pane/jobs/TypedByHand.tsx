/** What persons typed on the hardware sheet of a job: corrections, rows added, and what no line takes. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import { lengthWriter } from "../../app/settings";
import { lineWords } from "../../core/corrections/correctJob";
import { correctionWords } from "../../core/corrections/correctedLine";
import type { Correction } from "../../core/corrections/correction";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { Disclosure } from "../parts/Disclosure";
import { PlaceButton } from "../parts/PlaceButton";
import { useSharedStyles } from "../parts/parts.styles";
import { countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { useMore } from "../parts/useMore";
import { usePane } from "../state/paneContext";
import type { CorrectionPlaceOf } from "./correctionPlaces";

const useStyles = makeStyles({
  head: {
    display: "flex",
    justifyContent: "space-between",
    gap: tokens.spacingHorizontalS,
    paddingRight: tokens.spacingHorizontalXS,
  },
  entry: {
    display: "flex",
    flexWrap: "wrap",
    justifyContent: "space-between",
    alignItems: "flex-start",
    gap: tokens.spacingHorizontalS,
    padding: `${tokens.spacingVerticalXS} ${tokens.spacingHorizontalM}`,
    borderTop: `1px solid ${tokens.colorNeutralStroke3}`,
  },
  words: { flexGrow: 1, flexBasis: "140px", minWidth: 0, overflowWrap: "anywhere" },
  more: { padding: tokens.spacingHorizontalM },
});

export type TypedByHandProps = {
  readonly job: JobEstimate;
  readonly placeOf: CorrectionPlaceOf;
};

/** Nothing where nothing was typed. */
export function TypedByHand({ job, placeOf }: TypedByHandProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const entries = useEntries(job);
  const unused = entries.filter(({ isUsed }) => !isUsed).length;
  const { shown, left, showMore } = useMore(entries, 20, 100);
  if (entries.length === 0) return null;
  return (
    <div className={shared.card}>
      <Disclosure
        isHeading
        startsOpen={unused > 0}
        label={
          <span className={mergeClasses(shared.subheading, styles.head)}>
            <span>
              Corrected by hand
              {unused === 0 ? "" : `, ${countText(unused)} of no effect`}
            </span>
            <span className={shared.number}>{countText(entries.length)}</span>
          </span>
        }
      >
        {() => (
          <>
            <ul className={shared.list}>
              {shown.map(({ typed, line, words, why }, place) => {
                const cell = placeOf(typed.name);
                return (
                  <li key={place} className={styles.entry}>
                    <div className={styles.words}>
                      <div>{line}</div>
                      <div className={shared.small}>{words}</div>
                      {why === "" ? null : <div className={shared.strong}>{why}</div>}
                    </div>
                    {cell === null ? null : <PlaceButton place={cell} />}
                  </li>
                );
              })}
            </ul>
            {left === 0 ? null : (
              <div className={styles.more}>
                <SmallButton onClick={showMore}>Show more ({countText(left)})</SmallButton>
              </div>
            )}
          </>
        )}
      </Disclosure>
    </div>
  );
}

type Entry = {
  readonly typed: Correction;
  readonly line: string;
  readonly words: string;
  readonly isUsed: boolean;
  /** Why it is of no effect; the empty text where it is of use. */
  readonly why: string;
};

/** Those of no effect first, so that a person sees them. */
function useEntries({ corrections }: JobEstimate): readonly Entry[] {
  const show = lengthWriter(usePane().state.settings);
  const { lines, added, strays } = corrections;
  const gone = strays.map(({ name, typed }): Entry => {
    const why =
      name.copy === 1
        ? "This job does not count the line any more. Kept, without effect."
        : "Another correction of the line counts. Kept, without effect.";
    return {
      typed: { name, typed, counted: null },
      line: lineWords(name, show),
      words: typedWords(typed),
      isUsed: false,
      why,
    };
  });
  const notAdded = added.flatMap(({ row, line }): readonly Entry[] =>
    line !== null
      ? []
      : [
          {
            typed: row,
            line: row.typed.item === "" ? "A row without an item" : row.typed.item,
            words: typedWords(row.typed),
            isUsed: false,
            why: "Added by hand, and not counted yet.",
          },
        ],
  );
  const used = lines.flatMap((line): readonly Entry[] => {
    if (line.typed === null) return [];
    const isUsed = line.change !== null || line.typed.typed.correction === "";
    return [
      {
        typed: line.typed,
        line: lineWords(line, show),
        words: correctionWords(line),
        isUsed,
        why: isUsed ? "" : "It cannot be used as it is typed: see To mend.",
      },
    ];
  });
  const all = [...gone, ...notAdded, ...used];
  return [...all.filter(({ isUsed }) => !isUsed), ...all.filter(({ isUsed }) => isUsed)];
}

/** What was typed in a row that no line takes. */
const typedWords = ({ quantity, correction, spares, reason, by }: Correction["typed"]): string =>
  [
    correction,
    quantity === "" ? "" : `quantity ${quantity}`,
    spares === "" ? "" : `spares ${spares}`,
    by === "" ? "" : `by ${by}`,
    reason,
  ]
    .filter((part) => part !== "")
    .join(", ");
