/** What can be wrong or doubtful about a price. */
import type { FindingTable } from "../base/finding";

export const priceFindings = {
  "percent-not-a-number": {
    level: "stop",
    says: "The {kind} is {found}, which is not a percentage.",
    todo: "Type a number such as 25 %. Until then there is no price.",
  },
  "percent-missing": {
    level: "stop",
    says: "The {kind} is blank.",
    todo: "Type a number such as 25 %. Until then the price is no more than the cost.",
  },
  "percent-out-of-range": {
    level: "stop",
    says: "A {kind} of {read} is out of range: it may be from {least} to {most}.",
    todo: "Type a percentage in that range. Until then there is no price.",
  },
  "margin-out-of-range": {
    level: "stop",
    says: "A margin of {read} is out of range: margin = profit / price, and the most is {most}.",
    todo: "Type a smaller margin, or type this percentage as a markup.",
  },
  "percent-read-as": {
    level: "note",
    says: "The {kind} {found} is read as {read}.",
    todo: "Type it with its % sign to be sure.",
  },
  "percent-tiny": {
    level: "warn",
    says: "A {kind} of {read} is below one percent.",
    todo: "If {found} was meant as a share of one, type it as a percentage.",
  },
  "markup-is-the-target-margin": {
    level: "note",
    says: "A markup of {read} is the same number as the target margin, but gives a margin of {margin} only.",
    todo: "For the target margin use a markup of {needed}, or price by margin.",
  },
  "margin-is-the-target-markup": {
    level: "note",
    says: "A margin of {read} needs a markup of {markup}; a markup of {read} would give the target margin of {target}.",
    todo: "Price by markup if that was meant.",
  },
  "margin-looks-like-markup": {
    level: "note",
    says: "A margin of {read} needs a markup of {markup}.",
    todo: "If {read} on cost was meant, price by markup.",
  },
  "minutes-not-known": {
    level: "warn",
    says: "The minutes of {row} are no time for {mark} ({formula}: {found}). Hours and price are only a least.",
    todo: "Check the opening's cells, then that row of the kit book.",
  },
  "price-incomplete": {
    level: "warn",
    says: "{job}: not known, and so not in the price: {names} ({count} in all).",
    todo: "Price them, or carry an allowance. Until then cost and price are only a least.",
  },
  "price-below-cost": {
    level: "warn",
    says: "The price {price} is below the cost {cost}.",
    todo: "Every such job loses money. Check the typed price or the percentage.",
  },
  "margin-below-target": {
    level: "warn",
    says: "The margin of {margin} is below the target of {target}.",
    todo: "{needed} keeps the target.",
  },
  "prices-old": {
    level: "warn",
    says: "The oldest price of this job is of {date}, {days} days ago.",
    todo: "Ask the supplier again, or carry an allowance.",
  },
  "range-not-usable": {
    level: "stop",
    says: "The range of {factor} cannot be used: {reason}.",
    todo: "Type it as lowest, most likely, highest.",
  },
} as const satisfies FindingTable;
