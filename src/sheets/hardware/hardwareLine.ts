/** The cells of a hardware line: those that a person types into, and those that follow from them. */
import { writeChange } from "../../core/corrections/change";
import type { CorrectedLine } from "../../core/corrections/correctedLine";
import { lineName, writeRowName, type RowName } from "../../core/corrections/rowName";
import type { SparesPolicy } from "../../core/pricing/item";
import { unitCostNumber } from "../../core/money/writeMoney";
import type { MaterialLine } from "../../core/pricing/material";
import type { SizeText } from "../../core/takeoff/sizeTexts";
import type { DrawnCell, DrawnRow } from "../../workbook/drawing";
import { blank, formula, number, text, type Dress } from "../cells";
import { correctedFormula, sparesFormula } from "./hardwareFormulas";
import { cellsRow, referencesIn, type CellsByColumn, type HardwareLayout } from "./hardwareLayout";
import { shownWeight, shownWeightEach } from "./hardwareWeights";
import { exactKey, lookUp, rounded } from "../reference";

/** A cell for text that a person types; kept as text, so that `+3` and `7-0` stay what they are. */
export const textInput = (words: string, dress: Dress = {}): DrawnCell =>
  text(words, { look: "input", format: "text", input: true, ...dress });

/**
 * The name of a row, in the column at the end. It starts at the left, so that a long one runs out of
 * what is printed and not into it.
 */
export const nameCell = (name: RowName): DrawnCell => text(writeRowName(name), { look: "muted" });

/** One line of `job` that is counted, in row `row` (from zero) of the sheet. */
export function lineRow(
  layout: HardwareLayout,
  job: string,
  material: MaterialLine,
  sizeText: SizeText,
  row: number,
): DrawnRow {
  const { line, item } = material;
  const ref = referencesIn(layout, row);
  const typed = line.typed?.typed;
  return cellsRow(layout, {
    item: text(line.item),
    description: text(item?.description ?? "Not in the items table"),
    size: text(sizeText(line), { align: "right" }),
    counted: number(line.counted, "count"),
    // In the one spelling that the formula beside it reads.
    correction: textInput(
      line.change === null ? (typed?.correction ?? "") : writeChange(line.change),
      {
        align: "right",
        ...(isUnused(line) ? { look: "warn" } : {}),
      },
    ),
    reason: textInput(typed?.reason ?? ""),
    by: textInput(typed?.by ?? ""),
    quantity: formula(correctedFormula(ref("counted"), ref("correction")), line.quantity, "count", {
      ...(line.change === null ? {} : { look: "note" }),
    }),
    spares: sparesCell(material, ref("quantity")),
    ...workedCells(layout, material, row),
    line: nameCell(lineName(job, line)),
  });
}

const isUnused = ({ typed, change }: CorrectedLine): boolean =>
  change === null && (typed?.typed.correction ?? "") !== "";

/** By the item's rule as a formula, or as typed. */
export function sparesCell({ line, item, spares }: MaterialLine, quantity: string): DrawnCell {
  const typed = line.typed?.typed.spares ?? "";
  const isOwn = line.ownSpares !== null;
  if (!isOwn && typed !== "") return textInput(typed, { look: "warn", align: "right" });
  const dress = { look: isOwn ? "note" : "input", input: true } as const;
  return isOwn || item === null || !givesSpares(item.spares)
    ? number(spares, "count", dress)
    : formula(sparesFormula(quantity, item.spares), spares, "count", dress);
}

const givesSpares = ({ percent, least }: SparesPolicy): boolean => percent > 0 || least > 0;

/** What follows from the quantity and the spares: what to order, its cost and its weight. */
export function workedCells(
  layout: HardwareLayout,
  material: MaterialLine,
  row: number,
): CellsByColumn {
  const { line, item, toOrder, unitsEach, cost } = material;
  const ref = referencesIn(layout, row);
  const notPriced = text("not priced", { look: "warn", align: "right" });
  const notWeighed = text("not weighed", { look: "warn", align: "right" });
  const unitCost = item?.unitCost ?? null;
  const weightEach = shownWeightEach(layout, material);
  const weight = shownWeight(layout, material);
  const isPriced = unitCost !== null && unitsEach !== null && cost !== null;
  const isWeighed = weightEach !== null && weight !== null;
  const units = `${ref("toOrder")}*${ref("unitsEach")}`;
  return {
    toOrder: formula(`${ref("quantity")}+${ref("spares")}`, toOrder, "count"),
    unit: text(item?.unit.label ?? "", { align: "center" }),
    unitsEach: unitsEach === null ? blank() : number(unitsEach, "decimal"),
    unitCost: isPriced
      ? unitCostCell(layout, line.item, ref("item"), unitCostNumber(unitCost))
      : notPriced,
    cost: isPriced
      ? formula(rounded(`${units}*${ref("unitCost")}`, 2), cost / 100, "money")
      : notPriced,
    weightEach: isWeighed ? number(weightEach, "decimal") : notWeighed,
    weight: isWeighed ? formula(`${units}*${ref("weightEach")}`, weight, "weight") : notWeighed,
  };
}

/** From the workbook's items sheet where there is one, so that a price changed there moves the totals. */
function unitCostCell(
  { wish }: HardwareLayout,
  item: string,
  itemCell: string,
  price: number,
): DrawnCell {
  if (wish.items === null) return number(price, "unitCost");
  return formula(lookUp(exactKey(itemCell, item), wish.items), price, "unitCost");
}
