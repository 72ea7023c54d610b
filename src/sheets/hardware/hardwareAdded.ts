/** The rows of a job that a person adds by hand: those that are there, and some to type into. */
import type { AddedEntry } from "../../core/corrections/correctJob";
import { readPieces } from "../../core/corrections/addedLine";
import { nothingTyped, type TypedRow } from "../../core/corrections/correction";
import type { AddedName } from "../../core/corrections/rowName";
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { addedFamily, type MaterialLine } from "../../core/pricing/material";
import type { DrawnCell, DrawnRow } from "../../workbook/drawing";
import { blank, number, text } from "../cells";
import {
  cellsRow,
  band,
  referencesIn,
  type CellsByColumn,
  type HardwareLayout,
} from "./hardwareLayout";
import { nameCell, sparesCell, textInput, workedCells } from "./hardwareLine";
import { totalRow } from "./hardwareTotals";
import { shownWeight } from "./hardwareWeights";

/** How many rows are left blank to type into. */
const blankRows = 3;

export type AddedRows = {
  readonly rows: readonly DrawnRow[];
  /** The row of its subtotal; `null` where nothing that was added counts. */
  readonly subtotal: number | null;
};

/** The rows from row `start` (from zero) of the sheet on. */
export function addedRows(layout: HardwareLayout, job: JobEstimate, start: number): AddedRows {
  const { added } = job.corrections;
  const family = job.material.families.find((each) => each.family === addedFamily);
  const materials = new Map(job.material.lines.map((each) => [each.line, each]));
  const rows: DrawnRow[] = [
    band(layout, "group", {
      item: text(addedFamily),
      description: text(
        "Type an item, a size, a quantity, a reason and your initials. It is kept, and priced when you take off again.",
      ),
    }),
  ];
  const counted: number[] = [];
  let weight = 0;
  for (const entry of added) {
    const row = start + rows.length;
    const material = entry.line === null ? undefined : materials.get(entry.line);
    if (material !== undefined) counted.push(row);
    if (material !== undefined) weight += shownWeight(layout, material) ?? 0;
    rows.push(addedRow(layout, entry, material, row));
  }
  const last = Math.max(0, ...added.map(({ row }) => row.name.number));
  for (let count = 1; count <= blankRows; count += 1) {
    const name: AddedName = { kind: "added", job: job.job, number: last + count };
    rows.push(blankInput(layout, name));
  }
  if (family === undefined) return { rows, subtotal: null };
  const subtotal = start + rows.length;
  const sums = { cost: family.cost, weight };
  rows.push(totalRow(layout, "muted", `${addedFamily}, together`, counted, sums));
  return { rows, subtotal };
}

function addedRow(
  layout: HardwareLayout,
  { row: { name, typed }, line }: AddedEntry,
  material: MaterialLine | undefined,
  row: number,
): DrawnRow {
  const ref = referencesIn(layout, row);
  const worked =
    material === undefined
      ? { spares: textInput(typed.spares, { align: "right" }) }
      : { spares: sparesCell(material, ref("quantity")), ...workedCells(layout, material, row) };
  return cellsRow(layout, {
    ...typedCells(typed, line !== null),
    description: text(
      material === undefined ? "" : (material.item?.description ?? "Not in the items table"),
    ),
    ...worked,
    line: nameCell(name),
  });
}

/** The cells of a row added by hand as they were typed. */
export function typedCells(typed: TypedRow, isCounted: boolean): CellsByColumn {
  return {
    item: textInput(typed.item),
    size: textInput(typed.size, { align: "right" }),
    // A row added by hand has a quantity of its own; what is typed here as well is kept as it is.
    correction: textInput(typed.correction, { align: "right" }),
    reason: textInput(typed.reason),
    by: textInput(typed.by),
    quantity: quantityCell(typed.quantity, isCounted),
  };
}

function quantityCell(typed: string, isCounted: boolean): DrawnCell {
  const count = readPieces(typed);
  if (typed === "") return blank({ look: "input", format: "count", input: true });
  const look = isCounted ? "note" : "stop";
  return isCounted && count !== null
    ? number(count, "count", { look, input: true })
    : textInput(typed, { look, align: "right" });
}

const blankInput = (layout: HardwareLayout, name: AddedName): DrawnRow =>
  cellsRow(layout, {
    ...typedCells(nothingTyped, false),
    spares: textInput("", { format: "count" }),
    line: nameCell(name),
  });
