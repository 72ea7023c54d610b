/** The reason for a count: the kit-book row, its formula, the numbers put in, times how many alike. */
import { err, ok, type Result } from "../base/result";
import { pieces, type Pieces } from "../base/units";
import { shown } from "../formulas/coerce";
import { traceFormula } from "../formulas/trace";
import type { BookFormula, CompiledPart, CompiledSize, RowSource } from "../kitbook/kitBook";
import { describeSource, slotText, slotsText, type ShowLength } from "./describe";
import { sizeFormulasOf } from "./partColumn";
import { openingAt, type Count, type Take } from "./take";

/** The count for all alike openings: for one of them, times how many. */
export const quantityOf = (count: Count): Pieces =>
  pieces(count.each * openingAt(count.take, count.row).quantity);

/** A number that went into a formula. `from` is the size that made it, `null` for a field. */
export type NumberPutIn = {
  readonly name: string;
  readonly label: string;
  readonly text: string;
  readonly from: SizeReason | null;
};

/** How a size came about for an opening. */
export type SizeReason = {
  readonly source: RowSource;
  readonly name: string;
  readonly formula: string;
  readonly text: string;
  readonly note: string;
  readonly basis: string;
  readonly numbers: readonly NumberPutIn[];
};

/** A formula of a part, and what it answers. A size of width and height has a formula for each. */
export type PartFormula = {
  readonly answers: "item" | "size" | "quantity" | "when";
  readonly formula: BookFormula;
};

/** The formulas of a part: what is needed, how many, and when. */
export const formulasOf = (part: CompiledPart): readonly PartFormula[] => [
  ...(part.item.kind === "code" ? [] : [{ answers: "item", formula: part.item.formula } as const]),
  ...sizeFormulasOf(part).map((formula) => ({ answers: "size", formula }) as const),
  { answers: "quantity", formula: part.quantity },
  ...(part.when === null ? [] : [{ answers: "when", formula: part.when } as const]),
];

export type CountReason = {
  readonly mark: string;
  readonly job: string;
  readonly bag: string;
  readonly source: RowSource;
  /** What went into the part's formulas, each once. */
  readonly numbers: readonly NumberPutIn[];
  readonly each: Pieces;
  readonly alike: Pieces;
  readonly quantity: Pieces;
  readonly basis: string;
};

/** The whole reason as data, sizes followed down to the fields of the schedule. */
export function explainCount(count: Count, show: ShowLength): CountReason {
  const { take, row, part, each } = count;
  const opening = openingAt(take, row);
  const reads = new Set(formulasOf(part).flatMap(({ formula }) => slotsRead(take, formula, row)));
  return {
    mark: opening.mark,
    job: opening.job,
    bag: part.bag,
    source: part.source,
    numbers: [...reads].map((slot) => numberPutIn(take, slot, row, show)),
    each,
    alike: opening.quantity,
    quantity: quantityOf(count),
    basis: part.basis,
  };
}

/** The slots that a formula really read for an opening; branches that IF passed by are left out. */
const slotsRead = (take: Take, formula: BookFormula, row: number): readonly number[] =>
  traceFormula(formula.compiled, take.columns, row).reads.map((read) => read.slot);

/** How the size in a slot came about for an opening; `null` for a field. */
export function explainSize(
  take: Take,
  slot: number,
  row: number,
  show: ShowLength,
): SizeReason | null {
  const size = take.type.sizes.find((candidate) => candidate.slot === slot);
  return size === undefined ? null : sizeReason(take, size, row, show);
}

const sizeReason = (take: Take, size: CompiledSize, row: number, show: ShowLength): SizeReason => ({
  source: size.source,
  name: size.name,
  formula: size.formula.text,
  text: slotText(take, size.slot, row, show),
  note: size.note,
  basis: size.basis,
  numbers: slotsRead(take, size.formula, row).map((slot) => numberPutIn(take, slot, row, show)),
});

const numberPutIn = (take: Take, slot: number, row: number, show: ShowLength): NumberPutIn => ({
  name: take.type.slots[slot]?.name ?? "",
  label: take.type.slots[slot]?.label ?? "",
  text: slotText(take, slot, row, show),
  from: explainSize(take, slot, row, show),
});

/**
 * The reason in one line:
 * `kit book parts row 12: 3 * leaves = 3 with leaves = 1; 2 alike: 6 (common practice, no source)`.
 */
export function because(count: Count, show: ShowLength): string {
  const { take, row, part, each } = count;
  const opening = openingAt(take, row);
  const { when, quantity, basis } = part;
  const condition =
    when === null ? "" : `; needed as ${when.text}${withNumbers(take, when, row, show)}`;
  const alike = opening.quantity === 1 ? "" : `; ${opening.quantity} alike: ${quantityOf(count)}`;
  const isConstant = quantity.compiled.slots.length === 0 && quantity.text === String(each);
  const worked = isConstant
    ? `${each}`
    : `${quantity.text} = ${each}${withNumbers(take, quantity, row, show)}`;
  return `${describeSource(part.source)}: ${worked}${condition}${alike}${basis === "" ? "" : ` (${basis})`}`;
}

/** ` with leaves = 1`, or nothing where the formula reads nothing. */
function withNumbers(take: Take, formula: BookFormula, row: number, show: ShowLength): string {
  const slots = slotsRead(take, formula, row);
  return slots.length === 0 ? "" : ` with ${slotsText(take, slots, row, show)}`;
}

/** The step of a count in the order of work; `null` where the book's formula gives no number. */
export function stepOf({ take, row, part }: Count): number | null {
  const step = part.step?.compiled.evaluate(take.columns, row);
  return typeof step === "number" ? step : null;
}

/**
 * Minutes of work for one opening; `null` where the book says none. Error: what the book's formula came
 * to, in words, where that is no time.
 */
export function minutesOf({ take, row, part }: Count): Result<number | null, string> {
  const minutes = part.minutes?.compiled.evaluate(take.columns, row) ?? null;
  if (minutes === null || minutes === "") return ok(null);
  return typeof minutes === "number" && minutes >= 0
    ? ok(minutes)
    : err(shown(minutes).replace(/\.$/, ""));
}
