/** A count as it was frozen: enough of it to say later what has changed. */
import type { Cents, Inches, Pieces, TenThousandths } from "../base/units";
import type { Field } from "../kitbook/fields";

/** What an opening's field held; a blank field is left out. Lengths are inches; an error is its text. */
export type IssuedValue = string | number | boolean;

export type IssuedOpening = {
  readonly job: string;
  readonly mark: string;
  /** Its place among the openings of its job, from zero. */
  readonly position: number;
  /** How many alike; `null` for a row that could not be read. */
  readonly quantity: number | null;
  readonly type: string;
  readonly isCounted: boolean;
  /** By field name, without job, mark, quantity and type. */
  readonly fields: Readonly<Record<string, IssuedValue>>;
};

export type IssuedLine = {
  readonly job: string;
  readonly item: string;
  /** Inches: none, a cut length, or width and height. */
  readonly size: readonly Inches[];
  /** After corrections. */
  readonly quantity: Pieces;
  readonly spares: Pieces;
  readonly unitCost: TenThousandths | null;
  /** `null` where it could not be priced. */
  readonly cost: Cents | null;
};

export type Count = {
  /** ISO 4217 code of the costs. */
  readonly currency: string;
  /** Whether all was counted. */
  readonly isComplete: boolean;
  /** Every field that an opening may have. */
  readonly fields: readonly Field[];
  readonly openings: readonly IssuedOpening[];
  /** No two with the same job, item and size. */
  readonly lines: readonly IssuedLine[];
};

/** What an issue is called, when and by whom it was frozen. */
export type IssueHead = {
  readonly name: string;
  /** A date serial. */
  readonly day: number;
  readonly who: string;
  readonly note: string;
};

export type Issue = IssueHead & { readonly count: Count };

/** Issues are the same issue in any case and with spaces doubled. */
export const issueKey = (name: string): string => name.trim().replace(/\s+/g, " ").toLowerCase();
