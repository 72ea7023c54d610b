/** The opening that a person tries the kit book with: its type, its texts, and a second set of sizes beside it. */
import { useMemo, useState } from "react";
import type { KitBookAtHand } from "../../app/kitbook/kitBookAtHand";
import { countedOpening } from "../../core/bookcheck/probeOpenings";
import type { Field } from "../../core/kitbook/fields";
import { openingTypeNamed, type OpeningType } from "../../core/kitbook/kitBook";
import type { Opening } from "../../core/openings/opening";
import {
  formFields,
  readOpeningTexts,
  textsOf,
  type OpeningTexts,
  type ReadOpening,
} from "./formFields";

export type TriedTexts = {
  readonly texts: OpeningTexts;
  readonly read: ReadOpening;
  readonly setTexts: (texts: OpeningTexts) => void;
};

export type TriedOpening = {
  readonly type: OpeningType;
  readonly fields: readonly Field[];
  readonly one: TriedTexts;
  /** `null` while there is no second one. */
  readonly other: TriedTexts | null;
  readonly setType: (name: string) => void;
  readonly take: (opening: Opening) => void;
  readonly addOther: () => void;
  readonly removeOther: () => void;
};

type Typed = {
  readonly type: string;
  /** `null` until a person chose or typed anything. */
  readonly one: OpeningTexts | null;
  readonly other: OpeningTexts | null;
};

/** `openings` are those of the schedule; the first of the type is tried first, else one that is made up. */
export function useTriedOpening(
  hand: KitBookAtHand,
  type: OpeningType,
  openings: readonly Opening[],
  onType: (name: string) => void,
): TriedOpening {
  const [typed, setTyped] = useState<Typed>({ type: type.name, one: null, other: null });
  const { book } = hand;
  const start = useMemo(() => {
    const first = openings.find((opening) => openingTypeNamed(book, opening.type) === type);
    return textsOf(hand, type, first ?? countedOpening(book, type));
  }, [hand, book, type, openings]);
  const now = typed.type === type.name ? typed : { type: type.name, one: null, other: null };
  const one = now.one ?? start;
  const readOne = useReading(hand, type, one);
  const readOther = useReading(hand, type, now.other ?? one);
  return {
    type,
    fields: useMemo(() => formFields(hand, type), [hand, type]),
    one: { texts: one, read: readOne, setTexts: (texts) => setTyped({ ...now, one: texts }) },
    other:
      now.other === null
        ? null
        : {
            texts: now.other,
            read: readOther,
            setTexts: (texts) => setTyped({ ...now, other: texts }),
          },
    setType: onType,
    take: (opening) => {
      const ofType = openingTypeNamed(book, opening.type);
      if (ofType === undefined) return;
      const other = ofType === type ? now.other : null;
      setTyped({ type: ofType.name, one: textsOf(hand, ofType, opening), other });
      onType(ofType.name);
    },
    addOther: () => setTyped({ ...now, one, other: one }),
    removeOther: () => setTyped({ ...now, other: null }),
  };
}

/** The same reading while the texts are the same, whatever object they are. */
function useReading(hand: KitBookAtHand, type: OpeningType, texts: OpeningTexts): ReadOpening {
  const key = JSON.stringify(texts);
  return useMemo(
    () => readOpeningTexts(hand, type, JSON.parse(key) as OpeningTexts),
    [hand, type, key],
  );
}
