/** What each row of a kit book does for some openings of one type: the take-off, row by row. */
import type { Finding } from "../base/finding";
import { isFormulaError, type FormulaValue } from "../formulas/value";
import type { CompiledLimit, CompiledPart, KitBook, OpeningType } from "../kitbook/kitBook";
import type { Opening } from "../openings/opening";
import type { ShowLength } from "../takeoff/describe";
import { errorFinding } from "../takeoff/faults";
import { partColumn, type PartColumn, type Piece } from "../takeoff/partColumn";
import { valuesOf, type Take } from "../takeoff/take";
import { workOutSizes } from "../takeoff/takeOffType";
import { isTrue } from "../takeoff/truth";

/** Why a row gives nothing for an opening; `key` is the same whatever the opening's sizes are. */
export type RowFault = { readonly key: string; readonly finding: Finding };

export type PartOutcomes = {
  readonly column: PartColumn;
  /** By opening; the first fault of each. */
  readonly faults: ReadonlyMap<number, RowFault>;
};

export type LimitOutcomes = {
  readonly limit: CompiledLimit;
  readonly values: readonly FormulaValue[];
};

export type RowOutcomes = {
  readonly take: Take;
  readonly parts: readonly PartOutcomes[];
  readonly limits: readonly LimitOutcomes[];
};

/** Works every row out for every opening, whatever other rows say: a stop stops no other row here. */
export function rowOutcomes(
  book: KitBook,
  type: OpeningType,
  openings: readonly Opening[],
  show: ShowLength,
): RowOutcomes {
  const take = workOutSizes(book, type, openings);
  return {
    take,
    parts: type.parts.map((part) => partOutcomes(take, part, show)),
    limits: type.limits.map((limit) => ({ limit, values: valuesOf(take, limit.when) })),
  };
}

function partOutcomes(take: Take, part: CompiledPart, show: ShowLength): PartOutcomes {
  const faults = new Map<number, RowFault>();
  const add = (row: number, key: string, finding: Finding): void => {
    if (!faults.has(row)) faults.set(row, { key, finding });
  };
  const column = partColumn(
    take,
    part,
    (row, finding) => add(row, finding.code, finding),
    (row, formula, error) =>
      add(row, `${error.code} ${formula.text}`, errorFinding(take, show, row, formula, error)),
  );
  return { column, faults };
}

/** How many pieces a part counts for one opening of that row. */
export const eachAt = ({ each }: PartColumn, row: number): number =>
  typeof each === "number" ? each : (each[row] ?? 0);

/** What a part counts for that row; `null` where it counts nothing. */
export function pieceAt(column: PartColumn, row: number): Piece | null {
  if (eachAt(column, row) === 0) return null;
  const { piece } = column;
  return "item" in piece ? piece : (piece[row] ?? null);
}

/** Whether a limit speaks for that row: it does not where it cannot be worked out. */
export function speaksAt({ values }: LimitOutcomes, row: number): boolean {
  const value = values[row] ?? null;
  return !isFormulaError(value) && isTrue(value);
}

/** The limit's own fault for that row, as a finding; `null` where it can be worked out. */
export function limitFault(
  { take }: RowOutcomes,
  { limit, values }: LimitOutcomes,
  row: number,
  show: ShowLength,
): RowFault | null {
  const value = values[row] ?? null;
  if (!isFormulaError(value)) return null;
  return {
    key: `${value.code} ${limit.when.text}`,
    finding: errorFinding(take, show, row, limit.when, value),
  };
}

/** Pieces by item for one opening of that row, sizes left out, in the book's order. */
export function itemsAt({ parts }: RowOutcomes, row: number): ReadonlyMap<string, number> {
  const items = new Map<string, number>();
  for (const { column } of parts) {
    const piece = pieceAt(column, row);
    if (piece === null) continue;
    items.set(piece.item, (items.get(piece.item) ?? 0) + eachAt(column, row));
  }
  return items;
}

/** Why the opening of that row is not counted: what cannot be worked out, then the limits that stop it. */
export function refusalsAt(
  outcomes: RowOutcomes,
  row: number,
  show: ShowLength,
): readonly RowFault[] {
  const faults = [
    ...outcomes.limits.map((limit) => limitFault(outcomes, limit, row, show)),
    ...outcomes.parts.map(({ faults: ofPart }) => ofPart.get(row) ?? null),
  ].filter((fault) => fault !== null);
  // One cause is told by every row that runs into it.
  return [...new Map(faults.map((fault) => [fault.finding.message, fault])).values()];
}
