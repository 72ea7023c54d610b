/** Ranges as the owner types them in the pane. */
import { jobKey } from "../../core/takeoff/takeOff";
import {
  changeFault,
  type ChangeRange,
  type FactorRange,
  type OwnerRange,
} from "../../core/pricing/chances/ownerRanges";
import { inPercent, noPercent, readPercent, type Percent } from "../../core/pricing/rates/percent";

export const rangeEnds = ["low", "likely", "high"] as const;
export type RangeEnd = (typeof rangeEnds)[number];

/** What stands in the fields of one figure. */
export type TypedRange = Readonly<Record<RangeEnd, string>> & Pick<ChangeRange, "shape">;

export const rangeKey = ({ subject, family }: Pick<FactorRange, "subject" | "family">): string =>
  `${subject}\n${family}`;

const typedRange = ({ low, likely, high, shape }: ChangeRange): TypedRange => ({
  low: String(inPercent(low)),
  likely: String(inPercent(likely)),
  high: String(inPercent(high)),
  shape,
});

/** The range, or why it cannot be used, in words. */
export function readRange({ low, likely, high, shape }: TypedRange): ChangeRange | string {
  const [least, usual, most] = [low, likely, high].map(readEnd);
  if (least === null || usual === null || most === null)
    return "type percentages such as -5, 0 and 10";
  const change = { low: least ?? noPercent, likely: usual ?? noPercent, high: most ?? noPercent };
  const fault = changeFault({ ...change, shape });
  return fault ?? { ...change, shape };
}

const readEnd = (text: string): Percent | null =>
  text.trim() === "" ? noPercent : (readPercent(text)?.percent ?? null);

/** What the fields of a figure show: what was typed as long as it is no other range, else the range. */
export function shownRange(typed: TypedRange | undefined, range: ChangeRange): TypedRange {
  if (typed === undefined) return typedRange(range);
  const read = readRange(typed);
  const isOther =
    typeof read !== "string" &&
    [...rangeEnds, "shape" as const].some((part) => read[part] !== range[part]);
  return isOther ? typedRange(range) : typed;
}

/** `ranges` with the change of one figure, for one job or, with the empty text, for every job. */
export function withRange(
  ranges: readonly OwnerRange[],
  { subject, family }: Pick<FactorRange, "subject" | "family">,
  change: ChangeRange,
  scope: { readonly job: string; readonly forJob: string },
): readonly OwnerRange[] {
  const isSame = (one: OwnerRange): boolean =>
    one.subject === subject &&
    one.family.trim().toLowerCase() === family.trim().toLowerCase() &&
    // For every job means for this one too: what was typed for it alone gives way.
    (one.job === scope.forJob || (one.job !== "" && jobKey(one.job) === jobKey(scope.job)));
  return [
    ...ranges.filter((one) => !isSame(one)),
    { subject, family, job: scope.forJob, ...change },
  ];
}
