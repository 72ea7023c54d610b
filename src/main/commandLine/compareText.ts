/** A comparison for a terminal, and as one JSON object for other programs. */
import type { Inches } from "../../core/base/units";
import { numberStyle, writeSize, type LengthStyle } from "../../core/lengths/writeLength";
import { currencyOf, usDollar, type Currency } from "../../core/money/currency";
import { decimalText, moneyText } from "../../core/money/writeMoney";
import type {
  LineDifference,
  LineDifferences,
  SumDifference,
} from "../../core/revisions/compareLines";
import type { ChangedOpening } from "../../core/revisions/compareOpenings";
import type { IssuedLine, IssuedOpening } from "../../core/revisions/issue";
import type { OrderedLine } from "../../core/revisions/ordered";
import { caution } from "../../sheets/caution";
import {
  changeText,
  doubtTexts,
  openingText,
  signed,
  summaryText,
} from "../../sheets/revisions/revisionWords";
import type { Revision } from "../../app/revisions/revisions";
import { textTable } from "./textTable";

/** Openings, hardware by line, money by job, and the caution. */
export function compareText(revision: Revision, lengths: LengthStyle, currency: Currency): string {
  const { from, to, comparison, ordered } = revision;
  const { openings, hardware } = comparison;
  const named = ({ job, mark }: IssuedOpening): string => `${job} ${mark}`;
  const changes = (what: string, each: ChangedOpening): readonly string[] => {
    const was = each.from.mark === each.to.mark ? "" : ` (was ${each.from.mark})`;
    return [
      `${what} ${named(each.to)}${was}`,
      ...each.changes.map((change) => `    ${changeText(change, lengths)}`),
    ];
  };
  const money = ({ cost }: Pick<SumDifference, "cost">): string =>
    cost === null ? "not known" : moneyText(cost, currency);
  return [
    `${from} to ${to}: ${summaryText(comparison, currency)}`,
    ...doubtTexts(revision),
    ...openings.added.map((each) => `ADDED ${named(each)}: ${openingText(each, lengths)}`),
    ...openings.removed.map((each) => `REMOVED ${named(each)}: ${openingText(each, lengths)}`),
    ...openings.changed.flatMap((each) => changes("CHANGED", each)),
    ...openings.renamed.flatMap((each) => changes("ANOTHER MARK", each)),
    ...openings.guesses.flatMap((each) =>
      changes(`TO CONFIRM (${Math.round(each.likeness * 100)} % alike)`, each),
    ),
    "",
    ...(hardware.lines.length === 0 ? [] : [...hardwareText(hardware, lengths, money), ""]),
    ...(ordered.length === 0 ? [] : [...orderedText(ordered, lengths), ""]),
    caution,
  ].join("\n");
}

/** A table of the lines, then the jobs and all of them. */
const hardwareText = (
  { lines, jobs, total }: LineDifferences,
  lengths: LengthStyle,
  money: (difference: Pick<SumDifference, "cost">) => string,
): readonly string[] => [
  ...textTable(
    [
      { heading: "Job", align: "left" },
      { heading: "Item", align: "left" },
      { heading: "Size", align: "right" },
      { heading: "Was", align: "right" },
      { heading: "Is", align: "right" },
      { heading: "More", align: "right" },
      { heading: "More cost", align: "right" },
    ],
    lines.map((line) => [
      line.job,
      line.item,
      writeSize(line.size, lengths),
      String(line.from?.quantity ?? 0),
      String(line.to?.quantity ?? 0),
      signed(line.quantity),
      money(line),
    ]),
  ),
  "",
  ...jobs.map((each) => `${each.name}: ${signed(each.quantity)} pieces, ${money(each)}`),
  `All: ${signed(total.quantity)} pieces, ${money(total)}`,
];

/** What is ordered in another number than is needed. */
const orderedText = (ordered: readonly OrderedLine[], lengths: LengthStyle): readonly string[] =>
  textTable(
    [
      { heading: "Job", align: "left" },
      { heading: "Item", align: "left" },
      { heading: "Size", align: "right" },
      { heading: "Ordered", align: "right" },
      { heading: "Come", align: "right" },
      { heading: "Needed", align: "right" },
      { heading: "To order", align: "right" },
      { heading: "Too many", align: "right" },
    ],
    ordered.map((line) => [
      line.job,
      line.item,
      writeSize(line.size, lengths),
      ...[line.ordered, line.come, line.needed, line.stillToOrder, line.tooMany].map(String),
    ]),
  );

/** Sizes and lengths in inches as plain numbers; money as decimal strings, `null` where not known. */
export function compareJson({ from, to, jobWas, comparison, ordered, isOrderedKnown }: Revision) {
  const { openings, hardware, isComplete, currency } = comparison;
  const amounts = currencyOf(currency.to) ?? usDollar;
  const money = (cost: IssuedLine["cost"]): string | null =>
    cost === null ? null : decimalText(cost, amounts);
  const size = (lengths: readonly Inches[]): string | null =>
    lengths.length === 0 ? null : writeSize(lengths, numberStyle);
  const whole = ({ job, mark, quantity, type, fields }: IssuedOpening) => ({
    job,
    mark,
    quantity,
    type,
    fields,
  });
  const changed = (each: ChangedOpening) => ({
    job: each.to.job,
    mark: each.to.mark,
    was: each.from.mark,
    changes: each.changes.map((change) => ({
      field: change.field.name,
      from: change.from,
      to: change.to,
    })),
  });
  const sums = ({ name, quantity, cost, unknown }: SumDifference) => ({
    name,
    quantity,
    cost: money(cost),
    unknown,
  });
  const line = (each: LineDifference) => ({
    job: each.job,
    item: each.item,
    size: size(each.size),
    from: each.from?.quantity ?? 0,
    to: each.to?.quantity ?? 0,
    difference: each.quantity,
    cost: money(each.cost),
  });
  return {
    from,
    to,
    jobWas,
    complete: isComplete,
    currency,
    openings: {
      added: openings.added.map(whole),
      removed: openings.removed.map(whole),
      changed: openings.changed.map(changed),
      renamed: openings.renamed.map(changed),
      toConfirm: openings.guesses.map((each) => ({ ...changed(each), likeness: each.likeness })),
    },
    lines: hardware.lines.map(line),
    items: hardware.items.map(sums),
    jobs: hardware.jobs.map(sums),
    total: sums(hardware.total),
    orderedOtherwise: isOrderedKnown
      ? ordered.map(({ size: sizes, ...each }) => ({ ...each, size: size(sizes) }))
      : null,
  };
}
