/** How a job's price is found from its cost, as checked, and what looks wrong in a typed percentage. */
import { makeFinding, type Finding } from "../../base/finding";
import type { CellPlace } from "../../base/cell";
import type { Cents } from "../../base/units";
import { marginFromMarkup, markupFromMargin } from "../margin";
import { noPercent, percent, percentText, readPercent, type Percent } from "../rates/percent";
import { priceFindings } from "../priceFindings";

export const priceMethods = ["markup", "margin", "typed"] as const;

export type PriceRule =
  | { readonly method: "markup"; readonly percent: Percent }
  | { readonly method: "margin"; readonly percent: Percent }
  | { readonly method: "typed"; readonly price: Cents };

/** What stands in for a rule that could not be read: the price is the cost, and any target is missed. */
export const atCost: PriceRule = { method: "markup", percent: noPercent };

/**
 * The most that can be typed. Beyond them no price would exist or it would be absurd: with a bond of
 * at most 9 % of the price, 90 % margin and 1,000 % markup always leave something to divide by.
 */
export const mostPercent = {
  markup: percent(10_000_000),
  margin: percent(900_000),
  bond: percent(90_000),
} as const;
/** The least that can be typed: a price may be below cost, and still is one. */
export const leastPercent = percent(-900_000);

/** What stood in a cell for a markup, a margin or a bond, and where. */
export type TypedPercent = {
  readonly kind: "markup" | "margin" | "bond";
  readonly typed: string | number;
  readonly place: CellPlace | null;
  readonly job: string;
};

/**
 * Reads a typed percentage and tells what looks wrong with it. `percent` is `null` where it cannot be
 * used; the finding then is a stop. `target` is the firm's target margin, where it has one.
 */
export function readPricePercent(
  { kind, typed, place, job }: TypedPercent,
  target: Percent | null,
): { readonly percent: Percent | null; readonly findings: readonly Finding[] } {
  const about = { place, job, found: String(typed) };
  const read = readPercent(typed);
  if (read === null) {
    const code = about.found.trim() === "" ? "percent-missing" : "percent-not-a-number";
    const finding = makeFinding(priceFindings, code, {
      ...about,
      values: { kind },
    });
    return { percent: null, findings: [finding] };
  }
  const least = kind === "bond" ? noPercent : leastPercent;
  if (read.percent > mostPercent[kind] || read.percent < least) {
    const values = {
      kind,
      read: percentText(read.percent),
      least: percentText(least),
      most: percentText(mostPercent[kind]),
    };
    const code = kind === "margin" ? "margin-out-of-range" : "percent-out-of-range";
    return { percent: null, findings: [makeFinding(priceFindings, code, { ...about, values })] };
  }
  // A cell that was not set to show percentages keeps a typed 1.5 as 1.5, which is 150 %.
  const doubt = read.doubt || (typeof typed === "number" && typed > 1);
  return { percent: read.percent, findings: doubtsOf(kind, { ...read, doubt }, target, about) };
}

function doubtsOf(
  kind: TypedPercent["kind"],
  read: { readonly percent: Percent; readonly doubt: boolean },
  target: Percent | null,
  about: { readonly place: CellPlace | null; readonly job: string; readonly found: string },
): readonly Finding[] {
  const doubts: Finding[] = [];
  const add = (
    code: keyof typeof priceFindings,
    values: Readonly<Record<string, string>>,
  ): void => {
    doubts.push(makeFinding(priceFindings, code, { ...about, values }));
  };
  const typed = percentText(read.percent);
  if (read.doubt) add("percent-read-as", { kind, read: typed });
  if (kind === "bond" || read.percent <= 0) return doubts;
  if (read.percent < 10_000) add("percent-tiny", { kind, read: typed });
  if (kind === "markup") {
    const margin = percentText(inTenths(marginFromMarkup(read.percent)));
    const needed = target === null ? "" : percentText(inTenths(markupFromMargin(target)));
    if (target !== null && read.percent === target) {
      add("markup-is-the-target-margin", { read: typed, margin, needed });
    }
  } else {
    const markup = percentText(inTenths(markupFromMargin(read.percent)));
    const isTargetsMarkup =
      target !== null && inTenths(read.percent) === inTenths(markupFromMargin(target));
    if (isTargetsMarkup) {
      add("margin-is-the-target-markup", { read: typed, markup, target: percentText(target) });
    } else if (read.percent >= 500_000) add("margin-looks-like-markup", { read: typed, markup });
  }
  return doubts;
}

/** Rounded to tenths of a percent, for messages. */
const inTenths = (value: Percent): Percent => percent(Math.round(value / 1000) * 1000);
