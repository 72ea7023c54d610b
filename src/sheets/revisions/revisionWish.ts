/** What a revision sheet is asked to show. */
import type { LengthStyle } from "../../core/lengths/writeLength";
import type { Currency } from "../../core/money/currency";
import type { Comparison } from "../../core/revisions/compareCounts";
import type { OrderedLine } from "../../core/revisions/ordered";

export type RevisionWish = {
  /** What the older and the newer count are called. */
  readonly from: string;
  readonly to: string;
  /** What the only job of the older one was called, where it has another name now. */
  readonly jobWas: string | null;
  readonly comparison: Comparison;
  readonly ordered: readonly OrderedLine[];
  /** False where there is an order book that cannot be read. */
  readonly isOrderedKnown: boolean;
  readonly lengths: LengthStyle;
  readonly currency: Currency;
  readonly withCosts: boolean;
};

/** Columns of the sheet; each part of it uses as many as it needs. Widths in characters. */
export const revisionWidths = [23, 20, 20, 13, 12, 13, 13, 14, 14, 14] as const;
