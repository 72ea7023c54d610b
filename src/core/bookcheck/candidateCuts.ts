/** The points of one field at which a row of the book may change what it does, from its formulas alone. */
import type { Steps } from "../base/steps";
import { showSame } from "../formulas/rounding";
import type { FormulaValue } from "../formulas/value";
import type { CompiledPart, KitBook, OpeningType } from "../kitbook/kitBook";
import { sizeFormulasOf } from "../takeoff/partColumn";
import type { Domain, Profile } from "./profile/profile";
import { typeProfiles, type TypeProfiles } from "./profile/typeProfile";

export type CandidateCuts = {
  readonly cuts: readonly number[];
  /** Stretches along which some row can only be tried. */
  readonly unclear: readonly Domain[];
};

export type CutQuestion = {
  readonly book: KitBook;
  readonly type: OpeningType;
  /** By slot: the fields of the opening, whatever stands in the slot that runs. */
  readonly values: readonly FormulaValue[];
  readonly slot: number;
  readonly domain: Domain;
};

/** A row of the book a step. */
export function* candidateCuts({
  book,
  type,
  values,
  slot,
  domain,
}: CutQuestion): Steps<CandidateCuts> {
  const profiles = typeProfiles(book, type, values, slot, domain);
  const rows: readonly (() => readonly Profile[])[] = [
    ...type.limits.map(({ when }) => () => [profiles.of(when)]),
    ...type.parts.map((part) => () => partProfiles(part, profiles)),
  ];
  const told: Profile[] = [];
  for (const [index, profilesOf] of rows.entries()) {
    yield index / rows.length;
    told.push(...profilesOf());
  }
  return {
    cuts: together(told.flatMap(({ cuts }) => cuts)),
    unclear: joined(told.flatMap((profile) => unclearIn(profile, domain))),
  };
}

function partProfiles(part: CompiledPart, profiles: TypeProfiles): readonly Profile[] {
  const when = part.when === null ? null : profiles.of(part.when);
  if (when !== null && isNever(when)) return [when];
  return [
    ...(when === null ? [] : [when]),
    profiles.ofCount(part.quantity),
    ...(part.item.kind === "formula" ? [profiles.of(part.item.formula)] : []),
    ...sizeFormulasOf(part).map(profiles.isAboveZero),
  ];
}

const isNever = ({ cuts, between: [only] }: Profile): boolean =>
  cuts.length === 0 && only?.kind === "same" && only.value === false;

/** Ascending; points that show the same number are one. */
function together(points: readonly number[]): readonly number[] {
  const sorted = points.toSorted((one, other) => one - other);
  return sorted.filter((point, index) => {
    const before = sorted[index - 1];
    return before === undefined || !(point === before || showSame(point, before));
  });
}

function unclearIn({ cuts, between }: Profile, { from, to }: Domain): readonly Domain[] {
  return between.flatMap((course, index) =>
    course.kind === "unclear" ? [{ from: cuts[index - 1] ?? from, to: cuts[index] ?? to }] : [],
  );
}

/** Stretches that touch or overlap made one. */
function joined(stretches: readonly Domain[]): readonly Domain[] {
  const found: { from: number; to: number }[] = [];
  for (const { from, to } of stretches.toSorted((one, other) => one.from - other.from)) {
    const last = found.at(-1);
    if (last !== undefined && from <= last.to) last.to = Math.max(last.to, to);
    else found.push({ from, to });
  }
  return found;
}
