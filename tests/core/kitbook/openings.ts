/** One opening through a compiled kit book, the slow and plain way: a second opinion on take-off. */
import { formulaError, isFormulaError, type FormulaValue } from "../../../src/core/formulas/value";
import { compileKitBook } from "../../../src/core/kitbook/compileKitBook";
import {
  openingTypeNamed,
  type BookFormula,
  type KitBook,
  type OpeningType,
} from "../../../src/core/kitbook/kitBook";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";

export type FieldValues = Readonly<Record<string, FormulaValue>>;

const feetPair = /^([\d.]+)' x ([\d.]+)'(?: on ([\d.]+)')?(?:, (.*))?$/;

/**
 * `"8' x 7' on 7', tail post, concrete"` reads: 8 ft wide, 7 ft high, posts of 7 ft, and so on. Words:
 * `tail post`, `transom`, `tail run N'`, and any other word is the floor.
 */
export function opening(text: string): FieldValues {
  const [, width, height, post, words = ""] = feetPair.exec(text) ?? [];
  if (width === undefined) throw new Error(`Bad test opening: ${text}`);
  const inches = (feet: string | undefined) => (feet === undefined ? null : Number(feet) * 12);
  const fields: Record<string, FormulaValue> = {
    width: inches(width),
    height: inches(height),
    post_height: inches(post),
  };
  for (const word of words.split(", ").filter((part) => part !== "")) {
    const run = /^tail run ([\d.]+)'$/.exec(word);
    if (run !== null) fields["tail_run"] = inches(run[1]);
    else if (word === "tail post" || word === "transom") fields[word.replace(" ", "_")] = true;
    else fields["floor"] = word;
  }
  return fields;
}

const { book: starterBook } = compileKitBook(starterKitBook, []);

export type Counted = {
  /** By item, or `ITEM (size)` with the sizes in inches where pieces carry one. */
  readonly counts: Readonly<Record<string, number>>;
  readonly said: readonly { readonly level: string; readonly message: string }[];
  /** Errors that formulas answered. */
  readonly errors: readonly string[];
  readonly sizes: Readonly<Record<string, FormulaValue>>;
  readonly steps: Readonly<Record<string, FormulaValue>>;
  /** The bags in the order of their steps; one that the order comes back to stands twice. */
  readonly bags: readonly string[];
};

export function typeOf(name: string, book: KitBook = starterBook): OpeningType {
  const type = openingTypeNamed(book, name);
  if (type === undefined) throw new Error(`No opening type ${name}`);
  return type;
}

const shown = (value: FormulaValue): string => (isFormulaError(value) ? value.code : String(value));

export function count(
  type: OpeningType,
  fields: FieldValues,
  book: KitBook = starterBook,
): Counted {
  const columns = book.fields.map(({ name, kind }) => {
    const value = fields[name] ?? null;
    const isMissing = value === null && kind === "length";
    return [isMissing ? formulaError("missing", `${name} is blank`) : value];
  });
  const evaluate = ({ compiled }: BookFormula) => compiled.evaluate(columns, 0);
  for (const size of type.sizes) columns[size.slot] = [evaluate(size.formula)];

  const errors: string[] = [];
  const value = (formula: BookFormula): FormulaValue => {
    const found = evaluate(formula);
    if (isFormulaError(found)) errors.push(`${formula.text}: ${found.code}`);
    return found;
  };
  const said = type.limits
    .filter((limit) => value(limit.when) === true)
    .map(({ level, message }) => ({
      level,
      message: message
        .map((piece) =>
          piece.kind === "words" ? piece.words : shown(columns[piece.slot]?.[0] ?? ""),
        )
        .join(""),
    }));

  const counts: Record<string, number> = {};
  const steps: Record<string, FormulaValue> = {};
  const inOrder: { bag: string; step: number }[] = [];
  for (const part of type.parts) {
    if (part.when !== null && value(part.when) !== true) continue;
    const quantity = Number(value(part.quantity));
    if (quantity === 0) continue;
    const code = part.item.kind === "code" ? part.item.code : shown(value(part.item.formula));
    const sizeFormulas = part.cutLength === null ? part.size : [part.cutLength];
    const size = sizeFormulas.map(value).map(shown).join(" x ");
    const line = size === "" ? code : `${code} (${size})`;
    counts[line] = (counts[line] ?? 0) + quantity;
    const step = part.step === null ? null : value(part.step);
    steps[part.bag] ??= step;
    inOrder.push({ bag: part.bag, step: Number(step) });
    if (part.minutes !== null) value(part.minutes);
  }
  const sizes = Object.fromEntries(
    type.slots.map((slot, index) => [slot.name, columns[index]?.[0] ?? null]),
  );
  const bags = inOrder
    .sort((one, other) => one.step - other.step)
    .map(({ bag }) => bag)
    .filter((bag, index, all) => bag !== all[index - 1]);
  return { counts, said, errors, sizes, steps, bags };
}

/** Counts by item alone, whatever the sizes. */
export function byItem({ counts }: Counted): Readonly<Record<string, number>> {
  const items: Record<string, number> = {};
  for (const [line, quantity] of Object.entries(counts)) {
    const item = line.replace(/ \([^)]*\)$/, "");
    items[item] = (items[item] ?? 0) + quantity;
  }
  return items;
}
