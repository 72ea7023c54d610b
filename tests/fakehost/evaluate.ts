/**
 * A small calculator for the fake host: enough of the language that totals, look-ups and corrections
 * on written sheets show a number. What it does not know shows `#NAME?`, as in Excel.
 */
import { within, type Area } from "./areas";
import { referenceArea, tokens, type Token } from "./formulaText";

export type FakeError = { readonly error: string };
export type FakeValue = string | number | boolean | FakeError;

/** What a formula sees of the workbook around it. */
export type Surroundings = {
  /** The cells of an area that may hold something; `null` for a sheet that is not there. */
  readonly values: (sheet: string | null, area: Area) => readonly (readonly FakeValue[])[] | null;
  readonly used: (sheet: string | null) => Area | null;
  /** The area of a structured reference with its sheet, or `null`. */
  readonly structured: (
    table: string,
    inside: string,
  ) => { readonly sheet: string; readonly area: Area } | null;
  /** What a name stands for, as a formula, or `null`. */
  readonly named: (name: string) => string | null;
};

type Operand = FakeValue | readonly (readonly FakeValue[])[];

const fail = (error: string): FakeError => ({ error });
const isTable = (operand: Operand): operand is readonly (readonly FakeValue[])[] =>
  Array.isArray(operand);
const isFail = (value: Operand): value is FakeError => typeof value === "object" && !isTable(value);

/** The formula's value. `formula` starts with `=`. */
export function evaluate(formula: string, around: Surroundings): FakeValue {
  const parts = tokens(formula.slice(1)).filter(({ text }) => text.trim() !== "");
  const reader = { parts, at: 0, around };
  const result = comparison(reader);
  if (reader.at < parts.length) return fail("#NAME?");
  const value = single(result);
  return value === "" && isTable(result) ? 0 : value;
}

type Reader = { readonly parts: readonly Token[]; at: number; readonly around: Surroundings };

const peek = (reader: Reader): string => reader.parts[reader.at]?.text ?? "";

function take(reader: Reader, ...texts: readonly string[]): string | null {
  const text = peek(reader);
  if (!texts.includes(text)) return null;
  reader.at++;
  return text;
}

function binary(
  operators: readonly string[],
  operand: (reader: Reader) => Operand,
  apply: (operator: string, left: FakeValue, right: FakeValue) => FakeValue,
): (reader: Reader) => Operand {
  return (reader) => {
    let left = operand(reader);
    for (;;) {
      const operator = take(reader, ...operators);
      if (operator === null) return left;
      const [one, other] = [single(left), single(operand(reader))];
      left = isFail(one) ? one : isFail(other) ? other : apply(operator, one, other);
    }
  };
}

function percent(reader: Reader): Operand {
  let value = primary(reader);
  while (take(reader, "%") !== null) value = withNumber(single(value), (number) => number / 100);
  return value;
}

function signed(reader: Reader): Operand {
  const sign = take(reader, "-", "+", "@");
  if (sign === null) return percent(reader);
  const value = signed(reader);
  return sign === "-" ? withNumber(single(value), (number) => -number) : value;
}

const power = binary(["^"], signed, (_, left, right) =>
  withNumbers(left, right, (one, other) => one ** other),
);
const product = binary(["*", "/"], power, (operator, left, right) =>
  withNumbers(left, right, (one, other) =>
    operator === "*" ? one * other : other === 0 ? fail("#DIV/0!") : one / other,
  ),
);
const sum = binary(["+", "-"], product, (operator, left, right) =>
  withNumbers(left, right, (one, other) => (operator === "+" ? one + other : one - other)),
);
const joined = binary(["&"], sum, (_, left, right) => asText(left) + asText(right));
const comparison = binary(["=", "<>", "<=", ">=", "<", ">"], joined, (operator, left, right) => {
  const order = compare(left, right);
  switch (operator) {
    case "=":
      return order === 0;
    case "<>":
      return order !== 0;
    case "<":
      return order < 0;
    case ">":
      return order > 0;
    case "<=":
      return order <= 0;
    default:
      return order >= 0;
  }
});

