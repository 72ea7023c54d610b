/** An order to be worked out, as plain data: it can be sent to another thread. */
import type { SawRules } from "../cutting/cutProblem";
import type { OrderInput } from "./orderInput";
import { itemKey } from "../sizedItem";
import type { SparesRule } from "../spares";

export type OrderTask = Omit<OrderInput, "spares" | "saw"> & {
  /** By `itemKey`, for every item that is asked for. */
  readonly spares: ReadonlyMap<string, SparesRule>;
  readonly saw: ReadonlyMap<string, SawRules>;
};

export function orderTask({ spares, saw, ...rest }: OrderInput): OrderTask {
  const items = new Map(rest.demands.map((demand) => [itemKey(demand), demand.item]));
  const ruled = <Rule>(rule: (item: string) => Rule): ReadonlyMap<string, Rule> =>
    new Map([...items].map(([key, item]) => [key, rule(item)]));
  return { ...rest, spares: ruled(spares), saw: ruled(saw) };
}

/** @throws RangeError, in its rules, for an item that no demand asks for. */
export function orderInputOf({ spares, saw, ...rest }: OrderTask): OrderInput {
  const known =
    <Rule>(rules: ReadonlyMap<string, Rule>) =>
    (item: string): Rule => {
      const rule = rules.get(itemKey({ item }));
      if (rule === undefined) throw new RangeError(`Nobody asks for ${item}`);
      return rule;
    };
  return { ...rest, spares: known(spares), saw: known(saw) };
}
