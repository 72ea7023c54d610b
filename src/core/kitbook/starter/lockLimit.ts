/**
 * The starter book counts no locks; it says so wherever the schedule names one. Padlocks are passed over:
 * whoever uses the door brings them (common practice, no source).
 */
import { bases, type StarterLimit } from "./starterRows";

export const lockNotCounted: StarterLimit = {
  when: 'AND(lock <> "", RIGHT(TRIM(lock), 7) <> "padlock", RIGHT(TRIM(lock), 8) <> "padlocks")',
  level: "note",
  message: 'The lock "{lock}" is not counted. Add a row for it to the kit book, or add it by hand.',
  basis: bases.assumed,
};