function primary(reader: Reader): Operand {
  const token = reader.parts[reader.at++];
  if (token === undefined) return fail("#NAME?");
  switch (token.kind) {
    case "text":
      return token.text.slice(1, -1).replaceAll('""', '"');
    case "number":
      return Number(token.text);
    case "reference": {
      const area = referenceArea(token.reference);
      return area === null ? fail("#REF!") : cells(reader.around, token.reference.sheet, area);
    }
    case "structured": {
      const found = reader.around.structured(token.table, token.inside);
      return found === null ? fail("#REF!") : cells(reader.around, found.sheet, found.area);
    }
    case "word":
      return word(reader, token.text);
    case "mark": {
      if (token.text !== "(") return fail("#NAME?");
      const inner = comparison(reader);
      return take(reader, ")") === null ? fail("#NAME?") : inner;
    }
  }
}

function cells(around: Surroundings, sheet: string | null, area: Area): Operand {
  // Looking for what is used takes longer than reading a few cells.
  const isSmall = area.rows * area.columns <= 2000;
  const used = isSmall ? area : around.used(sheet);
  const part = used === null ? null : within(area, used);
  const rows = around.values(sheet, part ?? { ...area, rows: 1, columns: 1 });
  if (rows === null) return fail("#REF!");
  return part === null ? [[""]] : rows;
}

function word(reader: Reader, text: string): Operand {
  if (take(reader, "(") === null) {
    if (/^(true|false)$/i.test(text)) return text.toLowerCase() === "true";
    if (text.startsWith("#")) return fail(text);
    const named = reader.around.named(text);
    return named === null ? fail("#NAME?") : evaluate(named, reader.around);
  }
  const given: Operand[] = [];
  if (take(reader, ")") === null) {
    do {
      given.push(peek(reader) === "," || peek(reader) === ")" ? "" : comparison(reader));
    } while (take(reader, ",", ";") !== null);
    if (take(reader, ")") === null) return fail("#NAME?");
  }
  const known = functions[text.toUpperCase()];
  return known === undefined ? fail("#NAME?") : known(given);
}

/** A single cell stands for itself; a larger area is not a value here. */
function single(operand: Operand): FakeValue {
  if (!isTable(operand)) return operand;
  const [row] = operand;
  return operand.length === 1 && row?.length === 1 ? (row[0] ?? "") : fail("#VALUE!");
}

const flat = (given: readonly Operand[]): FakeValue[] =>
  given.flatMap((operand) => (isTable(operand) ? operand.flat() : [operand]));

const asText = (value: FakeValue): string =>
  typeof value === "boolean" ? String(value).toUpperCase() : isFail(value) ? "" : String(value);

function asNumber(value: FakeValue): number | FakeError {
  if (typeof value === "number") return value;
  if (typeof value === "boolean") return value ? 1 : 0;
  if (isFail(value)) return value;
  if (value === "") return 0;
  const number = Number(value);
  return Number.isNaN(number) ? fail("#VALUE!") : number;
}

function withNumber(value: FakeValue, change: (number: number) => FakeValue): FakeValue {
  const number = asNumber(value);
  return typeof number === "number" ? change(number) : number;
}

const withNumbers = (
  left: FakeValue,
  right: FakeValue,
  combine: (one: number, other: number) => FakeValue,
): FakeValue => withNumber(left, (one) => withNumber(right, (other) => combine(one, other)));

function compare(left: FakeValue, right: FakeValue): number {
  if (typeof left === "string" && typeof right === "string") {
    const [one, other] = [left.toLowerCase(), right.toLowerCase()];
    return one === other ? 0 : one < other ? -1 : 1;
  }
  const [one, other] = [asNumber(left), asNumber(right)];
  return typeof one === "number" && typeof other === "number" ? one - other : 1;
}

