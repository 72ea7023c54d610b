/** An opening's bags as the lines of a list, each with the places of the picture that it lights. */
import { packOpening } from "../../core/bags/bags";
import type { OpeningCounts } from "../../core/bags/openingCounts";
import type { Inches, Pieces } from "../../core/base/units";
import type { Elevation, PlacedPieces, Place } from "../../core/elevation/elevation";
import { placesOf } from "../../core/elevation/placesOf";
import { pieceKey } from "../../core/takeoff/partColumn";
import type { SizeText } from "../../core/takeoff/sizeTexts";
import { counted, countText } from "../parts/quantities";

export type KitLine = {
  /** Unique in the list. */
  readonly key: string;
  readonly item: string;
  readonly size: readonly Inches[];
  readonly pieces: Pieces;
  /** Where its pieces go: the places' ids with the pieces at each. They add up to `pieces`. */
  readonly places: ReadonlyMap<string, number>;
};

export type KitBag = { readonly words: string; readonly lines: readonly KitLine[] };

/** The bags in the opening's order of work. */
export const kitBags = (counts: OpeningCounts, elevation: Elevation): readonly KitBag[] =>
  packOpening(counts).bags.map(({ name, number, of, contents }) => ({
    words: `Bag ${number} of ${of}: ${name}`,
    lines: contents.map(({ item, size, pieces }): KitLine => {
      const key = pieceKey(item, size);
      const isIt = (each: PlacedPieces): boolean => pieceKey(each.item, each.size) === key;
      const at = placesOf(elevation, item, size, name).map((place): [string, number] => [
        place.id,
        place.contents.filter(isIt).reduce((sum, each) => sum + each.pieces, 0),
      ]);
      return { key: `${number} ${key}`, item, size, pieces, places: new Map(at) };
    }),
  }));

/** What is said of places and lines. */
export type KitWords = {
  readonly size: SizeText;
  /** What a place holds, such as `1 TROLLEY · 1 HN 1/2`. */
  readonly contents: (place: Place) => string;
  /** A place by its id, with what it holds. */
  readonly place: (id: string) => string;
  /** The names of a line's places; of many only how many and the first. */
  readonly places: (line: KitLine) => string;
};

const mostNamed = 4;

export function kitWords({ places }: Elevation, size: SizeText): KitWords {
  const byId = new Map(places.map((place) => [place.id, place]));
  const contents = (place: Place): string =>
    place.contents
      .map(({ pieces, ...piece }) => {
        const cut = size(piece);
        return `${countText(pieces)} ${piece.item}${cut === "" ? "" : `, ${cut}`}`;
      })
      .join(" · ");
  return {
    size,
    contents,
    place: (id) => {
      const place = byId.get(id);
      return place === undefined ? "" : `${place.name}: ${contents(place)}`;
    },
    places: (line) => {
      const names = [...line.places.keys()].map((id) => byId.get(id)?.name ?? "");
      return names.length <= mostNamed
        ? names.join(", ")
        : `${counted(names.length, "place")}, ${names[0] ?? ""} first`;
    },
  };
}
