/** The differences of two counts in words: what a sheet, the pane and a terminal say alike. */
import { writeLength, type LengthStyle } from "../../core/lengths/writeLength";
import { counted } from "../../core/base/counted";
import { cents, inches } from "../../core/base/units";
import type { Currency } from "../../core/money/currency";
import { moneyText } from "../../core/money/writeMoney";
import type { Comparison } from "../../core/revisions/compareCounts";
import type { LineDifferences, SumDifference } from "../../core/revisions/compareLines";
import type { FieldChange, OpeningDifferences } from "../../core/revisions/compareOpenings";
import type { IssuedOpening, IssuedValue } from "../../core/revisions/issue";
import type { RevisionWish } from "./revisionWish";

/** A field's value as a person reads it; a dash for a blank. */
export function valueText(
  value: IssuedValue | null,
  { kind }: FieldChange["field"],
  lengths: LengthStyle,
): string {
  if (value === null || value === "") return "–";
  if (typeof value === "boolean") return value ? "yes" : "no";
  return typeof value === "number" && kind === "length"
    ? writeLength(inches(value), lengths)
    : String(value);
}

/** `Width: 8'-0" is now 6'-0"`. */
export const changeText = ({ field, from, to }: FieldChange, lengths: LengthStyle): string =>
  `${field.label}: ${valueText(from, field, lengths)} is now ${valueText(to, field, lengths)}`;

/** `2 sliding door, 8'-0" x 7'-0"`, for an opening that is only in one of the counts. */
export function openingText(
  { quantity, type, fields }: IssuedOpening,
  lengths: LengthStyle,
): string {
  const sizes = ["width", "height"].flatMap((name) => {
    const value = Object.hasOwn(fields, name) ? fields[name] : undefined;
    return typeof value === "number" ? [writeLength(inches(value), lengths)] : [];
  });
  const parts = [`${quantity ?? "?"} ${type === "" ? "not read" : type}`, sizes.join(" x ")];
  return parts.filter((part) => part !== "").join(", ");
}

/** `+3`, `-2`, `0`. */
export const signed = (count: number): string => (count > 0 ? `+${count}` : String(count));

/**
 * `1 opening added, 2 changed; 14 pieces more and 3 pieces fewer in 6 lines of hardware; the material costs $40.00 more`.
 * Nothing of money where `currency` is `null`.
 */
export function summaryText({ openings, hardware }: Comparison, currency: Currency | null): string {
  return [
    openingsWords(openings),
    hardwareWords(hardware),
    currency === null ? "" : moneyWords(hardware.total, currency),
  ]
    .filter((words) => words !== "")
    .join("; ");
}

function openingsWords({ added, removed, changed, renamed, guesses }: OpeningDifferences): string {
  const counts: readonly [number, string][] = [
    [added.length, "added"],
    [removed.length, "removed"],
    [changed.length, "changed"],
    [renamed.length, "under another mark"],
    [guesses.length, "perhaps under another mark"],
  ];
  const said = counts.filter(([count]) => count > 0);
  if (said.length === 0) return "no opening differs";
  return said
    .map(([count, word], index) => `${index === 0 ? counted(count, "opening") : count} ${word}`)
    .join(", ");
}

function hardwareWords({ lines }: LineDifferences): string {
  if (lines.length === 0) return "no hardware differs";
  const more = lines.reduce((sum, { quantity }) => sum + Math.max(0, quantity), 0);
  const fewer = lines.reduce((sum, { quantity }) => sum + Math.max(0, -quantity), 0);
  const pieces = [
    ...(more === 0 ? [] : [`${counted(more, "piece")} more`]),
    ...(fewer === 0 ? [] : [`${counted(fewer, "piece")} fewer`]),
  ];
  const count = `${counted(lines.length, "line")} of hardware`;
  return pieces.length === 0
    ? `${count} with other spares or costs`
    : `${pieces.join(" and ")} in ${count}`;
}

function moneyWords({ cost, unknown }: SumDifference, currency: Currency): string {
  const left = unknown === 0 ? "" : `, ${counted(unknown, "line")} not known`;
  if (cost === null) return unknown === 0 ? "" : "what it means in money is not known";
  if (cost === 0) return unknown === 0 ? "" : `no other money${left}`;
  const amount = moneyText(cents(Math.abs(cost)), currency);
  return `the material costs ${amount} ${cost > 0 ? "more" : "less"}${left}`;
}

/** Why the differences may not be all, or not be differences; each a sentence. */
export function doubtTexts({
  from,
  to,
  jobWas,
  comparison,
  isOrderedKnown,
}: Pick<
  RevisionWish,
  "from" | "to" | "jobWas" | "comparison" | "isOrderedKnown"
>): readonly string[] {
  const { isComplete, currency, openings } = comparison;
  return [
    ...(jobWas === null
      ? []
      : [`In ${from} the job was called ${jobWas}: it is taken to be the same.`]),
    ...[...(isComplete.from ? [] : [from]), ...(isComplete.to ? [] : [to])].map(
      (name) =>
        `NOT COMPLETE. Something is not counted (${name}), so hardware and money are not the whole difference.`,
    ),
    ...(currency.from === currency.to
      ? []
      : [`${from} is in ${currency.from} and ${to} in ${currency.to}: money is not compared.`]),
    ...(isOrderedKnown
      ? []
      : ["The order book cannot be read: what is ordered already is not kept in mind here."]),
    ...(openings.guesses.length === 0
      ? []
      : ["Marks to confirm are a guess: the same opening under another mark, or two openings."]),
    ...openings.notGuessed.map(
      (job) =>
        `So many openings of ${job} came and went that none was looked for under another mark.`,
    ),
  ];
}
