/** A count as text that is small enough to be kept inside a workbook, and back. */
import { inches, isCents, isPieces, isTenThousandths } from "../base/units";
import { err, ok, type Result } from "../base/result";
import type { Field, FieldKind } from "../kitbook/fields";
import type { Count, IssuedLine, IssuedOpening, IssuedValue } from "./issue";

/** Characters of one issue: some twenty thousand openings. Hosts limit what goes in at once. */
export const longestIssue = 1_000_000;

/**
 * JSON in which each text stands once, and openings that are alike share their fields. Its length
 * may be beyond `longestIssue`; the caller looks.
 */
export function countText({ currency, isComplete, fields, openings, lines }: Count): string {
  const texts = indexed<string>();
  const sets = indexed<string>();
  const rows = openings.map(({ job, mark, quantity, type, isCounted, fields: values }) => {
    const set = fields.map(({ name }) => (Object.hasOwn(values, name) ? values[name] : null));
    return [
      texts.of(job),
      mark,
      quantity,
      texts.of(type),
      Number(isCounted),
      sets.of(JSON.stringify(set)),
    ];
  });
  const lineRows = lines.map(({ job, item, size, quantity, spares, unitCost, cost }) => [
    texts.of(job),
    texts.of(item),
    size,
    quantity,
    spares,
    unitCost,
    cost,
  ]);
  return JSON.stringify({
    version: 1,
    currency,
    isComplete,
    fields: fields.map(({ name, label, kind }) => [name, label, kind]),
    texts: texts.all,
    sets: sets.all.map((set) => JSON.parse(set) as unknown),
    openings: rows,
    lines: lineRows,
  });
}

/** Error: the text is no count, or one of a later version. */
export function readCount(text: string): Result<Count, null> {
  try {
    return ok(countIn(JSON.parse(text)));
  } catch (error) {
    // Both say that the text is not what `countText` makes.
    if (error instanceof SyntaxError || error instanceof NotACount) return err(null);
    throw error;
  }
}

class NotACount extends Error {}

function indexed<T>(): { readonly all: T[]; readonly of: (value: T) => number } {
  const places = new Map<T, number>();
  const all: T[] = [];
  return {
    all,
    of: (value) => {
      const place = places.get(value) ?? all.push(value) - 1;
      places.set(value, place);
      return place;
    },
  };
}

function countIn(value: unknown): Count {
  const parts = objectIn(value);
  if (parts["version"] !== 1) throw new NotACount();
  const texts = listIn(parts["texts"]).map(textIn);
  const fields = listIn(parts["fields"]).map(fieldIn);
  const sets = listIn(parts["sets"]).map((set) => fieldsIn(listIn(set), fields));
  const text = (place: unknown): string => textIn(texts[numberIn(place)]);
  const positions = new Map<string, number>();
  const openings = listIn(parts["openings"]).map((row): IssuedOpening => {
    const [job, mark, quantity, type, isCounted, set] = listIn(row);
    const position = positions.get(text(job)) ?? 0;
    positions.set(text(job), position + 1);
    const values = sets[numberIn(set)];
    if (values === undefined) throw new NotACount();
    return {
      job: text(job),
      mark: textIn(mark),
      position,
      quantity: quantity === null ? null : numberIn(quantity),
      type: text(type),
      isCounted: isCounted === 1,
      fields: values,
    };
  });
  const lines = listIn(parts["lines"]).map((row): IssuedLine => {
    const [job, item, size, quantity, spares, unitCost, cost] = listIn(row);
    return {
      job: text(job),
      item: text(item),
      size: listIn(size).map((length) => inches(numberIn(length))),
      quantity: checked(quantity, isPieces),
      spares: checked(spares, isPieces),
      unitCost: unitCost === null ? null : checked(unitCost, isTenThousandths),
      cost: cost === null ? null : checked(cost, isCents),
    };
  });
  return {
    currency: textIn(parts["currency"]),
    isComplete: parts["isComplete"] === true,
    fields,
    openings,
    lines,
  };
}

function objectIn(value: unknown): Readonly<Record<string, unknown>> {
  if (typeof value === "object" && value !== null && !Array.isArray(value)) return { ...value };
  throw new NotACount();
}

function listIn(value: unknown): readonly unknown[] {
  if (Array.isArray(value)) return value;
  throw new NotACount();
}

function textIn(value: unknown): string {
  if (typeof value === "string") return value;
  throw new NotACount();
}

function numberIn(value: unknown): number {
  if (typeof value === "number" && Number.isFinite(value)) return value;
  throw new NotACount();
}

function checked<Unit extends number>(
  value: unknown,
  isRight: (number: number) => number is Unit,
): Unit {
  const number = numberIn(value);
  if (isRight(number)) return number;
  throw new NotACount();
}

const kinds: readonly FieldKind[] = ["text", "number", "length", "yesNo", "found"];

function fieldIn(value: unknown): Field {
  const [name, label, kind] = listIn(value);
  const known = kinds.find((each) => each === kind);
  if (known === undefined) throw new NotACount();
  return { name: textIn(name), label: textIn(label), kind: known };
}

function fieldsIn(
  values: readonly unknown[],
  fields: readonly Field[],
): Readonly<Record<string, IssuedValue>> {
  const entries = fields.flatMap(({ name }, index) => {
    const value = values[index] ?? null;
    if (value === null) return [];
    const isValue =
      typeof value === "string" || typeof value === "number" || typeof value === "boolean";
    if (!isValue) throw new NotACount();
    return [[name, value] as const];
  });
  return Object.fromEntries(entries);
}
