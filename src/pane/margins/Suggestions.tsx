/** Minutes and spares that would have fitted, for a person to take one by one. */
import { Button, Checkbox, makeStyles, mergeClasses } from "@fluentui/react-components";
import { useState } from "react";
import { acceptSuggestions } from "../../app/pricing/acceptSuggestions";
import type { Inputs } from "../../app/reading/inputs";
import type { PlacedSuggestion } from "../../app/pricing/jobActuals";
import { useSharedStyles } from "../parts/parts.styles";
import { PlaceButton } from "../parts/PlaceButton";
import { counted, countText } from "../parts/quantities";
import { SmallButton } from "../parts/SmallButton";
import { tokens } from "../parts/tokens";
import { useMore } from "../parts/useMore";
import { useAddSheets } from "../sheets/useAddSheets";

const useStyles = makeStyles({
  suggestion: { padding: `${tokens.spacingVerticalS} ${tokens.spacingHorizontalM}` },
});

const firstSuggestions = 8;

export type SuggestionsProps = {
  readonly suggestions: readonly PlacedSuggestion[];
  readonly inputs: Inputs;
};

export function Suggestions({ suggestions, inputs }: SuggestionsProps) {
  const shared = useSharedStyles();
  const { isBusy, add } = useAddSheets();
  const [taken, setTaken] = useState<ReadonlySet<string>>(new Set());
  const more = useMore(suggestions, firstSuggestions);
  // What was taken over is suggested no more, and counts no longer.
  const accepted = suggestions.flatMap((one, index) =>
    one.kind === "minutes" && taken.has(keyOf(one)) ? [index + 1] : [],
  );
  if (suggestions.length === 0) {
    return <div className={shared.small}>Nothing: minutes and spares are close to what was.</div>;
  }
  const take = (suggestion: PlacedSuggestion, isTaken: boolean): void => {
    const others = [...taken].filter((key) => key !== keyOf(suggestion));
    setTaken(new Set(isTaken ? [...others, keyOf(suggestion)] : others));
  };
  return (
    <>
      <div className={shared.small}>
        Suggestions only: take those that you trust. Minutes go into the next edition of the kit
        book, beside the sheets that stand; delete its sheets, and the old ones count again. Spares
        are typed on the items sheet.
      </div>
      <ul className={mergeClasses(shared.list, shared.stack)} aria-label="Suggestions">
        {more.shown.map((suggestion) => (
          <Suggested
            key={keyOf(suggestion)}
            suggestion={suggestion}
            isTaken={taken.has(keyOf(suggestion))}
            onTake={(isTaken) => take(suggestion, isTaken)}
          />
        ))}
      </ul>
      {more.left === 0 ? null : (
        <SmallButton onClick={more.showMore}>Show more ({countText(more.left)})</SmallButton>
      )}
      <Button
        disabledFocusable={isBusy || accepted.length === 0}
        onClick={() => {
          const drawings = acceptSuggestions(suggestions, accepted, inputs);
          if (drawings.ok) add(drawings.value);
        }}
      >
        Write the kit book with {counted(accepted.length, "new time")}
      </Button>
    </>
  );
}

const keyOf = ({ kind, row }: PlacedSuggestion): string => `${kind} ${row}`;

type SuggestedProps = {
  readonly suggestion: PlacedSuggestion;
  readonly isTaken: boolean;
  readonly onTake: (isTaken: boolean) => void;
};

function Suggested({ suggestion, isTaken, onTake }: SuggestedProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  const { kind, row, item, from, to, because, place } = suggestion;
  const before = from === "" ? "none" : from;
  return (
    <li className={mergeClasses(shared.card, styles.suggestion)}>
      {kind === "minutes" ? (
        <Checkbox
          label={`${item} (${row}): ${to} minutes instead of ${before}`}
          checked={isTaken}
          onChange={(_, { checked }) => onTake(checked === true)}
        />
      ) : (
        <div>
          {item}: {to} % of spares instead of {before}
        </div>
      )}
      <div className={shared.small}>{because}</div>
      {place === null ? null : <PlaceButton place={place} of={place.sheet} />}
    </li>
  );
}
