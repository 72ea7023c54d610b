/** The sizes of one opening type: which row works out which, and in what order. */
import type { Finding } from "../base/finding";
import { cycleText, sortByDependencies } from "../formulas/dependencies";
import { normalName } from "../formulas/names";
import { referencesOf } from "../formulas/references";
import { isFormulaError } from "../formulas/value";
import { compileBookFormula, shownConstant, type TypeNames } from "./compileFormulas";
import type { BookFormula, RowSource } from "./kitBook";
import { bookFinding } from "./readCell";
import type { ReadRow, ReadSize } from "./readRow";
import { fitsUnit, unitWords } from "./sizeUnit";

/** A row that can be used. */
export type Usable<Content> = { readonly source: RowSource; readonly content: Content };

/** Where findings about a row's use for this type go; `Fail` makes the row a broken one. */
export type Fail = (source: RowSource, finding: Finding) => void;

/**
 * One row for each name: the type's own before one for all types, the first of several. A row that
 * cannot be used keeps its name from being worked out by a row for all types: such a value would be
 * wrong here.
 */
export function chooseSizes(
  type: string,
  rows: readonly ReadRow<ReadSize>[],
  names: TypeNames,
  fail: Fail,
  note: Fail,
): readonly Usable<ReadSize>[] {
  const keyOf = (row: ReadRow<ReadSize>): string => normalName(row.sizeName ?? "");
  const ownNames = new Set(rows.filter(({ forTypes }) => forTypes !== "all").map(keyOf));
  const chosen = new Map<string, Usable<ReadSize>>();
  for (const row of rows) {
    const { source, content, sizeName } = row;
    const name = keyOf(row);
    if (row.forTypes === "all" && ownNames.has(name)) continue;
    const first = chosen.get(name)?.content;
    if (content === null) {
      if (sizeName !== null && first === undefined) names.brokenSizes.set(name, sizeName);
    } else if (first === undefined) {
      chosen.set(name, { source, content });
    } else {
      const same = first.formula.text === content.formula.text && first.unit === content.unit;
      const finding = bookFinding(same ? "size-repeated" : "size-twice", {
        place: content.place,
        found: content.name,
        values: { type },
      });
      (same ? note : fail)(source, finding);
    }
  }
  for (const name of chosen.keys()) names.brokenSizes.delete(name);
  return [...chosen.values()];
}

/** Compiles sizes into `names.sizes`, each after those that it needs. */
export function compileSizes(
  rows: readonly Usable<ReadSize>[],
  names: TypeNames,
  fail: Fail,
): void {
  const dependents = rows.map((row) => ({
    name: normalName(row.content.name),
    uses: referencesOf(row.content.formula.formula),
    row,
  }));
  const { order, cycles, blocked } = sortByDependencies(dependents);
  const breakSize = ({ source, content }: Usable<ReadSize>, finding: Finding): void => {
    names.brokenSizes.set(normalName(content.name), content.name);
    fail(source, finding);
  };

  for (const { row, name } of blocked) names.brokenSizes.set(name, row.content.name);
  for (const { row, name } of blocked) {
    const { text, place } = row.content.formula;
    const cycle = cycles.find((path) => path.includes(name));
    if (cycle !== undefined) {
      const values = { path: cycleText(cycle) };
      fail(row.source, bookFinding("size-cycle", { place, found: text, values }));
      continue;
    }
    const compiled = compileBookFormula(row.content.formula, names);
    if (!compiled.ok) fail(row.source, compiled.error);
  }

  for (const { row, name } of order) {
    const { source, content } = row;
    const compiled = compileBookFormula(content.formula, names);
    if (!compiled.ok) {
      breakSize(row, compiled.error);
      continue;
    }
    const wrong = wrongConstantSize(content, compiled.value);
    if (wrong !== null) {
      breakSize(row, wrong);
      continue;
    }
    names.sizes.set(name, {
      source,
      name: content.name,
      unit: content.unit,
      formula: compiled.value,
      slot: names.fields.length + names.sizes.size,
      note: content.note,
      basis: content.basis,
    });
  }
}

/** A size that comes to the same for every opening is checked at once. */
function wrongConstantSize(size: ReadSize, { compiled, place }: BookFormula): Finding | null {
  const value = compiled.constant;
  if (value === undefined) return null;
  if (!isFormulaError(value) && fitsUnit(size.unit, value)) return null;
  const found = isFormulaError(value) ? value.message : shownConstant(value);
  const values = { size: size.name, wanted: unitWords[size.unit] };
  return bookFinding("size-wrong-kind", { place, found, values });
}
