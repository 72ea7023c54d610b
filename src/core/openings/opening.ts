/** A checked opening. Only `checkOpenings` makes one from a schedule. */
import type { CellPlace } from "../base/cell";
import type { Finding } from "../base/finding";
import type { Pieces } from "../base/units";
import type { FormulaValue } from "../formulas/value";

export type Opening = {
  /** The schedule row's first cell. */
  readonly place: CellPlace;
  readonly job: string;
  /** Never empty: a row without a mark goes by its row number. */
  readonly mark: string;
  /** How many alike; one or more. */
  readonly quantity: Pieces;
  /** The opening type as the kit book names it. */
  readonly type: string;
  /**
   * What formulas read, by field name. Lengths are inches; `null` is blank or no such column.
   */
  readonly fields: Readonly<Record<string, FormulaValue>>;
  /** Where each field was typed; a field is absent where the schedule has no such column. */
  readonly places: Readonly<Record<string, CellPlace | null>>;
};

/** A schedule row that cannot be counted, and why: at least one of its findings is a stop. */
export type UncountedRow = {
  readonly place: CellPlace;
  readonly job: string;
  readonly mark: string;
  readonly findings: readonly Finding[];
};
