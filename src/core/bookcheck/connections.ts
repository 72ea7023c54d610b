/**
 * The connections of a kit book: which bolt, washers and nut belong together, and what is wrong with them.
 *
 * Rows belong together where they are for the same opening type, bag, step and condition and stand one
 * below the other with nothing but fasteners between them. Where there is one bolt, all of them are on it;
 * where there are several, each has what follows it, and the first also what stands before it.
 */
import {
  connectionFaults,
  type Connection,
  type ConnectionFault,
  type OnBolt,
} from "../fasteners/connection";
import { isBolt, readFastener, type Fastener } from "../fasteners/readFastener";
import { snapped } from "../formulas/rounding";
import { isFormulaError } from "../formulas/value";
import type { CompiledPart, KitBook, OpeningType, RowSource } from "../kitbook/kitBook";
import { itemKey, type Items } from "../pricing/item";
import { probeOpenings } from "./probeOpenings";
import { eachAt, rowOutcomes, type RowOutcomes } from "./rowOutcomes";

/** Not as many of a washer or nut as of the bolt, nor twice or three times as many. */
export type CountFault = { readonly code: "counts-differ"; readonly other: Fastener };

/** The thickness joined cannot be worked out, or is none. */
export type JoinedFault = { readonly code: "joined-unusable" };

export type BookConnection = {
  /** The bolt's row. */
  readonly source: RowSource;
  /** Item codes: the bolt's, then those on it. */
  readonly items: readonly string[];
  readonly types: readonly string[];
  readonly bolt: Fastener;
  readonly onBolt: readonly OnBolt[];
  /** Inches: the least and the largest that any opening joins; `null` is not known. */
  readonly joined: { readonly least: number; readonly most: number } | null;
  readonly faults: readonly (ConnectionFault | CountFault | JoinedFault)[];
};

/** A washer or nut with no bolt. */
export type LooseFastener = { readonly source: RowSource; readonly item: string };

export type BookConnections = {
  readonly connections: readonly BookConnection[];
  readonly loose: readonly LooseFastener[];
};

/** A part that is a fastener. */
type FastenerPart = {
  readonly part: CompiledPart;
  readonly index: number;
  readonly fastener: Fastener;
};

/** Openings tried for counts and thicknesses that are formulas. */
const tries = 300;

/** Every connection of the book, by the bolt's row; one that several types have alike is told once. */
export function connectionsIn(book: KitBook, items: Items): BookConnections {
  const connections = new Map<string, BookConnection>();
  const loose = new Map<number, LooseFastener>();
  for (const type of book.types) {
    let outcomes: RowOutcomes | null = null;
    const tried = (): RowOutcomes =>
      (outcomes ??= rowOutcomes(book, type, probeOpenings(book, type, tries), () => ""));
    for (const run of runsOf(type, items)) {
      const { bolts, alone } = boltsOf(run);
      for (const { part } of alone) {
        loose.set(part.source.number, { source: part.source, item: codeOf(part) });
      }
      for (const found of bolts) {
        const connection = bookConnection(type, found, tried);
        const key = JSON.stringify([connection.source.number, connection.items, connection.faults]);
        const known = connections.get(key);
        connections.set(
          key,
          known === undefined ? connection : { ...known, types: [...known.types, type.name] },
        );
      }
    }
  }
  return {
    connections: [...connections.values()].toSorted(
      (one, other) => one.source.number - other.source.number,
    ),
    loose: [...loose.values()],
  };
}

const codeOf = ({ item }: CompiledPart): string => (item.kind === "code" ? item.code : "");

/** Rows of fasteners that stand together. */
function runsOf(type: OpeningType, items: Items): readonly (readonly FastenerPart[])[] {
  const runs: FastenerPart[][] = [];
  let last = "";
  for (const [index, part] of type.parts.entries()) {
    const code = codeOf(part);
    const fastener =
      code === "" ? null : readFastener(items.get(itemKey(code))?.description ?? "", code);
    if (fastener === null) {
      last = "";
      continue;
    }
    const place = JSON.stringify([part.bag.toLowerCase(), part.step?.text, part.when?.text]);
    if (place === last) runs.at(-1)?.push({ part, index, fastener });
    else runs.push([{ part, index, fastener }]);
    last = place;
  }
  return runs;
}

