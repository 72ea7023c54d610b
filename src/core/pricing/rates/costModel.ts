/**
 * A job's cost as a sum of products, for thousands of draws a second. As estimated it is the roll-up's
 * to the cent: what lines were rounded by is among the fixed costs. With other factors nothing more is
 * rounded, so it is within a cent for each line of what the roll-up comes to.
 *
 * Every percentage on top of a group only scales that group, so the cost is
 * fixed + sum over families (coefficient x factor) + labour x hours x rate + freight x factor + bond.
 */
import { shareOf } from "./percent";
import type { RollUp } from "../rollup/rollUp";
import { costLines } from "../rollup/rollUpCosts";
import { type DirectGroup, type PercentOn, type RollUpInput } from "../rollup/rollUpInput";

export type CostModel = {
  /** In cents, as are all coefficients. What no factor moves. */
  readonly fixed: number;
  /** Each family once, in the order of the input. */
  readonly material: readonly { readonly family: string; readonly coefficient: number }[];
  readonly labour: number;
  readonly freight: number;
  /** Of the price. */
  readonly bond: number;
  /** The price as bid, in cents. */
  readonly price: number;
};

/** How many times as estimated each figure turned out: 1 is as estimated. */
export type CostFactors = {
  /** For each family of the model, in its order. */
  readonly material: readonly number[];
  readonly hours: number;
  readonly rate: number;
  readonly freight: number;
  /** Of the price as bid. */
  readonly price: number;
};

/** Models a job at the price of its roll-up. */
export function costModel(input: RollUpInput, rolled: RollUp): CostModel {
  const weights = groupWeights(input);
  const direct = costLines(input).lines;
  const inGroup = (group: DirectGroup): number =>
    direct.filter((line) => line.group === group).reduce((sum, line) => sum + line.amount, 0);
  const families = [...new Set(input.material.map(({ family }) => family))];
  const material = families.map((family) => ({
    family,
    coefficient:
      weights.material *
      input.material
        .filter((one) => one.family === family)
        .reduce((sum, { counted, spares, leftOver }) => {
          const paidSpares = input.sparesPaidBy === "job" ? spares : 0;
          return sum + counted + paidSpares + (input.leftOverPaidBy === "job" ? leftOver : 0);
        }, 0),
  }));
  const labour = inGroup("labour") * weights.labour;
  const freight = inGroup("freight") * weights.freight;
  const bond = input.bond?.on === "price" ? shareOf(input.bond.percent) : 0;
  const moving = material.reduce((sum, { coefficient }) => sum + coefficient, labour + freight);
  return {
    // Six decimals of a cent: less is what doubles leave.
    fixed: Number((rolled.cost - moving - bond * rolled.price).toFixed(6)),
    material,
    labour,
    freight,
    bond,
    price: rolled.price,
  };
}

/** What one unit of each group that moves adds to the cost, with all that comes on it. */
function groupWeights(
  input: RollUpInput,
): Readonly<Record<"material" | "freight" | "labour", number>> {
  const weight = (group: DirectGroup): number => {
    const overhead = on(input.overhead, { [group]: 1 });
    const contingency = on(input.contingency, { [group]: 1, overhead });
    const tax = on(input.salesTax.paid, { [group]: 1 });
    const bond =
      input.bond?.on === "cost" ? on(input.bond, { [group]: 1, overhead, contingency, tax }) : 0;
    return 1 + overhead + contingency + tax + bond;
  };
  return {
    material: weight("material"),
    freight: weight("freight"),
    labour: weight("labour"),
  };
}

/** The percentage of those `amounts` that it is of. */
const on = <Group extends string>(
  percentOn: PercentOn<Group> | null,
  amounts: Readonly<Record<string, number>>,
): number =>
  percentOn === null
    ? 0
    : shareOf(percentOn.percent) *
      percentOn.of.reduce((sum, group) => sum + (amounts[group] ?? 0), 0);

/** The margin at those factors. Asks for a price above zero. */
export function modelledMargin(model: CostModel, factors: CostFactors): number {
  const price = model.price * factors.price;
  let cost = model.fixed + model.bond * price + model.freight * factors.freight;
  cost += model.labour * factors.hours * factors.rate;
  for (let index = 0; index < model.material.length; index += 1) {
    cost += (model.material[index]?.coefficient ?? 0) * (factors.material[index] ?? 1);
  }
  return (price - cost) / price;
}
