/**
 * One opening type of a kit book: its rows compiled, sizes in an order in which they can be worked out.
 *
 * A row that cannot be used is left out and listed as broken, and so is every row that needs it.
 */
import type { Finding } from "../base/finding";
import { isFormulaError } from "../formulas/value";
import { normalName } from "../formulas/names";
import {
  compileBookFormula,
  compileMessage,
  shownConstant,
  type KnownChart,
  type TypeNames,
} from "./compileFormulas";
import { chooseSizes, compileSizes, type Fail } from "./compileSizes";
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
import { isCount, slotKind } from "./sizeUnit";

/** The rows of a book that are for one opening type. */
export type TypeRows = {
  readonly sizes: readonly ReadRow<ReadSize>[];
  readonly parts: readonly ReadRow<ReadPart>[];
  readonly limits: readonly ReadRow<ReadLimit>[];
};

export const allRows = ({ sizes, parts, limits }: TypeRows): readonly ReadRow<unknown>[] => [
  ...sizes,
  ...parts,
  ...limits,
];

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
  const note: Fail = (source, finding) => findings.push({ source, finding });

  for (const { source, content, findings: own } of allRows(rows)) {
    const cause = own.find((finding) => finding.level === "stop");
    if (content === null && cause !== undefined) broken.push({ source, finding: cause });
  }

  compileSizes(chooseSizes(name, rows.sizes, names, fail, note), names, fail);
  const parts = rows.parts.flatMap(({ source, content }) =>
    content === null ? [] : compilePart(source, content, names, fail),
  );
  const limits = rows.limits.flatMap(({ source, content }) =>
    content === null ? [] : compileLimit(source, content, names, fail),
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
  const joined = compileIfAny(part.joined);
  const constant = quantity?.compiled.constant;
  if (constant !== undefined && (isFormulaError(constant) || !isCount(constant))) {
    const found = isFormulaError(constant) ? constant.message : shownConstant(constant);
    findings.push(bookFinding("quantity-not-whole", { place: part.quantity.place, found }));
  }
  for (const finding of findings) fail(source, finding);
  if (findings.length > 0 || item === null || quantity === null) return [];
  const { bag, basis } = part;
  return [{ source, bag, step, item, size, quantity, when, cutLength, minutes, joined, basis }];
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
