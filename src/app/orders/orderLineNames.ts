/** A line of a kept order by what a person calls it, and how many came by what a person types. */
import { err, ok, type Result } from "../../core/base/result";
import { isPieces, pieces, type Pieces } from "../../core/base/units";
import type { OrderedPacks, OrderRecord } from "../../core/purchasing/books/orderRecord";

/** `TRACK 20'-0" from Alder`. */
export const lineName = ({ item, words, supplier }: OrderedPacks): string =>
  `${[item, words.size].filter((word) => word !== "").join(" ")} from ${supplier}`;

/**
 * The place of the line among the order's packs, from zero. It is named by its number, from one, or by
 * its item, with the size and the supplier where the item alone is not enough. Error: it is no line,
 * or more than one.
 */
export function namedLine({ number, packs }: OrderRecord, named: string): Result<number, string> {
  const wanted = asCompared(named);
  const found = packs.flatMap((line, at) =>
    namesOf(line, at).some((name) => asCompared(name) === wanted) ? [at] : [],
  );
  const [only, ...others] = found;
  if (only !== undefined && others.length === 0) return ok(only);
  const shown = found.length === 0 ? packs.map((_, at) => at) : found;
  const lines = shown.flatMap((at) => {
    const line = packs[at];
    return line === undefined ? [] : [`${at + 1}: ${lineName(line)}`];
  });
  const says = found.length === 0 ? "has no line" : "has more than one line";
  return err(`Order ${number} ${says} “${named}”. Its lines: ${lines.join("; ")}.`);
}

const asCompared = (name: string): string => name.trim().toLowerCase().replaceAll(/\s+/g, " ");

function namesOf(line: OrderedPacks, at: number): readonly string[] {
  const { item, words, supplier } = line;
  return [
    String(at + 1),
    item,
    `${item} ${words.size}`,
    `${item} from ${supplier}`,
    lineName(line),
  ];
}

/** `3` or `3 packs`; `37 pcs` where packs are not full. `null` for anything else. */
export function readCame(
  typed: string,
  { packSize }: Pick<OrderedPacks, "packSize">,
): Pieces | null {
  const [, digits, unit = "packs"] =
    /^(\d{1,9})\s*(packs?|pcs?|pieces?)?$/i.exec(typed.trim()) ?? [];
  if (digits === undefined) return null;
  const count = Number(digits) * (/^packs?$/i.test(unit) ? packSize : 1);
  return isPieces(count) ? pieces(count) : null;
}

/** `3 packs of 50`, `37 pcs`; a pack of one is a piece. */
export function piecesWords(count: number, { packSize }: Pick<OrderedPacks, "packSize">): string {
  if (packSize === 1 || count % packSize !== 0) return `${count} ${count === 1 ? "pc" : "pcs"}`;
  const packs = count / packSize;
  return `${packs} ${packs === 1 ? "pack" : "packs"} of ${packSize}`;
}
