/** A row of the rates sheet. */

/** What a rate's value must be. `money` is an amount, `rate` a price per something, to four decimals. */
export type RateKind = "money" | "rate" | "percent" | "number" | "count" | "choice" | "groups";

export type RateRow = {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly kind: RateKind;
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
