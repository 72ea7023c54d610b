/** What Excel makes of a value that is written into a cell: its rules of entry. */
import { checkFormula, type FakeBook, type FakeCell } from "./book";
import { badArgument } from "./hostObject";

/** Writes `typed` as a person or `Range.values` would. `null` leaves the cell as it is. */
export function enter(book: FakeBook, cell: FakeCell, typed: unknown): void {
  if (typed === null) return;
  const made = madeOf(book, cell.format, typed);
  if (made.format !== undefined) cell.format = made.format;
  if (made.formula === undefined) put(cell, made.value);
  else putFormula(cell, made.formula);
}

type Made = {
  readonly value: FakeCell["value"];
  readonly formula?: string;
  readonly format?: string;
};

function madeOf(book: FakeBook, format: string, typed: unknown): Made {
  if (typeof typed === "number" || typeof typed === "boolean") return { value: typed };
  if (typeof typed !== "string" || typed.length > 32_767) return badArgument();
  if (format === "@") return { value: typed };
  if (typed.startsWith("'")) return { value: typed.slice(1) };
  const number = asNumber(typed);
  if (number !== null) return { value: number };
  if (/^[=+\-@]/.test(typed) && typed.length > 1) {
    const formula = typed.startsWith("=") ? typed : `=${typed}`;
    checkFormula(book, formula);
    return { value: 0, formula };
  }
  if (/^(true|false)$/i.test(typed)) return { value: typed.toLowerCase() === "true" };
  if (/^#(N\/A|REF!|VALUE!|DIV\/0!|NAME\?|NUM!|NULL!)$/.test(typed)) {
    return { value: { error: typed } };
  }
  const date = /^(\d{1,2})\/(\d{1,2})(?:\/(\d{4}))?$/.exec(typed);
  if (date === null) return { value: typed };
  const [, month, day, year = "2026"] = date;
  const serial = Date.UTC(Number(year), Number(month) - 1, Number(day)) / 86_400_000 + 25_569;
  return { value: serial, format: "m/d/yyyy" };
}

export function put(cell: FakeCell, value: FakeCell["value"]): void {
  cell.value = value;
  cell.formula = null;
}

/** Function names come out in capitals, as Excel writes them back. */
export function putFormula(cell: FakeCell, formula: string): void {
  cell.value = 0;
  cell.formula = formula.replace(
    /("(?:[^"]|"")*")|\b([A-Za-z][\w.]*)(?=\()/g,
    (_, text: string | undefined, name: string) => text ?? name.toUpperCase(),
  );
}

const asNumber = (typed: string): number | null => {
  const plain = typed.trim().replace(/^[+]/, "");
  if (!/^-?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?%?$/i.test(plain)) return null;
  return plain.endsWith("%") ? Number(plain.slice(0, -1)) / 100 : Number(plain);
};
