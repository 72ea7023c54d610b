/** One job on the hardware sheet: what was counted and what was not, its lines by family, its totals. */
import type { JobEstimate, PartlyCounted } from "../core/estimate/estimate";
import { sizeTexts, type SizeText } from "../core/takeoff/sizeTexts";
import { unitCostNumber } from "../core/money/writeMoney";
import type { MaterialLine } from "../core/pricing/material";
import type { DrawnCell, DrawnRow } from "../workbook/drawing";
import { bandRow, blankRow, formula, number, text, wordsRow } from "./cells";
import type { HardwareColumnKey } from "./hardwareColumns";
import type { HardwareWish } from "./hardwareWish";
import { at, exactKey, lookUp, rounded, sumOf } from "./reference";

type ColumnOf = (key: HardwareColumnKey) => number | null;

/** The rows of a job, the first of which stands in row `start` (from zero) of the sheet. */
export function jobSection(
  job: JobEstimate,
  wish: HardwareWish,
  start: number,
  width: number,
  columnOf: ColumnOf,
): readonly DrawnRow[] {
  const rows: DrawnRow[] = [];
  const here = (): number => start + rows.length;
  const costColumn = columnOf("cost");
  const weightColumn = columnOf("weight");

  rows.push(bandRow("total", width, { 0: text(`${job.job}: ${countedWords(job)}`) }));
  if (job.uncounted.length > 0) rows.push(wordsRow(uncountedWords(job), "stop", width));
  for (const partly of job.partly) rows.push(wordsRow(partlyWords(partly), "stop", width));

  const sizeText = sizeTexts(job.takeOff.lines, wish.lengths);
  const subtotalRows: number[] = [];
  for (const family of job.material.families) {
    const lines = job.material.lines.filter((line) => familyOf(line) === family.family);
    rows.push(bandRow("group", width, { 0: text(family.family) }));
    const lineRows = lines.map((line) => {
      const row = here();
      rows.push(lineRow(line, wish, sizeText, row, width, columnOf));
      return row;
    });
    subtotalRows.push(here());
    rows.push(
      bandRow("muted", width, {
        1: text(`${family.family}, together`),
        ...(costColumn === null
          ? {}
          : { [costColumn]: formula(sumOf(costColumn, lineRows), family.cost / 100, "money") }),
        ...(weightColumn === null
          ? {}
          : {
              [weightColumn]: formula(
                sumOf(weightColumn, lineRows),
                lines.reduce((sum, line) => sum + (line.weight ?? 0), 0),
                "weight",
              ),
            }),
      }),
    );
  }

  rows.push(
    bandRow("total", width, {
      1: text(`${job.job}: material${job.material.unpriced.length > 0 ? " that is priced" : ""}`),
      ...(costColumn === null
        ? {}
        : {
            [costColumn]: formula(
              sumOf(costColumn, subtotalRows),
              (job.material.total ?? 0) / 100,
              "money",
            ),
          }),
      ...(weightColumn === null
        ? {}
        : {
            [weightColumn]: formula(
              sumOf(weightColumn, subtotalRows),
              job.material.weight,
              "weight",
            ),
          }),
    }),
  );
  const { unpriced, unweighed } = job.material;
  if (wish.withCosts && unpriced.length > 0) {
    rows.push(wordsRow(`Not priced, and not in the total: ${unpriced.join(", ")}`, "warn", width));
  }
  if (unweighed.length > 0) {
    rows.push(
      wordsRow(`Not weighed, and not in the total: ${unweighed.join(", ")}`, "warn", width),
    );
  }
  rows.push(blankRow);
  return rows;
}

const familyOf = (line: MaterialLine): string => line.item?.family ?? "Not in the items table";

function countedWords(job: JobEstimate): string {
  const counted = job.rows - job.uncounted.length;
  const doors = job.takeOff.openings
    .filter((opening) => !job.takeOff.stopped.includes(opening))
    .reduce((sum, opening) => sum + opening.quantity, 0);
  const alike = doors === counted ? "" : `, ${doors} with those alike`;
  return `${counted} of ${job.rows} openings counted${alike}`;
}

const uncountedWords = (job: JobEstimate): string =>
  `NOT COMPLETE. Not counted here: ${marksText(job.uncounted)}. The Findings sheet says why.`;

function partlyWords({ type, badRows, openings }: PartlyCounted): string {
  const rows = badRows === 1 ? "A row" : `${badRows} rows`;
  const work = badRows === 1 ? "does" : "do";
  return `NOT COMPLETE. ${rows} of the kit book for ${type} ${work} not work, so parts of these may be missing: ${marksText(openings)}. The Findings sheet says why.`;
}

function marksText(rows: readonly { readonly mark: string }[]): string {
  const shown = rows.slice(0, 12).map(({ mark }) => mark);
  const more = rows.length > 12 ? ` and ${rows.length - 12} more` : "";
  return shown.join(", ") + more;
}

function lineRow(
  { line, item, spares, toOrder, unitsEach, cost, weight }: MaterialLine,
  wish: HardwareWish,
  sizeText: SizeText,
  row: number,
  width: number,
  columnOf: ColumnOf,
): DrawnRow {
  const cells = new Array<DrawnCell | null>(width).fill(null);
  const put = (key: HardwareColumnKey, cell: DrawnCell): void => {
    const column = columnOf(key);
    if (column !== null) cells[column] = cell;
  };
  const ref = (key: HardwareColumnKey): string => {
    const column = columnOf(key);
    return column === null ? "0" : at(row, column);
  };

  put("item", text(line.item));
  put("description", text(item?.description ?? "Not in the items table"));
  put("size", text(sizeText(line), { align: "right" }));
  put("quantity", number(line.quantity, "count"));
  put("spares", number(spares, "count", { look: "input" }));
  put("toOrder", formula(`${ref("quantity")}+${ref("spares")}`, toOrder, "count"));
  put("unit", text(item?.unit.label ?? "", { align: "center" }));
  put("unitsEach", unitsEach === null ? text("") : number(unitsEach, "decimal"));
  const unitCost = item?.unitCost ?? null;
  if (unitCost === null || unitsEach === null || cost === null) {
    put("unitCost", text("not priced", { look: "warn", align: "right" }));
    put("cost", text("not priced", { look: "warn", align: "right" }));
  } else {
    const price = unitCostNumber(unitCost);
    const fromItems =
      wish.items === null ? null : lookUp(exactKey(ref("item"), line.item), wish.items);
    put(
      "unitCost",
      fromItems === null
        ? number(price, "unitCost", { look: "input" })
        : formula(fromItems, price, "unitCost"),
    );
    put(
      "cost",
      formula(
        rounded(`${ref("toOrder")}*${ref("unitsEach")}*${ref("unitCost")}`, 2),
        cost / 100,
        "money",
      ),
    );
  }
  const weightEach = item?.weight ?? null;
  if (weightEach === null || weight === null) {
    put("weightEach", text("not weighed", { look: "warn", align: "right" }));
    put("weight", text("not weighed", { look: "warn", align: "right" }));
  } else {
    put("weightEach", number(weightEach, "decimal"));
    put(
      "weight",
      formula(`${ref("toOrder")}*${ref("unitsEach")}*${ref("weightEach")}`, weight, "weight"),
    );
  }
  return { cells };
}
