/** What a hardware sheet is asked to show. */
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import type { LengthStyle } from "../../core/lengths/writeLength";
import type { LostJob } from "../../core/corrections/corrections";
import type { LookUpTable } from "../reference";

export type HardwareWish = {
  readonly jobs: readonly JobEstimate[];
  readonly lengths: LengthStyle;
  readonly withCosts: boolean;
  /** Written before an amount in the headings, such as `$`. */
  readonly currencySign: string;
  /** The items sheet of the same workbook, so that a price changed there moves the totals; else `null`. */
  readonly items: LookUpTable | null;
  /** What was typed for jobs that are gone and is shown on this sheet; nothing where absent. */
  readonly lost?: readonly LostJob[];
  /** What the count stands on, such as `Starter kit book · invented starter prices`. */
  readonly basis: string;
};
