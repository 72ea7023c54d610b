/** What a kit book says of one opening, put so that two openings can be compared. */
import type { RowSource } from "../kitbook/kitBook";
import { messageText, slotText, type ShowLength } from "../takeoff/describe";
import {
  eachAt,
  itemsAt,
  limitFault,
  pieceAt,
  refusalsAt,
  speaksAt,
  type RowOutcomes,
} from "./rowOutcomes";

export type SpokenLimit = {
  readonly source: RowSource;
  readonly level: "stop" | "warn" | "note";
  readonly message: string;
};

export type OpeningState = {
  /** Pieces by item, as if nothing were stopped; sizes left out. */
  readonly items: ReadonlyMap<string, number>;
  readonly limits: readonly SpokenLimit[];
  /** Why rows of the book cannot be worked out. */
  readonly faults: readonly string[];
  /** Counts, texts and answers among the sizes, as a person reads them. */
  readonly sizes: ReadonlyMap<string, string>;
  /** Whether a take-off counts the opening: no fault, and no limit that stops it. */
  readonly isCounted: boolean;
};

export function openingState(outcomes: RowOutcomes, row: number, show: ShowLength): OpeningState {
  const { take } = outcomes;
  const limits = outcomes.limits
    .filter((limit) => speaksAt(limit, row))
    .map(({ limit: { source, level, message } }) => ({
      source,
      level,
      message: messageText(take, message, row, show),
    }));
  const faults = refusalsAt(outcomes, row, show).map(({ finding }) => finding.message);
  const steps = take.type.sizes.filter(({ unit }) => unit !== "length" && unit !== "number");
  return {
    items: itemsAt(outcomes, row),
    limits,
    faults,
    sizes: new Map(steps.map(({ name, slot }) => [name, slotText(take, slot, row, show)])),
    isCounted: faults.length === 0 && limits.every(({ level }) => level !== "stop"),
  };
}

/** Alike for two openings exactly where every row of the book does the same for both, sizes of pieces aside. */
export function stateKey(outcomes: RowOutcomes, row: number): string {
  const parts = outcomes.parts.map(({ column, faults }) => {
    const fault = faults.get(row);
    if (fault !== undefined) return fault.key;
    const piece = pieceAt(column, row);
    return piece === null ? "" : `${eachAt(column, row)} ${piece.item.toLowerCase()}`;
  });
  const limits = outcomes.limits.map(
    (limit) => limitFault(outcomes, limit, row, noLength)?.key ?? (speaksAt(limit, row) ? "1" : ""),
  );
  return [...parts, ...limits].join("\n");
}

const noLength: ShowLength = () => "";
