/** Alternates and options of a job, each rolled up in full and priced beside the base. */
import { cents, type Cents } from "../../base/units";
import { rollUp, type RollUp } from "../rollup/rollUp";
import type { FamilyMaterial, NamedCost, RoleLabour, RollUpInput } from "../rollup/rollUpInput";

/** An alternate stands instead of something in the base; an option may be taken or left. */
export const alternateKinds = ["alternate", "option"] as const;

/** `input` is the whole job with the alternate in it, such as counted again with closers. */
export type Alternate = {
  readonly name: string;
  readonly kind: (typeof alternateKinds)[number];
  readonly input: RollUpInput;
  /** How it comes about, in words. */
  readonly how: string;
};

export type PricedAlternate = {
  readonly name: string;
  readonly kind: Alternate["kind"];
  readonly rollUp: RollUp;
  /** What it adds to the base's cost and price; below zero it takes away. */
  readonly addsCost: Cents;
  readonly addsPrice: Cents;
  /** Hundredths of an hour, of all roles. */
  readonly addsHours: number;
  readonly how: string;
  /** What has no price in it, beside what has none in the base: where there is any, it is only a least. */
  readonly notPriced: readonly string[];
};

/** Prices each alternate by its own roll-up less the base's, both as rounded. */
export function priceAlternates(
  base: RollUp,
  from: RollUpInput,
  alternates: readonly Alternate[],
): readonly PricedAlternate[] {
  return alternates.map(({ name, kind, input, how }) => {
    const rolled = rollUp(input);
    return {
      name,
      kind,
      rollUp: rolled,
      addsCost: cents(rolled.cost - base.cost),
      addsPrice: cents(rolled.price - base.price),
      addsHours: hoursIn(input) - hoursIn(from),
      how,
      notPriced: rolled.notPriced.filter((missing) => !base.notPriced.includes(missing)),
    };
  });
}

const hoursIn = ({ labour }: RollUpInput): number =>
  labour.reduce((sum, { hundredths }) => sum + hundredths, 0);

/** What a person types for an alternate that no count knows: more costs of a job, each by its name. */
export type Addition = {
  readonly material: readonly FamilyMaterial[];
  readonly labour: readonly RoleLabour[];
  readonly equipment: readonly NamedCost[];
  readonly subcontract: readonly NamedCost[];
  readonly allowance: readonly NamedCost[];
};

/** The job with the addition's costs after its own. */
export const withAddition = (input: RollUpInput, more: Addition): RollUpInput => ({
  ...input,
  material: [...input.material, ...more.material],
  labour: [...input.labour, ...more.labour],
  equipment: [...input.equipment, ...more.equipment],
  subcontract: [...input.subcontract, ...more.subcontract],
  allowance: [...input.allowance, ...more.allowance],
});
