/** What the kit book's checks say, as text for a terminal. */
import { cellText } from "../../core/base/cell";
import { inches, type Inches } from "../../core/base/units";
import type { Boundary, BoundaryTable } from "../../core/bookcheck/boundaries";
import type { RowChange } from "../../core/bookcheck/compareBooks";
import { limitWords, partWords, type TrialChange } from "../../core/bookcheck/compareTrials";
import { rowName } from "../../core/bookcheck/rowName";
import type { Trial } from "../../core/bookcheck/trial";
import type { Field } from "../../core/kitbook/fields";
import type { LengthStyle } from "../../core/lengths/writeLength";

type Show = (length: Inches) => string;

/** Lengths as the user writes them and in inches, since a boundary may lie between two fractions. */
const valueText = (value: number, { kind }: Field, show: Show): string =>
  kind === "length"
    ? `${show(inches(value))} (${Number(value.toPrecision(12))} in)`
    : String(value);

export function boundaryText(
  { boundaries, isProven }: BoundaryTable,
  field: Field,
  show: Show,
): string {
  const lines = boundaries.flatMap((boundary) => [
    `${field.label} ${valueText(boundary.value, field, show)}: ${sideWords(boundary)}`,
    ...boundary.items.map(
      ({ item, below, at, above }) =>
        `  ${item}: ${boundary.goesWith === "neither" ? `${below}, ${at}, ${above}` : `${below} > ${above}`}`,
    ),
    ...boundary.limits.map(
      ({ level, message, speaks }) =>
        `  ${level} ${speaks.above ? "from here" : speaks.below ? "up to here" : "here only"}: ${message}`,
    ),
    ...(boundary.states.below.isCounted === boundary.states.above.isCounted
      ? []
      : [`  ${boundary.states.above.isCounted ? "counted from here" : "not counted from here"}`]),
  ]);
  const proof = isProven
    ? "Worked out from the formulas: there is no other."
    : "Some formulas could only be tried point by point: there may be others.";
  return [...(lines.length === 0 ? ["Nothing changes."] : lines), "", proof].join("\n");
}

const sideWords = ({ goesWith }: Boundary): string =>
  goesWith === "below"
    ? "up to and including it, and above"
    : goesWith === "above"
      ? "below it, and from it on"
      : "below it, at it, and above";

export const trialText = (trial: Trial, lengths: LengthStyle): string =>
  [
    ...trial.sizes.map(({ name, text, worked }) => `${name} = ${text}  [${worked.formula}]`),
    "",
    ...trial.parts.map(
      (part) =>
        `${rowName(part.source)}, ${part.bag}: ${part.itemTyped}: ${partWords(part, lengths)}`,
    ),
    "",
    ...trial.limits.map(
      (limit) =>
        `${rowName(limit.source)}, ${limit.level}: ${limit.when.formula}: ${limitWords(limit)}`,
    ),
    ...trial.broken.map(
      ({ source, finding }) => `${rowName(source)} does not work: ${finding.message}`,
    ),
    "",
    trial.isCounted ? "Counted." : "NOT COUNTED, or not in full.",
  ].join("\n");

export const trialChangesText = (changes: readonly TrialChange[]): string =>
  changes.length === 0
    ? "Every row does the same for both."
    : changes
        .map(({ source, what, one, other }) => `${rowName(source)}, ${what}: ${one} > ${other}`)
        .join("\n");

/** Numbered from 1; `more` is put behind the first line of each. */
export const changesText = (
  changes: readonly RowChange[],
  more: (change: RowChange) => string = () => "",
): string =>
  changes.length === 0
    ? "The books say the same."
    : changes
        .map((change, index) => {
          const { section, kind, what, before, after, cells } = change;
          const row = `${section} row ${after ?? before ?? 0}`;
          const told = cells.map(
            ({ column, before: old, after: now }) =>
              `    ${column}: ${cellText(old.value)} > ${cellText(now.value)}`,
          );
          const first = `${index + 1}. ${kind} ${row}, ${what}${more(change)}`;
          return [first, ...(kind === "changed" ? told : [])].join("\n");
        })
        .join("\n");
