/** An elevation in words, for whoever cannot see it. */
import type { ShowLength } from "../takeoff/describe";
import type { Elevation } from "./elevation";
import { partKinds, partKindWords } from "./partKinds";

export const elevationTitle = ({ mark, type }: Pick<Elevation, "mark" | "type">): string =>
  `Elevation of ${mark}: ${type}`;

/**
 * What is drawn: from where it is seen, each measure once, each kind of part with its pieces. A list
 * of sentences in one text.
 */
export function elevationWords(elevation: Elevation, show: ShowLength): string {
  const { measures } = elevation;
  const said = measures.map(({ name, length }) => `${name} ${show(length)}`);
  return [
    `${elevation.type} ${elevation.mark}, closed, seen from the side where the crew stands. ${handWords(elevation)}.`,
    `Sizes: ${[...new Set(said)].join(", ")}.`,
    `Parts: ${partsWords(elevation).join(", ")}.`,
  ].join(" ");
}

/** Which hand it is drawn for, and whether that was assumed. */
export const handWords = ({
  hand,
  isHandAssumed,
}: Pick<Elevation, "hand" | "isHandAssumed">): string =>
  isHandAssumed
    ? "The schedule names no hand: drawn as a right hand, which opens to the right or has its hinges there"
    : `Drawn as a ${hand} hand, which opens to the ${hand} or has its hinges there`;

/** `2 panels`, `1 jamb` and so on, in the order of drawing, by pieces and not by places. */
function partsWords({ places }: Elevation): readonly string[] {
  return partKinds.flatMap((kind) => {
    const ofKind = places.filter((place) => place.kind === kind);
    if (ofKind.length === 0) return [];
    if (kind === "other") return ofKind.map(({ bag }) => `the bag ${bag}`);
    const count = ofKind.reduce(
      (sum, { contents }) => sum + (kind === "trackStop" ? 1 : (contents[0]?.pieces ?? 0)),
      0,
    );
    return [`${count} ${count === 1 ? partKindWords[kind].one : partKindWords[kind].more}`];
  });
}
