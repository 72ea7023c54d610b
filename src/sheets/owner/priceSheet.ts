/**
 * The price sheet of a job: its roll-up, line by line, as live formulas. A typed quantity, rate or
 * amount can be changed on the sheet, and everything below follows.
 */
import { majorUnits, moneyText, unitCostNumber } from "../../core/money/writeMoney";
import type { MeasureStyle } from "../../core/measures/measures";
import { shownAmount, shownUnit } from "../../core/measures/writeMeasure";
import { otherWork, type JobHours } from "../../core/pricing/hours";
import type { JobPrice } from "../../core/pricing/priceJob";
import { amountFormula, baseFormula, ratioFormula } from "../../core/pricing/rollup/lineRules";
import { shareOf } from "../../core/pricing/rates/percent";
import type { LineKey, RollUpLine } from "../../core/pricing/rollup/rollUpLine";
import type { Drawing, DrawnCell, DrawnRow, Look } from "../../workbook/drawing";
import { blank, blankRow, formula, headingRow, number, row, text, wordsRow } from "../cells";
import { caution } from "../caution";
import { fittedRow, joinedRow, titleRow } from "../fittedRow";
import { printSetup } from "../printSetup";
import { at } from "../reference";

const headings = [
  { words: "Line", width: 44 },
  { words: "Of", width: 16, numbers: true },
  { words: "Unit", width: 16 },
  { words: "At", width: 14, numbers: true },
  { words: "Amount", width: 16, numbers: true },
  { words: "How", width: 64 },
] as const;

const widths: readonly number[] = headings.map(({ width }) => width);

const baseColumn = 1;
const rateColumn = 3;
const amountColumn = 4;

export function priceSheet(
  price: JobPrice,
  currencySign: string,
  style: MeasureStyle = "pounds",
): Drawing {
  const { rollUp, job } = price;
  const width = headings.length;
  const above: DrawnRow[] = [
    titleRow(`Price: ${job}`, widths),
    wordsRow(
      `Amounts in ${currencySign}. For the firm only: not for the customer.`,
      "subtitle",
      width,
    ),
    wordsRow(caution, "caution", width),
    ...(rollUp.notPriced.length === 0
      ? []
      : [
          joinedRow(
            `NOT COMPLETE: cost and price are only a least. Not in them: ${rollUp.notPriced.join(", ")}.`,
            "stop",
            widths,
          ),
        ]),
    blankRow,
    headingRow(headings),
  ];
  const heading = above.length - 1;
  const places = new Map(rollUp.lines.map((line, index) => [line.key, heading + 1 + index]));
  const amountCell = (key: LineKey): string => at(places.get(key) ?? 0, amountColumn, true);
  const rateCell = (key: LineKey): string => at(places.get(key) ?? 0, rateColumn, true);
  const lines = rollUp.lines.map((line, index) =>
    lineRow(line, heading + 1 + index, amountCell, rateCell),
  );
  const ratios = rollUp.ratios.map(({ label, part, whole, words, value }) =>
    row(
      text(label, { look: "total" }),
      text("", { look: "total" }),
      text("", { look: "total" }),
      text("", { look: "total" }),
      formula(ratioFormula(amountCell(part), amountCell(whole)), value ?? "", "percent", {
        look: "total",
      }),
      text(words, { look: "total" }),
    ),
  );
  const { hours, shipment, freight } = price;
  return {
    name: `Price ${job}`,
    mark: { kind: "price", subject: job },
    columnWidths: widths,
    rows: [
      ...above,
      ...lines,
      ...ratios,
      ...alternateRows(price),
      blankRow,
      wordsRow("Where hours and freight come from", "group", width),
      row(
        text("Hours"),
        number(hours.hundredths / 100, "hours"),
        text("hours"),
        blank(),
        blank(),
        text(
          hours.days === 1
            ? "1 working day of the crew; these are its parts"
            : `${hours.days} working days of the crew; these are its parts`,
          setIn,
        ),
      ),
      ...hourParts(hours).map(({ name, minutes, says }) =>
        row(
          text(`  ${name}`),
          number(minutes / 60, "hours"),
          text("hours"),
          blank(),
          blank(),
          text(says, setIn),
        ),
      ),
      row(
        text("Shipment"),
        number(shownAmount(shipment.weight, "weight", style), "weight"),
        text(shownUnit("weight", style).name),
        blank(),
        blank(),
        text(shipment.because, setIn),
      ),
      row(
        text("Freight"),
        blank(),
        blank(),
        blank(),
        blank(),
        text(freight?.because ?? "no freight rates are set", setIn),
      ),
    ],
    frozenRows: heading + 1,
    frozenColumns: 1,
    tables: [],
    choices: [],
    print: printSetup({
      orientation: "landscape",
      headingRow: heading,
      subject: job,
      title: "Price",
      caution,
    }),
  };
}

