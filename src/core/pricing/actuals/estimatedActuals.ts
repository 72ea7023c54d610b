/** What a job was estimated to cost, take and use: the names that actuals are typed against. */
import { cents, minutes, pieces, type Cents } from "../../base/units";
import type { CostPair, JobActuals } from "./actuals";
import type { Material } from "../material";
import type { JobPrice } from "../priceJob";
import type { DirectGroup, FamilyMaterial, RollUpInput } from "../rollup/rollUpInput";

/** The direct costs besides material, as actuals name them. */
export const costNames = {
  freight: "Freight",
  labour: "Labour",
  equipment: "Equipment",
  subcontract: "Subcontract",
  allowance: "Allowances",
} as const satisfies Readonly<Record<Exclude<DirectGroup, "material">, string>>;

export const materialName = (family: string): string => `Material: ${family}`;

/**
 * A job's estimate with nothing actual yet: a cost for each material family with what the job pays of
 * its spares and left-overs, one for each other direct cost, its bags, its items.
 */
export function estimatedActuals(
  { job, input, rollUp, hours }: Pick<JobPrice, "job" | "input" | "rollUp" | "hours">,
  material: Material,
): JobActuals {
  const groups = Object.entries(costNames).flatMap(([group, name]): readonly CostPair[] => {
    const own = rollUp.lines.filter((line) => line.group === group);
    if (own.length === 0) return [];
    return [{ name, estimated: cents(sumOver(own, ({ amount }) => amount)), actual: null }];
  });
  const counted = new Map<string, number>();
  for (const { line } of material.lines) {
    counted.set(line.item, (counted.get(line.item) ?? 0) + line.quantity);
  }
  return {
    job,
    costs: [
      ...input.material.map((family) => ({
        name: materialName(family.family),
        estimated: paidFor(family, input),
        actual: null,
      })),
      ...groups,
    ],
    bags: hours.bags.map((bag) => ({
      bag: bag.bag,
      estimated: minutes(bag.minutes),
      actual: null,
      rows: bag.rows,
    })),
    pieces: [...counted].map(([item, count]) => ({ item, counted: pieces(count), used: null })),
  };
}

const sumOver = <Part>(parts: readonly Part[], of: (part: Part) => number): number =>
  parts.reduce((sum, part) => sum + of(part), 0);

const paidFor = (
  { counted, spares, leftOver }: FamilyMaterial,
  { sparesPaidBy, leftOverPaidBy }: RollUpInput,
): Cents =>
  cents(
    counted + (sparesPaidBy === "job" ? spares : 0) + (leftOverPaidBy === "job" ? leftOver : 0),
  );
