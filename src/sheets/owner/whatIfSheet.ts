/**
 * What-if over all jobs: changes are typed at the head of the sheet, and every job's cost, margin, the
 * price that keeps its target and the discount that loses it follow as live formulas. Below, what
 * moves each job's margin most, by the owner's ranges.
 *
 * The formulas work on each job's cost as a sum of products (`costModel`): as estimated to the cent, and
 * with changes within a cent for each line of the roll-up, or what a hundredth of an hour costs.
 */
import { factorWords } from "../../core/pricing/chances/factorWords";
import { costModel, modelledMargin, type CostModel } from "../../core/pricing/rates/costModel";
import { shareOf, type Percent } from "../../core/pricing/rates/percent";
import type { RollUp } from "../../core/pricing/rollup/rollUp";
import type { RollUpInput } from "../../core/pricing/rollup/rollUpInput";
import type { SwingEffect } from "../../core/pricing/chances/swings";
import type { Drawing, DrawnCell, DrawnRow } from "../../workbook/drawing";
import { bandRow, blankRow, formula, headingRow, number, row, text, wordsRow } from "../cells";
import { fittedRow } from "../fittedRow";
import { printSetup } from "../printSetup";
import { at, down } from "../reference";

export type WhatIfJob = {
  readonly job: string;
  readonly input: RollUpInput;
  readonly rollUp: RollUp;
  readonly target: Percent;
  /** Widest first. */
  readonly swings: readonly SwingEffect[];
};

const headings = [
  { words: "Job", width: 32 },
  { words: "Material", width: 14, numbers: true, note: "With all that comes on it." },
  { words: "Labour", width: 14, numbers: true, note: "With all that comes on it." },
  { words: "Freight", width: 14, numbers: true, note: "With all that comes on it." },
  {
    words: "Other cost",
    width: 14,
    numbers: true,
    note: "Equipment, subcontract, allowances with all that comes on them, and cents of rounding.",
  },
  { words: "Bond", width: 9, numbers: true, note: "Of the price." },
  { words: "Price as bid", width: 14, numbers: true },
  { words: "Target margin", width: 9, numbers: true },
  { words: "Price then", width: 14, numbers: true },
  { words: "Cost then", width: 14, numbers: true },
  { words: "Profit then", width: 14, numbers: true },
  { words: "Margin then", width: 9, numbers: true },
  { words: "Price that keeps the target", width: 14, numbers: true },
  {
    words: "Discount that loses it",
    width: 14,
    numbers: true,
    note: "A cent more than this. Below zero, so much is missing.",
  },
] as const;
const widths = headings.map((column) => column.width);
const width = headings.length;

/** The changes that can be typed, and the row of each. */
const changes = ["Material", "Labour hours", "Wages", "Freight", "Discount"] as const;
const firstChange = 3;
const changeCell = (change: (typeof changes)[number]): string =>
  at(firstChange + changes.indexOf(change), 1, true);

export function whatIfSheet(jobs: readonly WhatIfJob[], currencySign: string): Drawing {
  const head: readonly DrawnRow[] = [
    wordsRow("What if", "title", width, { height: 26 }),
    wordsRow(
      `Amounts in ${currencySign}. Type changes such as 10% or -5%: all that is below follows. The price as bid is held while costs move.`,
      "subtitle",
      width,
    ),
    blankRow,
    ...changes.map((change) =>
      row(text(change), number(0, "percent", { look: "input" }), text(changeSays[change])),
    ),
    blankRow,
    fittedRow(headingRow(headings), widths),
  ];
  const first = head.length;
  const last = first + jobs.length - 1;
  const sum = (column: number, value: number): DrawnCell =>
    formula(jobs.length === 0 ? "=0" : `=SUM(${down(column, first, last)})`, value, "money");
  const models = jobs.map(({ input, rollUp }) => costModel(input, rollUp));
  const all = (of: (model: CostModel) => number): number =>
    models.reduce((total, model) => total + of(model), 0) / 100;
  const [price, cost] = [all((model) => model.price), all(costOf)];
  return {
    name: "What-if",
    mark: { kind: "what-if", subject: "" },
    columnWidths: widths,
    rows: [
      ...head,
      ...jobs.map((job, index) => jobRow(job, models[index], first + index)),
      bandRow("total", width, {
        0: text("All jobs"),
        6: sum(6, price),
        8: sum(8, price),
        9: sum(9, cost),
        10: sum(10, price - cost),
        11: formula(
          `=IF(${at(last + 1, 8)}=0,"",${at(last + 1, 10)}/${at(last + 1, 8)})`,
          price === 0 ? "" : (price - cost) / price,
          "percent",
        ),
      }),
      blankRow,
      wordsRow(
        "What moves each margin most: one figure at a time from the low to the high end of its range",
        "group",
        width,
      ),
      headingRow(swingHeadings),
      ...jobs.flatMap(({ job, swings }) => swings.map((swing) => swingRow(job, swing))),
    ],
    frozenRows: 0,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: first - 1,
      subject: "",
      title: "What if",
      caution: "",
    }),
  };
}