type HourPart = { readonly name: string; readonly minutes: number; readonly says: string };

/** What the hours add up from: each bag, what comes with each opening, what comes with the job. */
function hourParts({ bags, fixed }: JobHours): readonly HourPart[] {
  const ofJob = fixed.reduce((sum, { minutes }) => sum + minutes, 0);
  const other = bags.find(({ bag }) => bag === otherWork)?.minutes ?? 0;
  const parts: readonly HourPart[] = [
    ...bags
      .filter(({ bag }) => bag !== otherWork)
      .map(({ bag, minutes }) => ({ name: bag, minutes, says: "" })),
    {
      name: "Each opening",
      minutes: other - ofJob,
      says: "times of an opening that are in no bag",
    },
    ...fixed.map(({ says, minutes }) => ({ name: "The job", minutes, says })),
  ];
  // A millionth of a minute is what doubles leave where there is none.
  return parts.filter(({ minutes }) => Math.abs(minutes) > 1e-6);
}

/** In line with the reasons above, which stand behind amounts. */
const setIn = { setIn: true } as const;

const alternateHeadings = [
  { words: "Alternate or option" },
  { words: "Adds hours", numbers: true },
  { words: "" },
  { words: "Adds to cost", numbers: true },
  { words: "Adds to price", numbers: true },
  { words: "How, and the price with it" },
] as const;

/** Each alternate beside the base: the hours, cost and price that it adds, and the price with it. */
function alternateRows({ alternates }: JobPrice): readonly DrawnRow[] {
  if (alternates.length === 0) return [];
  return [
    blankRow,
    wordsRow(
      "Alternates and options: what each adds as estimated. Changes typed above do not move them.",
      "group",
      headings.length,
    ),
    headingRow(alternateHeadings),
    ...alternates.map(({ name, kind, rollUp, addsCost, addsPrice, addsHours, how, notPriced }) =>
      fittedRow(
        row(
          text(`${name} (${kind})`),
          number(addsHours / 100, "hours"),
          text("hours"),
          number(majorUnits(addsCost), "money"),
          number(majorUnits(addsPrice), "money"),
          text(
            [
              `The price with it is ${moneyText(rollUp.price)}; ${how}.`,
              ...(notPriced.length === 0
                ? []
                : [`Only a least: not in it are ${notPriced.join(", ")}.`]),
            ].join(" "),
          ),
        ),
        headings.map((column) => column.width),
      ),
    ),
  ];
}

const strong = new Set(["direct cost", "cost", "price", "profit", "price with tax"]);

function lineRow(
  line: RollUpLine,
  place: number,
  amountCell: (key: LineKey) => string,
  rateCell: (key: LineKey) => string,
): DrawnRow {
  const look: Look = strong.has(line.key) ? "total" : "body";
  const other =
    line.other === null
      ? null
      : line.rule === "less"
        ? amountCell(line.other)
        : rateCell(line.other);
  const cells = { base: at(place, baseColumn), rate: at(place, rateColumn), other };
  const amount = amountFormula(line, cells);
  return row(
    text(line.label, { look }),
    baseCell(line, look, amountCell),
    text(line.base.kind === "quantity" ? line.base.unit : "", { look }),
    rateCellOf(line, look),
    amount === null
      ? number(majorUnits(line.amount), "money", { look: "input" })
      : formula(amount, majorUnits(line.amount), "money", { look }),
    text(line.wordsByRate ?? line.words, { look }),
  );
}

function baseCell(
  { base }: RollUpLine,
  look: Look,
  amountCell: (key: LineKey) => string,
): DrawnCell {
  if (base.kind === "none") return text("", { look });
  if (base.kind === "quantity") return number(base.value, "decimal", { look: "input" });
  const code = baseFormula(base, amountCell);
  return code === null
    ? number(majorUnits(base.value), "money", { look })
    : formula(code, majorUnits(base.value), "money", { look });
}

function rateCellOf({ rate }: RollUpLine, look: Look): DrawnCell {
  switch (rate.kind) {
    case "none":
      return text("", { look });
    case "each":
      return number(unitCostNumber(rate.value), "unitCost", { look: "input" });
    case "percent":
      return number(shareOf(rate.value), "rate", { look: "input" });
    case "step":
      return number(rate.value, "general", { look: "input" });
  }
}
