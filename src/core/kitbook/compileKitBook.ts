/**
 * Kit-book rows into a checked, compiled kit book.
 *
 * The way: rows are read one by one (`readRow`, `readCharts`), the opening types they name are
 * gathered, and each type's rows are compiled together (`compileType`). Every bad row is a finding
 * with its cell; the good ones work, and an opening type says which of its rows do not.
 */
import { counted } from "../base/counted";
import type { Finding } from "../base/finding";
import { between, finish, type Steps } from "../base/steps";
import { nearestName, normalName } from "../formulas/names";
import { chartLookup } from "./chart";
import type { KnownChart } from "./compileFormulas";
import { allRows, compileType, type CompiledType, type TypeRows } from "./compileType";
import { standardFields, type Field } from "./fields";
import type { KitBook, RowSource } from "./kitBook";
import { bookFinding } from "./readCell";
import { readCharts, type ReadCharts } from "./readCharts";
import { readLimitRow, readPartRow, readSizeRow, type ReadRow } from "./readRow";
import type { KitBookRows } from "./rows";

export type KitBookResult = { readonly book: KitBook; readonly findings: readonly Finding[] };

/**
 * Compiles a book. `furtherHeadings` are the schedule's headings besides the standard fields, as
 * typed; formulas use them by their `normalName`. One that a size of the book has too is reported,
 * and formulas of types with that size use the size.
 */
export const compileKitBook = (
  rows: KitBookRows,
  furtherHeadings: readonly string[],
): KitBookResult => finish(compileInSteps(rows, furtherHeadings));

/** The same, an opening type a step. */
export function* compileInSteps(
  rows: KitBookRows,
  furtherHeadings: readonly string[],
): Steps<KitBookResult> {
  const charts = readCharts(rows.charts);
  const known = knownCharts(charts);
  const read: TypeRows = {
    sizes: yield* between(0, 0.1, eachInSteps(rows.sizes, readSizeRow)),
    parts: yield* between(0.1, 0.2, eachInSteps(rows.parts, readPartRow)),
    limits: yield* between(0.2, 0.3, eachInSteps(rows.limits, readLimitRow)),
  };
  const fields = allFields(furtherHeadings);
  const types = typeNames(read);
  const sizes = byType(read.sizes, types.keys());
  const parts = byType(read.parts, types.keys());
  const limits = byType(read.limits, types.keys());
  const compiled: CompiledType[] = [];
  for (const [key, name] of types) {
    yield 0.3 + (0.7 * compiled.length) / types.size;
    const ofType = {
      sizes: sizes.get(key) ?? [],
      parts: parts.get(key) ?? [],
      limits: limits.get(key) ?? [],
    };
    compiled.push(compileType(name, ofType, fields, known));
  }
  const book: KitBook = {
    fields,
    types: compiled.map(({ type }) => type),
    charts: charts.charts,
  };
  const findings = [
    ...(types.size === 0 ? [bookFinding("book-without-types", {})] : []),
    ...charts.findings,
    ...rowFindings(read, compiled),
    ...headingFindings(read, fields),
    ...typeFindings(read, types),
  ];
  return { book, findings };
}

const rowsInStep = 100;

/** Each row with its number, from 1. */
function* eachInSteps<Row, Read>(
  rows: readonly Row[],
  read: (row: Row, number: number) => Read,
): Steps<readonly Read[]> {
  const done: Read[] = [];
  for (const row of rows) {
    if (done.length % rowsInStep === 0) yield done.length / rows.length;
    done.push(read(row, done.length + 1));
  }
  return done;
}

function knownCharts({ charts, broken }: ReadCharts): ReadonlyMap<string, KnownChart> {
  return new Map(
    charts.map((chart) => {
      const name = normalName(chart.name);
      return [name, { chart, lookup: chartLookup(chart), broken: broken.has(name) }];
    }),
  );
}

