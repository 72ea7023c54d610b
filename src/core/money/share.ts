/** Sharing an amount of money so that nothing is lost or made. */
import { shareWhole } from "../base/shareWhole";
import { cents, type Cents } from "../base/units";

/**
 * `total` shared in proportion to `weights`, in their order; the shares add up to `total` exactly.
 * Each share is within one minor unit of its exact part. Where weights are equal, the earlier of
 * `names` gets the odd unit, so with names that differ the order of the entries never matters. All
 * rules, and when it throws: `shareWhole`.
 */
export const shareByLargestRemainder = (
  total: Cents,
  weights: readonly number[],
  names: readonly string[] = [],
): Cents[] => shareWhole(total, weights, names).map(cents);
