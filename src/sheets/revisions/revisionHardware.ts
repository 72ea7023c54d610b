/** Hardware and money on a revision sheet: by line, by item, by job, and what is ordered already. */
import type { Cents, Inches } from "../../core/base/units";
import { writeSize } from "../../core/lengths/writeLength";
import { majorUnits } from "../../core/money/writeMoney";
import type { IssuedLine } from "../../core/revisions/issue";
import type { LineDifference, SumDifference } from "../../core/revisions/compareLines";
import type { DrawnCell, DrawnRow } from "../../workbook/drawing";
import { blank, formula, headingRow, number, row, text, type Heading } from "../cells";
import { at, sumOf } from "../reference";
import type { RevisionWish } from "./revisionWish";

const numbers = (words: string): Heading => ({ words, numbers: true });
/** Headings of two lines. */
const headings = (words: readonly Heading[]): DrawnRow => ({ ...headingRow(words), height: 28 });
const unknown = (): DrawnCell => text("not known", { look: "warn", align: "right" });

/** The lines, of which the first stands in row `start` + 1 (from zero) under their headings. */
export function lineRows(
  { comparison, lengths, currency, withCosts }: RevisionWish,
  start: number,
): readonly DrawnRow[] {
  const { lines, total } = comparison.hardware;
  const money = (amount: Cents): number => majorUnits(amount, currency);
  const isOneCurrency = comparison.currency.from === comparison.currency.to;
  const costOf = (line: IssuedLine | null, isComparable = true): DrawnCell => {
    if (line === null) return number(0, "money");
    if (line.cost === null || !isComparable) return unknown();
    return number(money(line.cost), "money");
  };
  const rows = lines.map((line, index): DrawnRow => {
    const place = start + 1 + index;
    const difference = formula(`${at(place, 4)}-${at(place, 3)}`, line.quantity, "count");
    return row(
      text(line.job),
      text(line.item),
      text(sizeOf(line.size, lengths), { align: "right" }),
      number(line.from?.quantity ?? 0, "count"),
      number(line.to?.quantity ?? 0, "count"),
      difference,
      number(line.toOrder, "count"),
      ...(withCosts
        ? [costOf(line.from, isOneCurrency), costOf(line.to), costDifference(line, place, money)]
        : []),
    );
  });
  const places = lines.map((_, index) => start + 1 + index);
  const sum = (column: number, value: number, format: "count" | "money"): DrawnCell =>
    formula(sumOf(column, places), value, format, { look: "total" });
  const costs = total.cost === null ? 0 : money(total.cost);
  return [
    headings([
      { words: "Job" },
      { words: "Item" },
      numbers("Size"),
      numbers("Was (pcs)"),
      numbers("Is (pcs)"),
      numbers("Difference (pcs)"),
      numbers("Difference with spares"),
      ...(withCosts
        ? ["Cost was", "Cost is", "Cost difference"].map((words) =>
            numbers(`${words} (${currency.sign})`),
          )
        : []),
    ]),
    ...rows,
    row(
      text("All", { look: "total" }),
      ...[1, 2, 3, 4].map(() => blank({ look: "total" })),
      sum(5, total.quantity, "count"),
      sum(6, total.toOrder, "count"),
      ...(withCosts
        ? [blank({ look: "total" }), blank({ look: "total" }), sum(9, costs, "money")]
        : []),
    ),
  ];
}

function costDifference(
  { cost }: LineDifference,
  place: number,
  money: (amount: Cents) => number,
): DrawnCell {
  if (cost === null) return unknown();
  return formula(`ROUND(${at(place, 8)}-${at(place, 7)},2)`, money(cost), "money");
}

/** Differences put together by item or by job. */
export function sumRows(
  heading: string,
  sums: readonly SumDifference[],
  { currency, withCosts }: RevisionWish,
): readonly DrawnRow[] {
  const withUnknown = withCosts && sums.some((sum) => sum.unknown > 0);
  return [
    headings([
      { words: heading },
      numbers("Difference (pcs)"),
      numbers("Difference with spares"),
      ...(withCosts ? [numbers(`Cost difference (${currency.sign})`)] : []),
      ...(withUnknown ? [numbers("Lines not known")] : []),
    ]),
    ...sums.map((sum) =>
      row(
        text(sum.name),
        number(sum.quantity, "count"),
        number(sum.toOrder, "count"),
        ...(withCosts
          ? [sum.cost === null ? unknown() : number(majorUnits(sum.cost, currency), "money")]
          : []),
        ...(withUnknown ? [number(sum.unknown, "count")] : []),
      ),
    ),
  ];
}

/** What is ordered already: more than is needed now stands out. */
export const orderedRows = ({ ordered, lengths }: RevisionWish): readonly DrawnRow[] => [
  headings([
    { words: "Job" },
    { words: "Item" },
    numbers("Size"),
    numbers("Ordered (pcs)"),
    numbers("Of them come"),
    numbers("Needed now"),
    numbers("Still to order"),
    numbers("Too many"),
  ]),
  ...ordered.map((line) =>
    row(
      text(line.job),
      text(line.item),
      text(sizeOf(line.size, lengths), { align: "right" }),
      number(line.ordered, "count"),
      number(line.come, "count"),
      number(line.needed, "count"),
      number(line.stillToOrder, "count"),
      number(line.tooMany, "count", line.tooMany > 0 ? { look: "warn" } : {}),
    ),
  ),
];

const sizeOf = (size: readonly Inches[], lengths: RevisionWish["lengths"]): string =>
  writeSize(size, lengths);
