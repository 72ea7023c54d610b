/**
 * One connection: a bolt through what it joins, with its washers and nut, and what is wrong with it.
 *
 * The checks are geometry, not strength: what a connection carries is for a licensed engineer.
 */
import { threadLength, type FastenerSize } from "./fastenerSizes";
import { isNut, type Fastener } from "./readFastener";

/** Washers and nuts by how many of each go on one bolt. */
export type OnBolt = { readonly fastener: Fastener; readonly each: number };

export type Connection = {
  readonly bolt: Fastener;
  readonly onBolt: readonly OnBolt[];
  /** Inches of material under the head, without washers and nut; `null` is not known. */
  readonly joined: number | null;
};

/** Common practice, no source. */
export const leastThreadsBeyond = 2;

/** Inches of bolt beyond the nut that are in nobody's way; a thicker bolt may have its own diameter. Common practice, no source. */
export const mostBeyond = 1 / 2;

/** How the bolt comes out; inches, measured from under its head. */
export type BoltFit = {
  /** What is joined, and washers at their thickest. */
  readonly underNut: number;
  /** To the far side of the nut at its thickest. */
  readonly needed: number;
  /** What stands beyond the nut; below zero where the nut is not on in full. */
  readonly beyond: number;
  readonly threadsBeyond: number;
  /** Bolt without thread, next to the head. */
  readonly plainShank: number;
};

export type ConnectionFault =
  | { readonly code: "size-differs"; readonly other: Fastener }
  | { readonly code: "threads-differ"; readonly other: Fastener }
  | { readonly code: "no-nut" }
  | { readonly code: "several-nuts"; readonly nuts: number }
  | { readonly code: "not-known"; readonly other: Fastener }
  | { readonly code: "length-not-known" }
  | { readonly code: "joined-not-known" }
  | { readonly code: "nut-not-full"; readonly fit: BoltFit; readonly length: number }
  | { readonly code: "too-short"; readonly fit: BoltFit; readonly length: number }
  | { readonly code: "too-long"; readonly fit: BoltFit; readonly most: number }
  | { readonly code: "out-of-thread"; readonly fit: BoltFit }
  | { readonly code: "neck-too-deep"; readonly depth: number; readonly joined: number };

/** Everything that is wrong with the connection, or that keeps it from being checked. */
export function connectionFaults(connection: Connection): readonly ConnectionFault[] {
  const { bolt, onBolt, joined } = connection;
  const unlike = onBolt.flatMap(({ fastener }) => mismatch(bolt, fastener));
  const nuts = onBolt.reduce(
    (sum, { fastener, each }) => sum + (isNut(fastener.kind) ? each : 0),
    0,
  );
  const belongs: readonly ConnectionFault[] = [
    ...unlike,
    ...(nuts === 0 ? [{ code: "no-nut" } as const] : []),
    ...(nuts > 1 ? [{ code: "several-nuts", nuts } as const] : []),
  ];
  const unknown = [bolt, ...onBolt.map(({ fastener }) => fastener)].filter(
    ({ size }) => size === null,
  );
  if (unknown.length > 0) {
    return [...belongs, ...unknown.map((other) => ({ code: "not-known", other }) as const)];
  }
  if (bolt.length === null) return [...belongs, { code: "length-not-known" }];
  if (joined === null) return [...belongs, { code: "joined-not-known" }];
  const fit = boltFit(connection);
  return fit === null ? belongs : [...belongs, ...fitFaults(bolt, joined, nuts, fit)];
}

function mismatch(bolt: Fastener, other: Fastener): readonly ConnectionFault[] {
  if (bolt.nominal !== other.nominal) return [{ code: "size-differs", other }];
  const differ = bolt.threads !== null && other.threads !== null && bolt.threads !== other.threads;
  return differ ? [{ code: "threads-differ", other }] : [];
}

/** How the bolt comes out; `null` where a dimension or a length is missing. */
export function boltFit({ bolt, onBolt, joined }: Connection): BoltFit | null {
  const { size, length } = bolt;
  if (size === null || length === null || joined === null) return null;
  let underNut = joined;
  let nuts = 0;
  for (const { fastener, each } of onBolt) {
    const thickness = thicknessOf(fastener);
    if (thickness === null) return null;
    if (isNut(fastener.kind)) nuts += each * thickness;
    else underNut += each * thickness;
  }
  const needed = underNut + nuts;
  const beyond = length - needed;
  return {
    underNut,
    needed,
    beyond,
    threadsBeyond: beyond * (bolt.threads ?? size.threads),
    plainShank: Math.max(0, length - threadLength(size)),
  };
}

/** At its thickest, which is the worst for a bolt that must be long enough. */
function thicknessOf({ kind, size }: Fastener): number | null {
  switch (kind) {
    case "hex nut":
      return size?.nut.thickness.most ?? null;
    case "flange nut":
      return size?.flangeNut.thickness.most ?? null;
    case "flat washer":
      return size?.washer.thickness.most ?? null;
    case "lock washer":
      return size?.lockWasher.thickness ?? null;
    default:
      return null;
  }
}

function fitFaults(
  bolt: Fastener,
  joined: number,
  nuts: number,
  fit: BoltFit,
): readonly ConnectionFault[] {
  const { size } = bolt;
  if (size === null) return [];
  const pitch = 1 / (bolt.threads ?? size.threads);
  const length = usualLength(fit.needed + leastThreadsBeyond * pitch);
  const most = Math.max(mostBeyond, size.diameter);
  const found: ConnectionFault[] = [];
  if (nuts > 0) {
    if (fit.beyond < -tiny) found.push({ code: "nut-not-full", fit, length });
    else if (fit.threadsBeyond < leastThreadsBeyond - tiny)
      found.push({ code: "too-short", fit, length });
    else if (fit.beyond > most + tiny) found.push({ code: "too-long", fit, most });
    if (fit.plainShank > fit.underNut + tiny) found.push({ code: "out-of-thread", fit });
  }
  const neck = neckDepth(bolt, size);
  if (neck > joined + tiny) found.push({ code: "neck-too-deep", depth: neck, joined });
  return found;
}

/** Less than any gauge tells: sums of decimals are not exact. */
const tiny = 1e-9;

/** The square neck at its shallowest, which is inside the material whatever the bolt; 0 for a bolt without one. */
const neckDepth = ({ kind }: Fastener, size: FastenerSize): number =>
  kind === "carriage bolt" ? size.carriageNeck.depth.least : 0;

/** The next length in quarter inches: what is usually sold. Common practice, no source. */
const usualLength = (least: number): number => Math.ceil((least - tiny) * 4) / 4;
