/** What can be wrong or doubtful about an order, and how each is said. */
import type { FindingTable } from "../../base/finding";

export const orderFindings = {
  "nobody-sells": {
    level: "stop",
    says: "Nobody offers what is needed here, and it is not ordered ({count}): {found}.",
    todo: "Add offers, or take it off the order by hand.",
  },
  "no-bar-long-enough": {
    level: "stop",
    says: "These fit no bar that is offered or on hand, and are not ordered ({count}): {found}.",
    todo: "Offer a longer stock length, or check the cut lengths.",
  },
  "order-late": {
    level: "warn",
    says: "{found} from {supplier} should have been ordered by {orderBy}, {days} working days ago.",
    todo: "Order it now and ask for an earlier delivery, or tell the job.",
  },
  "offer-too-late": {
    level: "note",
    says: "The offer of {supplier} for {found} was left out: it would come {days} working days too late for {needBy}.",
    todo: "Nothing, unless the supplier can deliver sooner.",
  },
  "job-without-date": {
    level: "note",
    says: "{found} has no need-by date, so nothing of it can be late.",
    todo: "Type the date.",
  },
  "packs-not-proven": {
    level: "note",
    says: "The pack sizes of {found} have no common step; its packs are good and not proven cheapest.",
    todo: "Nothing, unless a pack size is mistyped.",
  },
} as const satisfies FindingTable;
