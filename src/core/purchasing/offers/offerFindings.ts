/** What can be wrong or doubtful in an offers table, and how each is said. */
import type { FindingTable } from "../../base/finding";

export const offerFindings = {
  "offer-without-item": {
    level: "warn",
    says: "This offer names no item and is not used.",
    todo: "Give it the code of an item.",
  },
  "offer-without-supplier": {
    level: "warn",
    says: "The offer for {item} names no supplier and is not used.",
    todo: "Type who sells it.",
  },
  "pack-size-not-whole": {
    level: "warn",
    says: "The pack size of {item} is “{found}”, which is no whole number of pieces; the offer is not used.",
    todo: "Type how many pieces a pack holds, such as 100.",
  },
  "offer-without-price": {
    level: "warn",
    says: "The offer for {item} has no price that can be read and is not used.",
    todo: "Type the price of one pack, such as 12.50.",
  },
  "pack-price-rounded": {
    level: "note",
    says: "The pack price of {item}, “{found}”, has parts of a cent and was rounded.",
    todo: "Type the price of the whole pack.",
  },
  "count-not-whole": {
    level: "warn",
    says: "“{found}” is no whole number from one up; the offer for {item} is not used.",
    todo: "Type how many packs, or leave the cell blank for one.",
  },
  "lead-not-days": {
    level: "warn",
    says: "The lead time of {item} is “{found}”, which is no number of days; it counts as none.",
    todo: "Type working days, such as 10.",
  },
  "lead-unknown": {
    level: "note",
    says: "The offer for {item} has no lead time; it counts as none.",
    todo: "Type working days, so that late items are found.",
  },
  "offer-date-not-a-date": {
    level: "warn",
    says: "The price date of {item} is “{found}”, which is not a date.",
    todo: "Type a date such as 2026-10-01.",
  },
  "price-old": {
    level: "note",
    says: "The price of {item} from {supplier} is of {date}, {days} days ago.",
    todo: "Ask whether it still holds.",
  },
  "price-rises": {
    level: "warn",
    says: "{item} from {supplier} costs no less from {found} packs than from fewer; this row is passed over.",
    todo: "Check the price and the count of both rows.",
  },
} as const satisfies FindingTable;