type BoltWithParts = { readonly bolt: FastenerPart; readonly others: readonly FastenerPart[] };

function boltsOf(run: readonly FastenerPart[]): {
  readonly bolts: readonly BoltWithParts[];
  readonly alone: readonly FastenerPart[];
} {
  const bolts: { bolt: FastenerPart; others: FastenerPart[] }[] = [];
  const before: FastenerPart[] = [];
  for (const part of run) {
    if (isBolt(part.fastener.kind))
      bolts.push({ bolt: part, others: bolts.length === 0 ? before : [] });
    else (bolts.at(-1)?.others ?? before).push(part);
  }
  return { bolts, alone: bolts.length === 0 ? before : [] };
}

function bookConnection(
  type: OpeningType,
  { bolt, others }: BoltWithParts,
  tried: () => RowOutcomes,
): BookConnection {
  const counted = others.map((other) => ({ other, each: eachOn(bolt, other, tried) }));
  const differ = counted.flatMap(({ other, each }): readonly CountFault[] =>
    each === null ? [{ code: "counts-differ", other: other.fastener }] : [],
  );
  const onBolt = counted.map(({ other, each }) => ({ fastener: other.fastener, each: each ?? 1 }));
  const joined = joinedBy(bolt, tried);
  const faults = new Map<string, ConnectionFault>();
  const ends = joined === null || joined === "unusable" ? [null] : [joined.most, joined.least];
  for (const thickness of ends) {
    const connection: Connection = { bolt: bolt.fastener, onBolt, joined: thickness };
    for (const fault of connectionFaults(connection)) {
      if (joined === "unusable" && fault.code === "joined-not-known") continue;
      const about = "other" in fault ? ` ${fault.other.kind} ${fault.other.nominal}` : "";
      const key = `${fault.code}${about}`;
      if (!faults.has(key)) faults.set(key, fault);
    }
  }
  return {
    source: bolt.part.source,
    items: [bolt, ...others].map(({ part }) => codeOf(part)),
    types: [type.name],
    bolt: bolt.fastener,
    onBolt,
    joined: joined === "unusable" ? null : joined,
    faults: [
      ...faults.values(),
      ...differ,
      ...(joined === "unusable" ? [{ code: "joined-unusable" } as const] : []),
    ],
  };
}

/** How many of `other` go on one bolt; `null` where that is no whole number, or not always the same. */
function eachOn(bolt: FastenerPart, other: FastenerPart, tried: () => RowOutcomes): number | null {
  const [first, second] = [bolt.part.quantity, other.part.quantity];
  if (first.text === second.text) return 1;
  const { parts, take } = tried();
  const [bolts, others] = [parts[bolt.index]?.column, parts[other.index]?.column];
  if (bolts === undefined || others === undefined) return null;
  const ratios = new Set(
    take.openings.flatMap((_, row) => {
      const count = eachAt(bolts, row);
      return count === 0 ? [] : [eachAt(others, row) / count];
    }),
  );
  const [ratio, ...more] = ratios;
  return ratio !== undefined && more.length === 0 && ratio >= 1 && Number.isInteger(ratio)
    ? ratio
    : null;
}

/** The thickness that the bolt's row joins, over all openings tried that need the bolt. */
function joinedBy(
  { part, index }: FastenerPart,
  tried: () => RowOutcomes,
): BookConnection["joined"] | "unusable" {
  const { joined } = part;
  if (joined === null) return null;
  const { constant } = joined.compiled;
  if (constant !== undefined) {
    return isThickness(constant)
      ? { least: snapped(constant), most: snapped(constant) }
      : "unusable";
  }
  const { parts, take } = tried();
  const column = parts[index]?.column;
  const values = take.openings.flatMap((_, row) => {
    const isNeeded = column !== undefined && eachAt(column, row) > 0;
    const value = isNeeded ? joined.compiled.evaluate(take.columns, row) : null;
    // An opening that lacks a size is not counted, and says nothing of the book.
    const isMissing = value === null || (isFormulaError(value) && value.code === "missing");
    return isMissing ? [] : [value];
  });
  const thicknesses = values.filter(isThickness);
  if (thicknesses.length === 0 || thicknesses.length < values.length) return "unusable";
  return { least: Math.min(...thicknesses), most: Math.max(...thicknesses) };
}

const isThickness = (value: unknown): value is number => typeof value === "number" && value >= 0;
