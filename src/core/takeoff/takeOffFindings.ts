/** What can be wrong with an opening once the kit book is asked about it. */
import type { FindingTable } from "../base/finding";

export const takeOffFindings = {
  "size-missing": {
    level: "stop",
    says: "Not counted: {error}.",
    todo: "Type it in the schedule: the kit book needs it for this opening type.",
  },
  "not-in-chart": {
    level: "stop",
    says: "Not counted: {error}.",
    todo: "Check the sizes of the opening, or add the combination to the kit book's charts.",
  },
  "cannot-work-out": {
    level: "stop",
    says: "Not counted: {formula} cannot be worked out: {error}.",
    todo: "Check the opening's cells, then that row of the kit book.",
  },
  "quantity-not-whole": {
    level: "stop",
    says: "Not counted: {row} comes to {found} pieces for this opening ({formula}).",
    todo: "A quantity must be a whole number from zero up: mend the formula, with ROUNDUP if a part piece needs a whole one.",
  },
  "size-not-a-length": {
    level: "stop",
    says: "Not counted: the size of {row} comes to {found} for this opening ({formula}).",
    todo: "A size must be a length above zero: check the opening, then the formula.",
  },
  "item-not-named": {
    level: "stop",
    says: "Not counted: {row} names no item for this opening ({formula}).",
    todo: "Mend the formula so that it always gives an item's code.",
  },
  "size-nearly-alike": {
    level: "note",
    says: "{item} is {found} here and {there} elsewhere in the job, less than {closest} apart: they are made, bought and bagged as two sizes.",
    todo: "If the same is meant, type it the same way.",
  },
} as const satisfies FindingTable;
