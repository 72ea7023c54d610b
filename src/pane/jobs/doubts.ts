/** What a job's total does not hold, in short words. */
import type { JobEstimate } from "../../core/estimate/jobEstimate";
import { counted } from "../parts/quantities";

export const doubtsOf = ({ uncounted, material }: JobEstimate): readonly string[] =>
  [
    [uncounted.length, "opening not counted", "openings not counted"] as const,
    [material.unpriced.length, "item not priced", "items not priced"] as const,
    [material.unweighed.length, "item not weighed", "items not weighed"] as const,
  ].flatMap(([count, one, several]) => (count === 0 ? [] : [counted(count, one, several)]));