function allFields(furtherHeadings: readonly string[]): readonly Field[] {
  const fields = new Map<string, Field>(standardFields.map((field) => [field.name, field]));
  for (const heading of furtherHeadings) {
    const name = normalName(heading);
    if (name === "" || fields.has(name)) continue;
    fields.set(name, { name, label: heading.trim(), kind: "found" });
  }
  return [...fields.values()];
}

/** Each opening type as first typed, by its key. */
function typeNames(rows: TypeRows): ReadonlyMap<string, string> {
  const names = new Map<string, string>();
  for (const { forTypes } of allRows(rows)) {
    if (forTypes === "all") continue;
    for (const [key, name] of forTypes) if (!names.has(key)) names.set(key, name);
  }
  return names;
}

/** The rows of each type by its key, in the book's order. */
function byType<Content>(
  rows: readonly ReadRow<Content>[],
  keys: Iterable<string>,
): ReadonlyMap<string, readonly ReadRow<Content>[]> {
  const groups = new Map<string, ReadRow<Content>[]>();
  for (const key of keys) groups.set(key, []);
  for (const row of rows) {
    const rowKeys = row.forTypes === "all" ? groups.keys() : row.forTypes.keys();
    for (const key of rowKeys) groups.get(key)?.push(row);
  }
  return groups;
}

/**
 * The findings of each row: its own, then those of its use. One that is the same for all the row's
 * opening types is said once; one that is not names the types.
 */
function rowFindings(rows: TypeRows, compiled: readonly CompiledType[]): readonly Finding[] {
  const uses = new Map<RowSource, Map<string, { finding: Finding; types: string[] }>>();
  for (const { type, findings } of compiled) {
    for (const { source, finding } of findings) {
      const ofRow = uses.get(source) ?? new Map<string, { finding: Finding; types: string[] }>();
      uses.set(source, ofRow);
      const key = `${finding.code} ${finding.message}`;
      const told = ofRow.get(key) ?? { finding, types: [] };
      told.types.push(type.name);
      ofRow.set(key, told);
    }
  }
  return allRows(rows).flatMap((row) => {
    const count = row.forTypes === "all" ? compiled.length : row.forTypes.size;
    const told = [...(uses.get(row.source)?.values() ?? [])];
    return [...row.findings, ...told.map(({ finding, types }) => about(finding, types, count))];
  });
}

function about(finding: Finding, types: readonly string[], count: number): Finding {
  if (types.length === count) return finding;
  const named = types.map((type) => `"${type}"`).join(", ");
  return { ...finding, message: `For the opening type ${named}: ${finding.message}` };
}

function headingFindings(rows: TypeRows, fields: readonly Field[]): readonly Finding[] {
  const headings = new Map(
    fields.filter((field) => field.kind === "found").map((field) => [field.name, field.label]),
  );
  return rows.sizes.flatMap(({ content }) => {
    const heading = content === null ? undefined : headings.get(normalName(content.name));
    if (content === null || heading === undefined) return [];
    const { name: found, place } = content;
    return [bookFinding("size-hides-a-heading", { place, found, values: { heading } })];
  });
}

/** Types so thin that their name is more likely a slip. */
const fewRows = 2;

function typeFindings(rows: TypeRows, types: ReadonlyMap<string, string>): readonly Finding[] {
  const all = byType(allRows(rows), types.keys());
  const parts = byType(rows.parts, types.keys());
  return [...types].flatMap(([key, name]) => {
    const own = (all.get(key) ?? []).filter((row) => row.forTypes !== "all");
    const place = own[0]?.source.place ?? null;
    const details = { place, found: name };
    if (own.length <= fewRows) {
      const others = [...types].filter(([other]) => other !== key).map(([, other]) => other);
      const other = nearestName(name, others);
      const values = { rows: counted(own.length, "row"), other: other ?? "" };
      if (other !== undefined) return [bookFinding("book-type-likeness", { ...details, values })];
    }
    const hasParts = (parts.get(key) ?? []).length > 0;
    return hasParts ? [] : [bookFinding("book-type-without-parts", details)];
  });
}