/** Aggregates pass over text and blanks, and stop at the first error. */
function aggregate(
  given: readonly Operand[],
  combine: (numbers: readonly number[]) => FakeValue,
): FakeValue {
  const values = flat(given);
  return (
    values.find(isFail) ??
    combine(values.filter((value): value is number => typeof value === "number"))
  );
}

const total = (numbers: readonly number[]): number =>
  numbers.reduce((one, other) => one + other, 0);

const functions: Readonly<Record<string, (given: readonly Operand[]) => Operand>> = {
  SUM: (given) => aggregate(given, total),
  SUBTOTAL: ([, ...given]) => aggregate(given, total),
  MIN: (given) => aggregate(given, (numbers) => (numbers.length === 0 ? 0 : Math.min(...numbers))),
  MAX: (given) => aggregate(given, (numbers) => (numbers.length === 0 ? 0 : Math.max(...numbers))),
  COUNT: (given) => flat(given).filter((value) => typeof value === "number").length,
  COUNTA: (given) => flat(given).filter((value) => value !== "").length,
  CHOOSE: ([index = "", ...choices]) =>
    withNumber(single(index), (number) => single(choices[number - 1] ?? fail("#VALUE!"))),
  IF: ([test = "", yes = true, no = false]) => {
    const holds = single(test);
    return isFail(holds) ? holds : asNumber(holds) === 0 ? no : yes;
  },
  IFERROR: ([value = "", otherwise = ""]) => (isFail(single(value)) ? otherwise : value),
  AND: (given) => flat(given).every((value) => asNumber(value) !== 0),
  OR: (given) => flat(given).some((value) => asNumber(value) !== 0),
  NOT: ([value = ""]) => asNumber(single(value)) === 0,
  ABS: ([value = ""]) => withNumber(single(value), Math.abs),
  ROUND: ([value = "", digits = 0]) =>
    withNumbers(single(value), single(digits), (number, places) =>
      Number(`${Math.round(Number(`${number}e${places}`))}e${-places}`),
    ),
  ROUNDUP: ([value = "", digits = 0]) =>
    withNumbers(single(value), single(digits), (number, places) =>
      Number(
        `${Math.sign(number) * Math.ceil(Math.abs(Number(`${number}e${places}`)))}e${-places}`,
      ),
    ),
  TRIM: ([value = ""]) => asText(single(value)).trim().replace(/ +/g, " "),
  VALUE: ([value = ""]) => {
    const text = single(value);
    return asText(text).trim() === "" ? fail("#VALUE!") : asNumber(text);
  },
  SUBSTITUTE: ([value = "", old = "", next = ""]) =>
    asText(single(value)).replaceAll(asText(single(old)), asText(single(next))),
  /** Whole numbers, with a sign where the format has one. */
  TEXT: ([value = "", format = ""]) =>
    withNumber(single(value), (number) => {
      const sign = number < 0 ? "-" : asText(single(format)).startsWith("+") ? "+" : "";
      return `${sign}${Math.abs(Math.round(number))}`;
    }),
  SUMIF: ([where = "", wanted = "", what = where]) => {
    const [keys, amounts] = [flat([where]), flat([what])];
    return total(
      keys.flatMap((key, index) => {
        const amount = amounts[index];
        return compare(key, single(wanted)) === 0 && typeof amount === "number" ? [amount] : [];
      }),
    );
  },
  MATCH: ([wanted = "", where = ""]) => {
    const index = flat([where]).findIndex((value) => compare(value, single(wanted)) === 0);
    return index < 0 ? fail("#N/A") : index + 1;
  },
  INDEX: ([where = "", row = 1, column = 1]) =>
    withNumbers(single(row), single(column), (down, right) =>
      isTable(where) ? (where[down - 1]?.[right - 1] ?? fail("#REF!")) : single(where),
    ),
};
