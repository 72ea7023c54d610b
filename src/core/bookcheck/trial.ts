/** Trying a size: what each row of the kit book does for one opening, and what it does not. */
import type { Inches } from "../base/units";
import { traceFormula } from "../formulas/trace";
import type {
  BookFormula,
  BrokenRow,
  CompiledLimit,
  CompiledSize,
  KitBook,
  OpeningType,
  RowSource,
} from "../kitbook/kitBook";
import type { Opening } from "../openings/opening";
import { messageText, slotText, slotsText, type ShowLength } from "../takeoff/describe";
import type { Take } from "../takeoff/take";
import { isTrue } from "../takeoff/truth";
import { isFormulaError } from "../formulas/value";
import {
  eachAt,
  limitFault,
  pieceAt,
  rowOutcomes,
  speaksAt,
  type LimitOutcomes,
  type PartOutcomes,
  type RowOutcomes,
} from "./rowOutcomes";

/** A formula with the numbers that it read on its way: `IF(leaf_width <= 5', 1, 2)` with `leaf_width = 8'-0"`. */
export type Worked = { readonly formula: string; readonly numbers: string };

export type TriedSize = {
  readonly source: RowSource;
  readonly name: string;
  /** The value as a person reads it. */
  readonly text: string;
  readonly worked: Worked;
  readonly note: string;
  readonly basis: string;
};

/**
 * `counts`: gives pieces. `not needed`: its condition does not hold. `none`: needed, and the quantity is
 * 0. `fails`: cannot be worked out, so that the opening is not counted.
 */
export const partDeeds = ["counts", "not needed", "none", "fails"] as const;
export type PartDeed = (typeof partDeeds)[number];

export type TriedPart = {
  readonly source: RowSource;
  readonly deed: PartDeed;
  readonly bag: string;
  /** `null` where the book gives none. */
  readonly step: number | null;
  /** As the book writes it: a code, or `=` and a formula. */
  readonly itemTyped: string;
  /** What is counted; `null` where nothing is. */
  readonly item: string | null;
  readonly size: readonly Inches[];
  readonly each: number;
  readonly quantity: Worked;
  /** `null` where the part is always needed. */
  readonly when: Worked | null;
  /** Why it fails; empty where it does not. */
  readonly fault: string;
};

/** `speaks`: its condition holds. `fails`: that cannot be worked out, so that the opening is not counted. */
export const limitDeeds = ["speaks", "silent", "fails"] as const;
export type LimitDeed = (typeof limitDeeds)[number];

export type TriedLimit = {
  readonly source: RowSource;
  readonly deed: LimitDeed;
  readonly level: CompiledLimit["level"];
  readonly when: Worked;
  /** What it says, or would say; why it fails where it does. */
  readonly message: string;
};

export type Trial = {
  readonly opening: Opening;
  readonly sizes: readonly TriedSize[];
  readonly parts: readonly TriedPart[];
  readonly limits: readonly TriedLimit[];
  /** Rows of the type that do not work at all. */
  readonly broken: readonly BrokenRow[];
  /** Whether a take-off would count the opening, in full and with no row that fails. */
  readonly isCounted: boolean;
};

/** Tries one opening, whose type is `type`. Rows are in the book's order. */
export function tryOpening(
  book: KitBook,
  type: OpeningType,
  opening: Opening,
  show: ShowLength,
): Trial {
  const outcomes = rowOutcomes(book, type, [opening], show);
  const { take } = outcomes;
  const parts = outcomes.parts.map((part) => triedPart(take, part, show));
  const limits = outcomes.limits.map((limit) => triedLimit(outcomes, limit, show));
  const refused =
    parts.some(({ deed }) => deed === "fails") ||
    limits.some(({ deed, level }) => deed === "fails" || (deed === "speaks" && level === "stop"));
  return {
    opening,
    sizes: type.sizes
      .map((size) => triedSize(take, size, show))
      .toSorted((one, other) => one.source.number - other.source.number),
    parts,
    limits,
    broken: type.broken,
    isCounted: !refused && type.broken.length === 0,
  };
}

function worked(take: Take, formula: BookFormula, show: ShowLength): Worked {
  const { reads } = traceFormula(formula.compiled, take.columns, 0);
  const slots = reads.map(({ slot }) => slot);
  return { formula: formula.text, numbers: slotsText(take, slots, 0, show) };
}

const triedSize = (take: Take, size: CompiledSize, show: ShowLength): TriedSize => ({
  source: size.source,
  name: size.name,
  text: slotText(take, size.slot, 0, show),
  worked: worked(take, size.formula, show),
  note: size.note,
  basis: size.basis,
});

function triedPart(take: Take, { column, faults }: PartOutcomes, show: ShowLength): TriedPart {
  const { part } = column;
  const piece = pieceAt(column, 0);
  const fault = faults.get(0)?.finding.message ?? "";
  return {
    source: part.source,
    deed:
      fault !== ""
        ? "fails"
        : piece !== null
          ? "counts"
          : isNeeded(take, part.when)
            ? "none"
            : "not needed",
    bag: part.bag,
    step: stepAt(take, part.step),
    itemTyped: part.item.kind === "code" ? part.item.code : part.item.formula.text,
    item: piece?.item ?? null,
    size: piece?.size ?? [],
    each: eachAt(column, 0),
    quantity: worked(take, part.quantity, show),
    when: part.when === null ? null : worked(take, part.when, show),
    fault,
  };
}

function isNeeded(take: Take, when: BookFormula | null): boolean {
  if (when === null) return true;
  const value = when.compiled.evaluate(take.columns, 0);
  return !isFormulaError(value) && isTrue(value);
}

function stepAt(take: Take, step: BookFormula | null): number | null {
  const value = step?.compiled.evaluate(take.columns, 0);
  return typeof value === "number" ? value : null;
}

function triedLimit(outcomes: RowOutcomes, limit: LimitOutcomes, show: ShowLength): TriedLimit {
  const { take } = outcomes;
  const { source, level, when, message } = limit.limit;
  const fault = limitFault(outcomes, limit, 0, show);
  return {
    source,
    deed: fault !== null ? "fails" : speaksAt(limit, 0) ? "speaks" : "silent",
    level,
    when: worked(take, when, show),
    message: fault?.finding.message ?? messageText(take, message, 0, show),
  };
}
