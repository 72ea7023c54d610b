/** One line of a roll-up: an amount, and how it comes from a base and a rate. */
import type { Cents, TenThousandths } from "../../base/units";
import type { Percent } from "../rates/percent";
import { directGroups } from "./rollUpInput";

export const lineGroups = [
  ...directGroups,
  "overhead",
  "contingency",
  "tax",
  "bond",
  "cost",
  "price",
  "charged",
] as const;
export type LineGroup = (typeof lineGroups)[number];

/** Unique within a roll-up, such as `labour 2` or `price`. */
export type LineKey = string;

/** What a line's base is. */
export type LineBase =
  | { readonly kind: "none" }
  /** Hours, days, hundredweights: as shown, to four decimals at most. */
  | { readonly kind: "quantity"; readonly value: number; readonly unit: string }
  /** The sum of other lines' amounts. */
  | { readonly kind: "lines"; readonly of: readonly LineKey[]; readonly value: Cents };

/** What a line's rate is. */
export type LineRate =
  | { readonly kind: "none" }
  | { readonly kind: "each"; readonly value: TenThousandths }
  | { readonly kind: "percent"; readonly value: Percent }
  /** A price step in whole currency units. */
  | { readonly kind: "step"; readonly value: number };

/** `typed` is written as it is; `lineRules.ts` says how the others are worked out. */
export type LineRule =
  "typed" | "sum" | "quantity" | "percent" | "markup" | "margin" | "nearest" | "up" | "less";

export type RollUpLine = {
  readonly key: LineKey;
  readonly group: LineGroup;
  readonly label: string;
  readonly rule: LineRule;
  readonly base: LineBase;
  readonly rate: LineRate;
  /** A line whose rate (`markup`, `margin`: the bond's) or amount (`less`) the rule uses as well. */
  readonly other: LineKey | null;
  /** How it comes about, in words. */
  readonly words: string;
  /** The same without the rate, for where that stands beside it to be typed over; as `words` where absent. */
  readonly wordsByRate?: string;
  readonly amount: Cents;
};
