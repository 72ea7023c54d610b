/**
 * The counts of an opening as pieces with what fastens each.
 *
 * The kit book lists a part and then its fasteners, in one bag and at one step. So a fastener goes
 * with the part named last before it; each piece of the part has its share, the first ones one more
 * where it doesn't come out even. Nothing is worked out again: all pieces come from the counts.
 */
import { greatestCommonDivisor } from "../base/exact";
import { pieces, type Inches } from "../base/units";
import type { CountedPiece } from "../bags/openingCounts";
import type { PlacedPieces } from "./elevation";
import { kindOfBag, kindOfItem, type PartKind } from "./partKinds";

/** One piece to be drawn, or one bag of what has no place of its own. */
export type KitPiece = {
  readonly id: string;
  readonly kind: PartKind;
  /** Piece `nth` of `of` of its kit-book row, from 0. */
  readonly nth: number;
  readonly of: number;
  readonly bag: string;
  /** Inches: none, a length, or width and height. */
  readonly size: readonly Inches[];
  /** The part first, then its fasteners. Never empty. */
  readonly contents: readonly PlacedPieces[];
  /** The ids of the pieces that it stands on: those of the part named before it in its bag. */
  readonly on: readonly string[];
};

/** So many pieces of one row are drawn each by itself; of more there is one place for all. */
export const mostDrawn = 200;

type Connection = {
  readonly kind: PartKind;
  readonly bag: string;
  readonly step: number | null;
  /** `null` where there are only fasteners. */
  readonly part: CountedPiece | null;
  readonly fasteners: CountedPiece[];
  readonly on: Connection | null;
};

/** Every piece of the counts, each with its share of the fasteners, in the kit book's order. */
export function kitPieces(counted: readonly CountedPiece[]): readonly KitPiece[] {
  const connections = connectionsOf(counted);
  return connections.flatMap(piecesOf);
}

function connectionsOf(counted: readonly CountedPiece[]): readonly Connection[] {
  const connections: Connection[] = [];
  const bags = new Map<string, CountedPiece[]>();
  for (const piece of counted) {
    const key = bagKey(piece);
    const bag = bags.get(key);
    if (bag === undefined) bags.set(key, [piece]);
    else bag.push(piece);
  }
  for (const inBag of bags.values()) {
    const made: Connection[] = [];
    const early: CountedPiece[] = [];
    for (const piece of inBag) {
      const kind = kindOfItem(piece.item);
      if (kind !== null) {
        const parts = made.filter((each) => each.kind !== "anchor");
        const on = parts.findLast(({ step }) => step === piece.step) ?? parts.at(-1) ?? null;
        made.push({ ...place(piece), kind, part: piece, fasteners: [], on });
      } else {
        const last = made.findLast(({ step }) => step === piece.step) ?? made.at(-1);
        if (last === undefined) early.push(piece);
        else last.fasteners.push(piece);
      }
    }
    const [first] = made;
    const [loose] = early;
    if (first !== undefined) first.fasteners.unshift(...early);
    else if (loose !== undefined) {
      const kind = kindOfBag(loose.count.part.bag) ?? "other";
      made.push({ ...place(loose), kind, part: null, fasteners: early, on: null });
    }
    connections.push(...made);
  }
  return connections;
}

const bagKey = ({ count }: CountedPiece): string =>
  count.part.bag.trim().replace(/\s+/g, " ").toLowerCase();

const place = ({ count, step }: CountedPiece): Pick<Connection, "bag" | "step"> => ({
  bag: count.part.bag.trim().replace(/\s+/g, " "),
  step,
});

/** The pieces of a connection: as many as the part has, or as its fasteners can be shared by. */
function piecesOf(connection: Connection): readonly KitPiece[] {
  const { kind, bag, part, fasteners, on } = connection;
  const of = drawnOf(connection);
  return Array.from({ length: of }, (_, nth): KitPiece => {
    const all = part === null ? fasteners : [part, ...fasteners];
    return {
      id: idOf(connection, nth),
      kind,
      nth,
      of,
      bag,
      size: part?.size ?? [],
      contents: all.flatMap((piece) => sharePieces(piece, nth, of)),
      on: on === null ? [] : Array.from({ length: drawnOf(on) }, (__, each) => idOf(on, each)),
    };
  });
}

function drawnOf({ kind, part, fasteners }: Connection): number {
  const counts = fasteners.map(({ count }) => count.each);
  const wanted =
    part !== null
      ? part.count.each
      : kind === "other"
        ? 1
        : counts.reduce((divisor: number, count) => greatestCommonDivisor(divisor, count), 0);
  return wanted > mostDrawn ? 1 : wanted;
}

const idOf = ({ part, fasteners }: Connection, nth: number): string =>
  `${(part ?? fasteners[0])?.count.part.source.number ?? 0}-${nth + 1}`;

function sharePieces({ item, size, count }: CountedPiece, nth: number, of: number): PlacedPieces[] {
  const share = Math.floor(count.each / of) + (nth < count.each % of ? 1 : 0);
  return share === 0 ? [] : [{ item, size, pieces: pieces(share) }];
}
