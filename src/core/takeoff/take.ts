/** The openings of one type with every size worked out, and a count that points into them. */
import type { CellPlace } from "../base/cell";
import { pieces, type Pieces } from "../base/units";
import {
  blankColumn,
  isFormulaError,
  type FormulaColumns,
  type FormulaValue,
} from "../formulas/value";
import type { BookFormula, CompiledPart, OpeningType } from "../kitbook/kitBook";
import type { Opening } from "../openings/opening";

export type Take = {
  readonly type: OpeningType;
  readonly openings: readonly Opening[];
  readonly columns: FormulaColumns;
  /** Formulas that have run over all openings, by text: rows of the book often share one. */
  readonly evaluated: Map<string, readonly FormulaValue[]>;
};

/** The values of one of the type's formulas for every opening. */
export function valuesOf(take: Take, { text, compiled }: BookFormula): readonly FormulaValue[] {
  const known = take.evaluated.get(text);
  if (known !== undefined) return known;
  const count = take.openings.length;
  const values = blankColumn(count);
  for (let row = 0; row < count; row += 1) values[row] = compiled.evaluate(take.columns, row);
  take.evaluated.set(text, values);
  return values;
}

/** One part of one opening. Its reason is worked out on demand by `explainCount`. */
export type Count = {
  readonly take: Take;
  /** Which of `take.openings`. */
  readonly row: number;
  readonly part: CompiledPart;
  /** For one opening; one or more. */
  readonly each: Pieces;
};

/**
 * The counts of one part as two columns: opening `rows[i]` needs `each[i]`, or `each` where all need
 * the same. Hundreds of thousands of counts are kept this way; `countsIn` makes objects of them.
 */
export type CountColumn = {
  readonly take: Take;
  readonly part: CompiledPart;
  readonly rows: readonly number[];
  readonly each: number | readonly number[];
};

/** The counts of several columns, one after the other. */
export function* countsIn(columns: readonly CountColumn[]): Generator<Count, void, undefined> {
  for (const { take, part, rows, each } of columns) {
    for (const [index, row] of rows.entries()) {
      yield { take, row, part, each: pieces(typeof each === "number" ? each : (each[index] ?? 0)) };
    }
  }
}

/** The opening of that row. @throws RangeError when the take has no such row. */
export function openingAt(take: Take, row: number): Opening {
  const opening = take.openings[row];
  if (opening === undefined) throw new RangeError(`No opening in row ${row} of this take`);
  return opening;
}

/** What stands in a slot for an opening; blank where nothing does. */
export const valueAt = (take: Take, slot: number, row: number): FormulaValue =>
  take.columns[slot]?.[row] ?? null;

/**
 * Finds the schedule's cell that a formula is about, by opening: the field with an error if there is
 * one, else the first field that it reads, looking through sizes down to fields; else the row's
 * first cell.
 */
export function cellFinder(take: Take, formula: BookFormula): (row: number) => CellPlace {
  const fields = fieldsBehind(take, formula);
  return (row) => {
    const opening = openingAt(take, row);
    const wrong = fields.find((slot) => isFormulaError(valueAt(take, slot, row)));
    const placeOf = (slot: number | undefined): CellPlace | null =>
      slot === undefined ? null : (opening.places[take.type.slots[slot]?.name ?? ""] ?? null);
    const found = placeOf(wrong);
    if (found !== null) return found;
    for (const slot of fields) {
      const place = placeOf(slot);
      if (place !== null) return place;
    }
    return opening.place;
  };
}

/** The fields that a formula reads, directly or through sizes, each once, in reading order. */
export function fieldsBehind(take: Pick<Take, "type">, formula: BookFormula): readonly number[] {
  const fields = new Set<number>();
  const visited = new Set<number>();
  const visit = (slots: readonly number[]): void => {
    for (const slot of slots) {
      if (visited.has(slot)) continue;
      visited.add(slot);
      const size = take.type.sizes.find((candidate) => candidate.slot === slot);
      if (size === undefined) fields.add(slot);
      else visit(size.formula.compiled.slots);
    }
  };
  visit(formula.compiled.slots);
  return [...fields];
}
