/** What a job would come to if its figures turned out otherwise. */
import { roundedProduct } from "../../base/exact";
import { cents, tenThousandths, type Cents, type TenThousandths } from "../../base/units";
import {
  costByPrice,
  discounted,
  discountThatKeeps,
  priceThatKeeps,
  type Discount,
} from "../keepTarget";
import { millionths, noPercent, type Percent } from "../rates/percent";
import { rollUp, type RollUp } from "../rollup/rollUp";
import type { FamilyMaterial, NamedCost, RoleLabour, RollUpInput } from "../rollup/rollUpInput";

/** Changes of a job's figures, each in percent of the figure; above zero is more. Not below -100 %. */
export type WhatIf = {
  /** By family; a family that is not named stays. */
  readonly material: ReadonlyMap<string, Percent>;
  readonly hours: Percent;
  /** Of the wages per hour of every role. */
  readonly rate: Percent;
  readonly freight: Percent;
  /** Off the price, after all else. */
  readonly discount: Percent;
  /** The price at which the job would be won, instead of the one worked out; `null` for none. */
  readonly winPrice: Cents | null;
  /** `held`: the price as bid stays while the cost moves. `follows`: it is worked out again. */
  readonly price: "held" | "follows";
};

/** Nothing changed. */
export const asEstimated: WhatIf = {
  material: new Map(),
  hours: noPercent,
  rate: noPercent,
  freight: noPercent,
  discount: noPercent,
  winPrice: null,
  price: "held",
};

export type WhatIfAnswer = {
  readonly rollUp: RollUp;
  /** Against the job as estimated. */
  readonly addsCost: Cents;
  readonly addsPrice: Cents;
  readonly addsProfit: Cents;
  /** The least price that keeps the target at this cost. */
  readonly priceThatKeeps: Cents;
  /** The largest discount on this price that keeps the target. */
  readonly discountThatKeeps: Discount;
  /** The least price that loses nothing: where the margin is zero. */
  readonly breakEvenPrice: Cents;
};

/** `value` changed by so many percent, rounded to a whole number. */
const changed = (value: number, by: Percent): number =>
  roundedProduct(value, millionths + by, millionths);
const changedCents = (amount: Cents, by: Percent): Cents => cents(changed(amount, by));
const changedPrice = (each: TenThousandths | null, by: Percent): TenThousandths | null =>
  each === null ? null : tenThousandths(changed(each, by));

const changedFamily = (family: FamilyMaterial, by: Percent): FamilyMaterial => ({
  family: family.family,
  counted: changedCents(family.counted, by),
  spares: changedCents(family.spares, by),
  leftOver: changedCents(family.leftOver, by),
});

const changedRole = (role: RoleLabour, { hours, rate }: WhatIf): RoleLabour => ({
  ...role,
  hundredths: changed(role.hundredths, hours),
  rate: changedPrice(role.rate, rate),
});

function changedCost(cost: NamedCost, by: Percent): NamedCost {
  if (cost.kind === "times") return { ...cost, each: changedPrice(cost.each, by) };
  return { ...cost, amount: cost.amount === null ? null : changedCents(cost.amount, by) };
}

/** The job's figures with the changes; the price stays as the input says. */
export const withChanges = (input: RollUpInput, changes: WhatIf): RollUpInput => ({
  ...input,
  material: input.material.map((family) =>
    changedFamily(family, changes.material.get(family.family) ?? noPercent),
  ),
  labour: input.labour.map((role) => changedRole(role, changes)),
  freight: input.freight.map((cost) => changedCost(cost, changes.freight)),
});

/** Rolls the job up with the changes. `base` is its roll-up without any. */
export function rollUpIf(input: RollUpInput, base: RollUp, changes: WhatIf): RollUp {
  const moved = withChanges(input, changes);
  const price = changes.winPrice ?? (changes.price === "held" ? base.price : rollUp(moved).price);
  return rollUp({
    ...moved,
    price: { method: "typed", price: discounted(price, changes.discount) },
  });
}

/** Answers a what-if against a target margin. */
export function answerWhatIf(
  input: RollUpInput,
  base: RollUp,
  changes: WhatIf,
  target: Percent,
): WhatIfAnswer {
  const rolled = rollUpIf(input, base, changes);
  const cost = costByPrice(rolled);
  return {
    rollUp: rolled,
    addsCost: cents(rolled.cost - base.cost),
    addsPrice: cents(rolled.price - base.price),
    addsProfit: cents(rolled.profit - base.profit),
    priceThatKeeps: priceThatKeeps(cost, target),
    discountThatKeeps: discountThatKeeps(cost, rolled.price, target),
    breakEvenPrice: priceThatKeeps(cost, noPercent),
  };
}

/** What can be moved: one material family, or one of the others. */
export type Factor =
  | { readonly kind: "material"; readonly family: string }
  | { readonly kind: "hours" | "rate" | "freight" | "discount" };

export const factorName = (factor: Factor): string =>
  factor.kind === "material" ? `material: ${factor.family}` : factor.kind;

/** `changes` with one factor set. */
export const withFactor = (changes: WhatIf, factor: Factor, by: Percent): WhatIf =>
  factor.kind === "material"
    ? { ...changes, material: new Map([...changes.material, [factor.family, by]]) }
    : { ...changes, [factor.kind]: by };

/** Every factor that a job has, in the order of its roll-up. */
export const factorsOf = (input: RollUpInput): readonly Factor[] => [
  ...[...new Set(input.material.map(({ family }) => family))].map((family): Factor => ({
    kind: "material",
    family,
  })),
  ...(input.labour.length > 0 ? ([{ kind: "hours" }, { kind: "rate" }] satisfies Factor[]) : []),
  ...(input.freight.length > 0 ? ([{ kind: "freight" }] satisfies Factor[]) : []),
  { kind: "discount" },
];
