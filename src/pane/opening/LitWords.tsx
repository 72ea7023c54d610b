/** Below the picture: what the lit place takes, or where the lit line goes. */
import { makeStyles, mergeClasses } from "@fluentui/react-components";
import type { Elevation, Place } from "../../core/elevation/elevation";
import { handWords } from "../../core/elevation/elevationWords";
import { useSharedStyles } from "../parts/parts.styles";
import { counted, countText } from "../parts/quantities";
import { tokens } from "../parts/tokens";
import type { KitLine, KitWords } from "./kitList";

const useStyles = makeStyles({
  // Room for the longest usual answer, so that the list does not jump.
  words: { minHeight: "64px", marginTop: tokens.spacingVerticalXS, overflowWrap: "anywhere" },
});

export type LitWordsProps = {
  readonly line: KitLine | undefined;
  readonly place: Place | undefined;
  readonly elevation: Elevation;
  readonly words: KitWords;
};

export function LitWords({ line, place, elevation, words }: LitWordsProps) {
  const styles = useStyles();
  const shared = useSharedStyles();
  return (
    <figcaption className={mergeClasses(shared.small, styles.words)}>
      {place !== undefined ? (
        <>
          <strong>{capital(place.name)}</strong> · bag {place.bag}
          <div>{words.contents(place)}</div>
        </>
      ) : line !== undefined ? (
        <>
          <strong>
            {line.item}: {countText(line.pieces)} pcs
          </strong>{" "}
          at {counted(line.places.size, "place")}
          <div>{words.places(line)}</div>
        </>
      ) : (
        <>
          To scale, closed, seen from where the crew stands. {handWords(elevation)}. Point at a part
          to see what it takes, or at a line to see where it goes.
        </>
      )}
    </figcaption>
  );
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