const changeSays: Readonly<Record<(typeof changes)[number], string>> = {
  Material: "all families",
  "Labour hours": "of every role",
  Wages: "per hour, of every role",
  Freight: "",
  Discount: "off the price",
};

const swingHeadings = [
  { words: "Job" },
  { words: "Low", numbers: true },
  { words: "Margin there", numbers: true },
  { words: "High", numbers: true },
  { words: "Margin there", numbers: true },
  { words: "Swing", numbers: true },
  { words: "Figure" },
  { words: "" },
  { words: "" },
];

const swingRow = (job: string, swing: SwingEffect): DrawnRow => {
  const margin = (value: number | null): DrawnCell =>
    value === null ? text("") : number(value, "percent");
  const cells = row(
    text(job),
    number(shareOf(swing.low), "percent"),
    margin(swing.marginAtLow),
    number(shareOf(swing.high), "percent"),
    margin(swing.marginAtHigh),
    number(swing.swing, "percent"),
    text(factorWords(swing.factor), { span: 3 }),
  );
  return fittedRow(cells, widths);
};

const materialOf = ({ material }: CostModel): number =>
  material.reduce((sum, { coefficient }) => sum + coefficient, 0);

/** As estimated, in cents: the roll-up's. */
const costOf = (model: CostModel): number =>
  Math.round(
    model.fixed + materialOf(model) + model.labour + model.freight + model.bond * model.price,
  );

function jobRow({ job, target }: WhatIfJob, model: CostModel | undefined, place: number): DrawnRow {
  if (model === undefined) return row(text(job));
  const cell = (column: number): string => at(place, column);
  const money = (value: number): DrawnCell => number(value / 100, "money");
  const cost = costOf(model);
  const withoutBond = cost - model.bond * model.price;
  const left = 1 - shareOf(target) - model.bond;
  // Six decimals are what a sheet keeps of a sum: a cent is not owed for what doubles leave.
  const keeps = Math.ceil(Number((withoutBond / left).toFixed(4)));
  const direct =
    `${cell(1)}*(1+${changeCell("Material")})` +
    `+${cell(2)}*(1+${changeCell("Labour hours")})*(1+${changeCell("Wages")})` +
    `+${cell(3)}*(1+${changeCell("Freight")})+${cell(4)}`;
  const isPriced = model.price > 0;
  const cells = row(
    text(job),
    money(materialOf(model)),
    money(model.labour),
    money(model.freight),
    money(model.fixed),
    number(model.bond, "rate"),
    money(model.price),
    number(shareOf(target), "rate"),
    formula(`=ROUND(${cell(6)}*(1-${changeCell("Discount")}),2)`, model.price / 100, "money"),
    formula(`=ROUND(${direct}+${cell(5)}*${cell(8)},2)`, cost / 100, "money"),
    formula(`=${cell(8)}-${cell(9)}`, (model.price - cost) / 100, "money"),
    formula(
      `=IF(${cell(8)}=0,"",${cell(10)}/${cell(8)})`,
      isPriced ? modelledMargin(model, asEstimatedFactors(model)) : "",
      "percent",
    ),
    formula(
      `=ROUNDUP(ROUND((${cell(9)}-${cell(5)}*${cell(8)})/(1-${cell(7)}-${cell(5)}),6),2)`,
      keeps / 100,
      "money",
    ),
    formula(`=ROUND(${cell(8)}-${cell(12)},2)`, (model.price - keeps) / 100, "money"),
  );
  return fittedRow(cells, widths);
}

const asEstimatedFactors = ({ material }: CostModel) => ({
  material: material.map(() => 1),
  hours: 1,
  rate: 1,
  freight: 1,
  price: 1,
});
