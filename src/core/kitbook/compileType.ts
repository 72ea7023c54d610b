/**
 * One opening type of a kit book: its rows compiled, sizes in an order in which they can be worked out.
 *
 * A row that cannot be used is left out and listed as broken, and so is every row that needs it.
 */
import type { Finding } from "../base/finding";
import { isFormulaError } from "../formulas/value";
import { cycleText, sortByDependencies } from "../formulas/dependencies";
import { normalName } from "../formulas/names";
import { referencesOf } from "../formulas/references";
import {
  compileBookFormula,
  compileMessage,
  type KnownChart,
  type TypeNames,
} from "./compileFormulas";
import type { Field } from "./fields";
import type {
  BookFormula,
  ItemBy,
  BrokenRow,
  CompiledLimit,
  CompiledPart,
  OpeningType,
  RowSource,
} from "./kitBook";
import { bookFinding, type ReadFormula } from "./readCell";
import type { ReadLimit, ReadPart, ReadRow, ReadSize } from "./readRow";
import { fitsUnit, isCount, slotKind, unitWords } from "./sizeUnit";

/** The rows of a book that are for one opening type. */
export type TypeRows = {
  readonly sizes: readonly ReadRow<ReadSize>[];
  readonly parts: readonly ReadRow<ReadPart>[];
  readonly limits: readonly ReadRow<ReadLimit>[];
};

/** A finding about a row that is not about the row by itself, but about its use for this type. */
type RowFinding = { readonly source: RowSource; readonly finding: Finding };

export type CompiledType = {
  readonly type: OpeningType;
  readonly findings: readonly RowFinding[];
};

export function compileType(
  name: string,
  rows: TypeRows,
  fields: readonly Field[],
  charts: ReadonlyMap<string, KnownChart>,
): CompiledType {
  const names: TypeNames = { fields, charts, sizes: new Map(), brokenSizes: new Map() };
  const broken: BrokenRow[] = [];
  const findings: RowFinding[] = [];
  const fail = (source: RowSource, finding: Finding): void => {
    broken.push({ source, finding });
    findings.push({ source, finding });
  };
  const note = (source: RowSource, finding: Finding): number => findings.push({ source, finding });

  const usable = <Content>(read: readonly ReadRow<Content>[]): readonly Usable<Content>[] =>
    read.flatMap(({ source, content, findings: own }) => {
      if (content !== null) return [{ source, content }];
      const cause = own.find((finding) => finding.level === "stop");
      if (cause !== undefined) broken.push({ source, finding: cause });
      return [];
    });

  const chosen = chooseSizes(name, rows.sizes, usable(rows.sizes), fail, note);
  compileSizes(chosen, names, fail);
  const parts = usable(rows.parts).flatMap(({ source, content }) =>
    compilePart(source, content, names, fail),
  );
  const limits = usable(rows.limits).flatMap(({ source, content }) =>
    compileLimit(source, content, names, fail),
  );
  const sizes = [...names.sizes.values()];
  const slots = [
    ...fields,
    ...sizes.map((size) => ({
      name: normalName(size.name),
      label: size.name,
      kind: slotKind(size.unit),
    })),
  ];
  return { type: { name, slots, sizes, parts, limits, broken }, findings };
}

type Usable<Content> = { readonly source: RowSource; readonly content: Content };
type Fail = (source: RowSource, finding: Finding) => void;

/** One row for each name: the type's own before one for all types, the first of several. */
function chooseSizes(
  type: string,
  rows: readonly ReadRow<ReadSize>[],
  usable: readonly Usable<ReadSize>[],
  fail: Fail,
  note: (source: RowSource, finding: Finding) => void,
): readonly Usable<ReadSize>[] {
  const isForAll = new Map(rows.map((row) => [row.source, row.forTypes === "all"]));
  const ownNames = new Set(
    usable
      .filter(({ source }) => isForAll.get(source) === false)
      .map(({ content }) => normalName(content.name)),
  );
  const chosen = new Map<string, Usable<ReadSize>>();
  for (const row of usable) {
    const { source, content } = row;
    const name = normalName(content.name);
    if (isForAll.get(source) === true && ownNames.has(name)) continue;
    const first = chosen.get(name)?.content;
    if (first === undefined) {
      chosen.set(name, row);
      continue;
    }
    const same = first.formula.text === content.formula.text && first.unit === content.unit;
    const found = content.name;
    const finding = bookFinding(same ? "size-repeated" : "size-twice", {
      place: content.place,
      found,
      values: { type },
    });
    if (same) note(source, finding);
    else fail(source, finding);
  }
  return [...chosen.values()];
}

/** Compiles sizes into `names.sizes`, each after those that it needs. */
function compileSizes(rows: readonly Usable<ReadSize>[], names: TypeNames, fail: Fail): void {
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
  const found = isFormulaError(value) ? value.message : shown(value);
  const values = { size: size.name, wanted: unitWords[size.unit] };
  return bookFinding("size-wrong-kind", { place, found, values });
}

const shown = (value: string | number | boolean | null): string =>
  value === null ? "nothing" : typeof value === "string" ? `"${value}"` : String(value);

/** Compiles the formulas of one row; `findings` gathers why some of them cannot be. */
function rowCompiler(names: TypeNames) {
  const findings: Finding[] = [];
  const compile = (read: ReadFormula): BookFormula | null => {
    const compiled = compileBookFormula(read, names);
    if (compiled.ok) return compiled.value;
    findings.push(compiled.error);
    return null;
  };
  const compileIfAny = (read: ReadFormula | null): BookFormula | null =>
    read === null ? null : compile(read);
  return { findings, compile, compileIfAny };
}

function compilePart(
  source: RowSource,
  part: ReadPart,
  names: TypeNames,
  fail: Fail,
): readonly CompiledPart[] {
  const { findings, compile, compileIfAny } = rowCompiler(names);
  const step = compileIfAny(part.step);
  const item = compileItem(part.item, compile);
  const size = part.size.map(compile).filter((formula) => formula !== null);
  const quantity = compile(part.quantity);
  const when = compileIfAny(part.when);
  const cutLength = compileIfAny(part.cutLength);
  const minutes = compileIfAny(part.minutes);
  const constant = quantity?.compiled.constant;
  if (constant !== undefined && (isFormulaError(constant) || !isCount(constant))) {
    const found = isFormulaError(constant) ? constant.message : shown(constant);
    findings.push(bookFinding("quantity-not-whole", { place: part.quantity.place, found }));
  }
  for (const finding of findings) fail(source, finding);
  if (findings.length > 0 || item === null || quantity === null) return [];
  const { bag, basis } = part;
  return [{ source, bag, step, item, size, quantity, when, cutLength, minutes, basis }];
}

function compileItem(
  item: ItemBy<ReadFormula>,
  compile: (read: ReadFormula) => BookFormula | null,
): ItemBy<BookFormula> | null {
  if (item.kind === "code") return item;
  const formula = compile(item.formula);
  return formula === null ? null : { kind: "formula", formula };
}

function compileLimit(
  source: RowSource,
  limit: ReadLimit,
  names: TypeNames,
  fail: Fail,
): readonly CompiledLimit[] {
  const { findings, compile } = rowCompiler(names);
  const when = compile(limit.when);
  const message = compileMessage(limit.message, limit, names);
  if (!message.ok) findings.push(message.error);
  for (const finding of findings) fail(source, finding);
  if (when === null || !message.ok) return [];
  const { level, text, basis } = limit;
  return [{ source, when, level, text, message: message.value, basis }];
}
