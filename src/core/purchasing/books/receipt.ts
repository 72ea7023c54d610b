/** What has come of a sent order at one time. */
import type { Pieces } from "../../base/units";

/** What came of one line, or that no more of it will come. */
export type ReceivedLine = {
  /** Its place among the order's packs, from zero. */
  readonly line: number;
  readonly came: Pieces;
  /** Closed short: what has not come by then will not come, for the receipt's reason. */
  readonly isClosed: boolean;
};

export type Receipt = {
  /** A date serial. */
  readonly day: number;
  readonly who: string;
  /** Why lines were closed short; the empty text where none was. */
  readonly reason: string;
  readonly lines: readonly ReceivedLine[];
};
