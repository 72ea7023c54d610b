/** Worksheet functions about prices: margin = profit / price, markup = profit / cost. */
import { cellText, type CellValue } from "../core/base/cell";
import { err, ok, type Result } from "../core/base/result";
import { cents } from "../core/base/units";
import { majorUnits } from "../core/money/writeMoney";
import { marginFromMarkup, markupFromMargin, priceByMargin } from "../core/pricing/margin";
import {
  noPercent,
  percentText,
  percentOfShare,
  readPercent,
  shareOf,
  type Percent,
} from "../core/pricing/rates/percent";
import { leastPercent, mostPercent } from "../core/pricing/rollup/priceRule";
import { oneValue, wrong } from "./openingArguments";
import type {
  FunctionArgument,
  FunctionFault,
  FunctionInput,
  WorksheetFunction,
} from "./worksheetFunction";

const marginArgument: FunctionArgument = {
  name: "margin",
  says: "profit / price, such as 25%",
  optional: false,
  takes: "value",
};

/** The most that a cost may be, in currency units: its cents are then exact. */
const mostCost = 1e9;

function percentGiven(
  input: FunctionInput,
  kind: "margin" | "markup",
): Result<Percent, FunctionFault> {
  const value = oneValue(input);
  const read = readShare(value);
  if (read === null) return err(wrong(kind, "it is not a percentage"));
  if (read < leastPercent || read > mostPercent[kind]) {
    const range = `from ${percentText(leastPercent)} to ${percentText(mostPercent[kind])}`;
    return err(wrong(kind, `it is ${percentText(read)}, and may be ${range}`));
  }
  return ok(read);
}

/**
 * A number is the share itself, since cells hold shares and a markup may be above 200 %: only text
 * such as `25` or `25 %` is in percent.
 */
function readShare(value: CellValue | undefined): Percent | null {
  if (typeof value === "string") return readPercent(value)?.percent ?? null;
  const isShare = typeof value === "number" && Math.abs(value) <= 1e6;
  return isShare ? percentOfShare(value) : null;
}

export const priceFunctions: readonly WorksheetFunction[] = [
  {
    name: "PRICE",
    says: "The price of which a margin is left: cost / (1 - margin), to the cent.",
    arguments: [
      { name: "cost", says: "what it costs", optional: false, takes: "value" },
      marginArgument,
    ],
    answers: "number",
    example: "=CRIB.PRICE(1500, 25%)",
    run: ([costGiven = null, margin = null]) => {
      const cost = oneValue(costGiven);
      if (typeof cost !== "number" || !(cost >= 0 && cost <= mostCost)) {
        const found = cost === undefined ? "several cells" : cellText(cost);
        return err(wrong("cost", `it is ${found}, and not a number from 0 to ${mostCost}`));
      }
      const read = percentGiven(margin, "margin");
      if (!read.ok) return read;
      return ok(majorUnits(priceByMargin(cents(Math.round(cost * 100)), read.value, noPercent)));
    },
  },
  {
    name: "MARKUP",
    says: "The markup (profit / cost) that comes to a margin (profit / price).",
    arguments: [marginArgument],
    answers: "number",
    example: "=CRIB.MARKUP(20%)",
    run: ([margin = null]) => {
      const read = percentGiven(margin, "margin");
      return read.ok ? ok(shareOf(markupFromMargin(read.value))) : read;
    },
  },
  {
    name: "MARGIN",
    says: "The margin (profit / price) that comes of a markup (profit / cost).",
    arguments: [
      { name: "markup", says: "profit / cost, such as 25%", optional: false, takes: "value" },
    ],
    answers: "number",
    example: "=CRIB.MARGIN(25%)",
    run: ([markup = null]) => {
      const read = percentGiven(markup, "markup");
      return read.ok ? ok(shareOf(marginFromMarkup(read.value))) : read;
    },
  },
];
