/**
 * The material of a job at what was really ordered for it: each item's share of the orders that were
 * sent, and the items table for what no order bought.
 */
import { makeFinding, type Finding, type FindingTable } from "../base/finding";
import { cents, type Cents } from "../base/units";
import type { Currency } from "../money/currency";
import { shareByLargestRemainder } from "../money/share";
import { moneyText } from "../money/writeMoney";
import { groupBy } from "../base/groupBy";
import { inEffect } from "../purchasing/books/orderProgress";
import type { OrderRecord } from "../purchasing/books/orderRecord";
import { itemKey, sizedKey } from "../purchasing/sizedItem";
import { piecesByKey } from "../purchasing/sizedPieces";
import { jobKey } from "../takeoff/takeOff";
import { materialOf, type Material, type MaterialLine } from "./material";

export const orderedMaterialFindings = {
  "material-by-orders": {
    level: "note",
    says: "Material of {job} that was ordered costs what orders {found} say, and the rest what the items table says.",
    todo: "Bars that were cut from the shelf cost nothing here: an earlier order has paid for them.",
  },
  "order-in-other-currency": {
    level: "warn",
    says: "Order {found} for {job} is in {currency}: its costs are not used.",
    todo: "Price in one currency.",
  },
} as const satisfies FindingTable;

export type OrderedMaterial = {
  readonly material: Material;
  /** The job's part of what suppliers added to their goods: freight, and least orders made up. */
  readonly charges: Cents;
  /** Of which orders and suppliers they are, and what share; the empty text where there are none. */
  readonly chargesHow: string;
  /** Numbers of the orders that costs were taken from. */
  readonly orders: readonly string[];
  readonly findings: readonly Finding[];
};

/**
 * Drafts cost nothing yet, and what was closed short costs nothing. What was ordered and is needed no
 * more is paid for, and counts. `nameOf`: the job's name here by the name that an order has for it.
 */
export function orderedMaterial(
  job: string,
  material: Material,
  orders: readonly OrderRecord[],
  currency: Currency,
  nameOf: (kept: string) => string = (kept) => kept,
): OrderedMaterial {
  const isJobs = (each: { readonly job: string | null }): boolean =>
    each.job !== null && jobKey(nameOf(each.job)) === jobKey(job);
  const sent = orders.filter(({ state, jobs }) => state !== "draft" && jobs.some(isJobs));
  const used = sent.filter((order) => order.currency === currency.code).map(inEffect);
  const shareIn = (shares: OrderRecord["packs"][number]["shares"]): number =>
    shares.filter(isJobs).reduce((sum, { cost }) => sum + cost, 0);
  const paid = new Map<string, number>();
  for (const packs of used.flatMap((order) => order.packs)) {
    const key = itemKey(packs);
    paid.set(key, (paid.get(key) ?? 0) + shareIn(packs.shares));
  }
  const covered = piecesByKey(used.flatMap(({ covers }) => covers).filter(isJobs), sizedKey);
  const taken = piecesByKey(
    used.flatMap(({ fromShelf, fromOrders }) => [...fromShelf, ...fromOrders]).filter(isJobs),
    sizedKey,
  );
  const boughtOf = ({ line }: MaterialLine): number =>
    Math.max(0, (covered.get(sizedKey(line)) ?? 0) - (taken.get(sizedKey(line)) ?? 0));
  const repriced = new Map<MaterialLine, MaterialLine>();
  for (const [key, lines] of groupBy(material.lines, ({ line }) => itemKey(line))) {
    const cost = paid.get(key) ?? 0;
    if (cost === 0) continue;
    for (const [from, to] of atCost(lines, cents(cost), boughtOf)) repriced.set(from, to);
  }
  const charges = used.flatMap(({ number, charges: ofOrder }) =>
    ofOrder.map(({ supplier, madeUp, freight, shares }) => ({
      of: `order ${number}, ${supplier}`,
      share: shareIn(shares),
      whole: madeUp + freight,
    })),
  );
  const numbers = used.map(({ number }) => number);
  return {
    material:
      repriced.size === 0
        ? material
        : materialOf(
            material.lines.map((line) => repriced.get(line) ?? line),
            material.families.map(({ family }) => family),
          ),
    charges: cents(charges.reduce((sum, { share }) => sum + share, 0)),
    chargesHow: charges
      .filter(({ share }) => share !== 0)
      .map(({ of, share, whole }) => `${of}: ${shareWords(cents(share), cents(whole), currency)}`)
      .join("; "),
    orders: numbers,
    findings: [
      ...(numbers.length === 0
        ? []
        : [
            makeFinding(orderedMaterialFindings, "material-by-orders", {
              job,
              found: numbers.join(", "),
              values: { job },
            }),
          ]),
      ...sent
        .filter((order) => order.currency !== currency.code)
        .map((order) =>
          makeFinding(orderedMaterialFindings, "order-in-other-currency", {
            job,
            found: order.number,
            values: { job, currency: order.currency },
          }),
        ),
    ],
  };
}

/** Such as `all of $40.00`, or `$12.50 of $40.00, by its share of the goods`. */
const shareWords = (share: Cents, whole: Cents, currency: Currency): string =>
  share === whole
    ? `all of ${moneyText(whole, currency)}`
    : `${moneyText(share, currency)} of ${moneyText(whole, currency)}, by its share of the goods`;

/**
 * The lines of one item with the cost of the orders shared over what they bought of each, by pieces
 * and size, and the items table's for pieces beyond that.
 */
function atCost(
  lines: readonly MaterialLine[],
  paid: Cents,
  boughtOf: (line: MaterialLine) => number,
): ReadonlyMap<MaterialLine, MaterialLine> {
  const bought = lines.map(boughtOf);
  const isKnown = bought.some((count) => count > 0);
  const weights = lines.map(
    (line, index) => (isKnown ? (bought[index] ?? 0) : line.toOrder) * (line.unitsEach ?? 1),
  );
  const hasWeight = weights.some((weight) => weight > 0);
  const shares = shareByLargestRemainder(
    paid,
    hasWeight ? weights : lines.map(() => 1),
    lines.map(({ line }) => sizedKey(line)),
  );
  return new Map(
    lines.map((line, index) => {
      const left = isKnown ? Math.max(0, line.toOrder - (bought[index] ?? 0)) : 0;
      const rest =
        left === 0 ? 0 : line.cost === null ? null : Math.round((line.cost * left) / line.toOrder);
      const cost = rest === null ? null : cents((shares[index] ?? 0) + rest);
      return [line, { ...line, cost, isOrdered: true }];
    }),
  );
}
