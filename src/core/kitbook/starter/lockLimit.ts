/** The starter book counts no locks; it says so wherever the schedule names one. */
import { bases, type StarterLimit } from "./starterRows";

export const lockNotCounted: StarterLimit = {
  when: 'lock <> ""',
  level: "note",
  message: 'The lock "{lock}" is not counted. Add a row for it to the kit book, or add it by hand.',
  basis: bases.assumed,
};
