/** A block of cells -> rows of an owner's ranges, and the headings they are written with. */
import type { Block } from "../core/base/cell";
import type { RangeColumn, RangeRow } from "../core/pricing/rates/rangeRows";
import type { ColumnRule } from "./headings";
import { typedRows } from "./typedRows";

export const rangeColumns: readonly ColumnRule<RangeColumn>[] = [
  { key: "subject", label: "Range of", words: ["range of", "range"] },
  { key: "job", label: "Job", words: ["job", "job name", "project"] },
  { key: "low", label: "Lowest", words: ["lowest", "low", "least"] },
  { key: "likely", label: "Most likely", words: ["most likely", "likely"] },
  { key: "high", label: "Highest", words: ["highest", "high", "most"] },
  { key: "shape", label: "Shape", words: ["shape"] },
];

/** `null` where the block has not the headings of ranges. */
export const readRangeTable = (block: Block): readonly RangeRow[] | null =>
  typedRows(block, rangeColumns, ["subject", "low", "high"]);
