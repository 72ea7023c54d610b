/** What a job's roll-up is made from: checked figures, nothing worked out yet. */
import type { Cents, TenThousandths } from "../../base/units";
import type { PriceRounding } from "../margin";
import type { Percent } from "../rates/percent";
import type { PriceRule } from "./priceRule";

/** The direct costs, in the order in which they stand. Burden belongs to labour. */
export const directGroups = [
  "material",
  "freight",
  "labour",
  "equipment",
  "subcontract",
  "allowance",
] as const;
export type DirectGroup = (typeof directGroups)[number];

/** Material of one family: what was counted, its spares, and what is left over in its packs. */
export type FamilyMaterial = {
  readonly family: string;
  readonly counted: Cents;
  readonly spares: Cents;
  readonly leftOver: Cents;
};

/** Who pays for what is not used up: the job, or the firm's stock. */
export const payers = ["job", "stock"] as const;
export type Payer = (typeof payers)[number];

/** A cost by its name. `null` is not known: it is listed as not priced, never taken as nothing. */
export type NamedCost = { readonly name: string } & (
  | {
      readonly kind: "typed";
      readonly amount: Cents | null;
      /** Where it is from; as typed where absent. */
      readonly how?: string;
    }
  /** So many days, hundredweights, pieces at a price for each; `quantity` to four decimals at most. */
  | {
      readonly kind: "times";
      readonly quantity: number;
      readonly unit: string;
      readonly each: TenThousandths | null;
      /** What the quantity is, where its unit does not say it all. */
      readonly how?: string;
    }
);

/** Hours of one role on the job. */
export type RoleLabour = {
  readonly role: string;
  /** Whole hundredths of an hour. */
  readonly hundredths: number;
  /** Per hour; `null` is not known. */
  readonly rate: TenThousandths | null;
  /** What comes on top of wages, as a percentage of them. */
  readonly burden: Percent;
};

/** A percentage of the groups named: the firm says of what. */
export type PercentOn<Group extends string> = {
  readonly percent: Percent;
  readonly of: readonly Group[];
};

export type Bond =
  | { readonly on: "price"; readonly percent: Percent }
  | ({ readonly on: "cost" } & PercentOn<BondGroup>);
export type BondGroup = DirectGroup | "overhead" | "contingency" | "tax";

export type SalesTax = {
  /** What the firm itself pays on what it buys: a part of the cost. */
  readonly paid: PercentOn<DirectGroup> | null;
  /** What the customer pays on the taxable part of the price: on top of the price, and no part of it. */
  readonly charged: { readonly percent: Percent; readonly taxable: Percent } | null;
};

export type RollUpInput = {
  readonly job: string;
  readonly material: readonly FamilyMaterial[];
  readonly sparesPaidBy: Payer;
  readonly leftOverPaidBy: Payer;
  /** Items and openings whose cost is not in any figure here. */
  readonly notPriced: readonly string[];
  readonly freight: readonly NamedCost[];
  readonly labour: readonly RoleLabour[];
  readonly equipment: readonly NamedCost[];
  readonly subcontract: readonly NamedCost[];
  readonly allowance: readonly NamedCost[];
  readonly overhead: PercentOn<DirectGroup> | null;
  readonly contingency: PercentOn<DirectGroup | "overhead"> | null;
  readonly salesTax: SalesTax;
  readonly bond: Bond | null;
  readonly price: PriceRule;
  readonly rounding: PriceRounding;
};
