/** A block of cells -> rows of what jobs really cost and took, and the headings they are written with. */
import type { Block } from "../core/base/cell";
import type { ActualColumn, ActualRow } from "../core/pricing/actuals/typedActuals";
import type { ColumnRule } from "./headings";
import { typedRows } from "./typedRows";

export const actualColumns: readonly ColumnRule<ActualColumn>[] = [
  { key: "job", label: "Job", words: ["job", "job name", "project"] },
  { key: "kind", label: "Actual of", words: ["actual of"] },
  { key: "name", label: "Name", words: ["name"] },
  { key: "actual", label: "Actual", words: ["actual"] },
];

/** `null` where the block has not the headings of actuals. */
export const readActualTable = (block: Block): readonly ActualRow[] | null =>
  typedRows(block, actualColumns, ["job", "kind", "name", "actual"]);
