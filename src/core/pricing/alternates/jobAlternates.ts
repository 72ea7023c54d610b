/**
 * A job's typed alternates, each rolled up in full and priced beside the base: from a count of its own
 * where it changes the schedule, and with what it adds.
 */
import { cents, type Cents } from "../../base/units";
import { shareWhole } from "../../base/shareWhole";
import { jobKey } from "../../takeoff/takeOff";
import type { TypedAddition, TypedAlternate } from "./alternateRows";
import { priceAlternates, withAddition, type Addition, type PricedAlternate } from "./alternates";
import { priceByMargin, roundPrice } from "../margin";
import { noPercent, type Percent } from "../rates/percent";
import { rollUp, type RollUp } from "../rollup/rollUp";
import type { NamedCost, RollUpInput } from "../rollup/rollUpInput";

/** What a job's alternates are priced from. */
export type AlternateBase = {
  readonly input: RollUpInput;
  readonly rollUp: RollUp;
  readonly target: Percent;
};

/** An alternate whose changes of the schedule were counted and rolled up to `input`. */
export type AlternateToPrice = Pick<TypedAlternate, "name" | "kind" | "additions"> & {
  /** `null` where it changes nothing of the schedule: it is the base with what it adds. */
  readonly input: RollUpInput | null;
  /** What was changed, in words; the empty text where nothing was. */
  readonly how: string;
};

/** The job's own alternates and everyone's; its own goes before one of the same name for every job. */
export function alternatesForJob(
  job: string,
  alternates: readonly TypedAlternate[],
): readonly TypedAlternate[] {
  const own = alternates.filter((one) => one.job !== "" && jobKey(one.job) === jobKey(job));
  const names = new Set(own.map(({ name }) => name.toLowerCase()));
  return [
    ...own,
    ...alternates.filter((one) => one.job === "" && !names.has(one.name.toLowerCase())),
  ];
}

/**
 * Prices the alternates of one job.
 *
 * Where the base price was typed, what an alternate costs is priced at the target margin and put on
 * top of it, since a typed price would stay as it is. What is put on top is made a round one, and not
 * the sum, so that an alternate that adds nothing leaves the typed price alone.
 */
export const alternatesOf = (
  base: AlternateBase,
  alternates: readonly AlternateToPrice[],
): readonly PricedAlternate[] =>
  priceAlternates(
    base.rollUp,
    base.input,
    alternates.map(({ name, kind, additions, input, how }) => ({
      name,
      kind,
      input: pricedAnew(withAddition(input ?? base.input, additionOf(additions, base.input)), base),
      how: [how, ...(additions.length === 0 ? [] : ["with what is typed for it"])]
        .filter((words) => words !== "")
        .join(", "),
    })),
  );

function pricedAnew(input: RollUpInput, { rollUp: rolled, target }: AlternateBase): RollUpInput {
  if (input.price.method !== "typed") return input;
  const adds = cents(rollUp(input).cost - rolled.cost);
  const bond = input.bond?.on === "price" ? input.bond.percent : noPercent;
  const added = roundPrice(priceByMargin(adds, target, bond), input.rounding);
  return { ...input, price: { method: "typed", price: cents(input.price.price + added) } };
}

function additionOf(additions: readonly TypedAddition[], { labour }: RollUpInput): Addition {
  const hours = additions.reduce(
    (sum, one) => sum + (one.adds === "hours" ? one.hundredths : 0),
    0,
  );
  const named = (adds: TypedAddition["adds"]): readonly NamedCost[] =>
    amountsOf(additions, adds).map(({ name, amount }) => ({ name, kind: "typed", amount }));
  return {
    material: amountsOf(additions, "material").map(({ name, amount }) => ({
      family: name,
      counted: amount,
      spares: cents(0),
      leftOver: cents(0),
    })),
    labour: hours === 0 ? [] : hoursOfCrew(hours, labour),
    equipment: named("equipment"),
    subcontract: named("subcontract"),
    allowance: named("allowance"),
  };
}

const amountsOf = (
  additions: readonly TypedAddition[],
  adds: TypedAddition["adds"],
): readonly { readonly name: string; readonly amount: Cents }[] =>
  additions.flatMap((one) => (one.adds === adds && one.adds !== "hours" ? [one] : []));

/** Hours over the roles as the job's own are. */
function hoursOfCrew(hundredths: number, labour: RollUpInput["labour"]): RollUpInput["labour"] {
  const weights = labour.map((role) => role.hundredths);
  const isAny = weights.some((weight) => weight > 0);
  const shares = shareWhole(Math.abs(hundredths), isAny ? weights : labour.map(() => 1));
  return labour.map((role, index) => ({
    ...role,
    hundredths: Math.sign(hundredths) * (shares[index] ?? 0),
  }));
}
