/** A row of the rates sheet. */
import type { MeasureKind } from "../../measures/measures";

/** What a rate's value must be. `money` is an amount, `rate` a price per something, to four decimals. */
export type RateKind = "money" | "rate" | "percent" | "number" | "count" | "choice" | "groups";

export type RateRow = {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly kind: RateKind;
  /** What is measured, where a value may be typed in another unit than `unit`, the core's own. */
  readonly measure?: MeasureKind;
  /** A price by 100 lb, which may be typed by nothing else. */
  readonly isByHundredweight?: true;
  /** As a person would type it; the empty text where nothing is set. */
  readonly starter: string | number;
  readonly says: string;
  /** The most that may be typed, percentages in percent; `mostOf` its kind where absent. */
  readonly most?: number;
  /**
   * Beyond so many percent a typed percentage is doubted: it may be one without its sign. Where that
   * begins is a judgement, with no source.
   */
  readonly usual?: number;
  /** What may be typed, for `choice`, or named, for `groups`. */
  readonly choices?: readonly string[];
};
