/** Offers: what suppliers sell, as typed and once checked. */
import { isBlank, readDate, type CellPlace, type TypedCell } from "../../base/cell";
import { dateText } from "../../base/date";
import { makeFinding, type Finding, type FindingDetails } from "../../base/finding";
import { pieces, type Cents, type Pieces } from "../../base/units";
import type { LengthUnit } from "../../lengths/length";
import type { Currency } from "../../money/currency";
import { groupBy } from "../../base/groupBy";
import { numberOf, readPackPrice, readSize, textOf, type Report } from "./offerCells";
import { offerFindings } from "./offerFindings";
import { sizedKey, type SizedItem } from "../sizedItem";

/** The columns of an offers table, in the order they are written. */
export const offerColumns = [
  "item",
  "size",
  "supplier",
  "packSize",
  "price",
  "fromPacks",
  "leastPacks",
  "leadDays",
  "priceDate",
] as const;
export type OfferColumn = (typeof offerColumns)[number];

/** A row as typed; a column is absent where the table does not have it. */
export type OfferRow = Readonly<Partial<Record<OfferColumn, TypedCell>>> & {
  readonly item: TypedCell;
};

/** A pack that can be bought. */
export type Offer = SizedItem & {
  /** As the table's first row of this supplier spells it. */
  readonly supplier: string;
  /** Pieces in a pack, one or more. */
  readonly packSize: Pieces;
  /** Of one pack. */
  readonly price: Cents;
  /** The price holds from so many packs, for every one of them. One or more. */
  readonly fromPacks: number;
  /** Fewer packs are not sold. One or more. */
  readonly leastPacks: number;
  /** Working days from the order to the delivery. */
  readonly leadDays: number;
  /** A date serial; `null` where the table gives none. */
  readonly priceDate: number | null;
  /** The cell of the item. */
  readonly place: CellPlace | null;
};

export type OfferRules = {
  readonly currency: Currency;
  /** What a bare number in the size column means. */
  readonly unit: LengthUnit;
  /** Date serial of the day the offers are read. */
  readonly today: number;
  /** A price older than so many days is noted. */
  readonly staleAfterDays: number;
};

/** Packs hold fewer pieces than this, and counts of packs and days are smaller too. */
const largestCount = 1_000_000;

/**
 * Checks every row, in order. A row that cannot be bought from is reported and left out; blank
 * counts are one. Rows that are all blank are passed over.
 */
export function checkOffers(
  rows: readonly OfferRow[],
  rules: OfferRules,
): { readonly offers: readonly Offer[]; readonly findings: readonly Finding[] } {
  const findings: Finding[] = [];
  const spellings = new Map<string, string>();
  const filled = rows.filter((row) =>
    offerColumns.some((column) => !isBlank(row[column]?.value ?? null)),
  );
  const offers = filled.flatMap((row) => {
    const offer = checkOffer(row, rules, (finding) => findings.push(finding));
    if (offer === null) return [];
    const key = supplierKey(offer.supplier);
    const supplier = spellings.get(key) ?? offer.supplier;
    spellings.set(key, supplier);
    return [{ ...offer, supplier }];
  });
  return { offers, findings: [...findings, ...pricesThatRise(offers)] };
}

/** The same for the same supplier in any case and with spaces doubled. */
export const supplierKey = (name: string): string => name.trim().replace(/\s+/g, " ").toLowerCase();

/** Offers by `sizedKey`, each group in its order. */
export const offersByItem = (offers: readonly Offer[]): ReadonlyMap<string, readonly Offer[]> =>
  groupBy(offers, sizedKey);

function checkOffer(row: OfferRow, rules: OfferRules, report: Report): Offer | null {
  const item = textOf(row.item);
  const supplier = textOf(row.supplier);
  const say = (
    code: keyof typeof offerFindings,
    cell: TypedCell | undefined,
    values: FindingDetails["values"] = {},
  ): null => {
    const place = cell?.place ?? row.item.place;
    const all = { item, supplier, ...values };
    report(makeFinding(offerFindings, code, { place, found: textOf(cell), values: all }));
    return null;
  };
  const count = (column: OfferColumn, code: keyof typeof offerFindings): number | null => {
    const number = numberOf(row[column]) ?? 1;
    return isCount(number) ? number : say(code, row[column]);
  };
  const leadDays = (): number => {
    const lead = numberOf(row.leadDays);
    if (lead === null) say("lead-unknown", row.leadDays);
    else if (lead >= 0 && lead < largestCount) return Math.ceil(lead);
    else say("lead-not-days", row.leadDays);
    return 0;
  };
  const priceDate = (): number | null => {
    const cell = row.priceDate;
    if (cell === undefined || isBlank(cell.value)) return null;
    const serial = readDate(cell.value);
    if (serial === null) return say("offer-date-not-a-date", cell);
    const days = Math.floor(rules.today) - Math.floor(serial);
    if (days > rules.staleAfterDays) say("price-old", cell, { date: dateText(serial), days });
    return serial;
  };

  if (item === "") return say("offer-without-item", row.item);
  if (supplier === "") return say("offer-without-supplier", row.supplier);
  const packSize = count("packSize", "pack-size-not-whole");
  const fromPacks = count("fromPacks", "count-not-whole");
  const leastPacks = count("leastPacks", "count-not-whole");
  const size = readSize(row.size, rules.unit, report);
  const price = readPackPrice(row.price, rules.currency, report);
  if (price === null) return say("offer-without-price", row.price);
  if (packSize === null || fromPacks === null || leastPacks === null || size === null) return null;
  if (price.isRounded) say("pack-price-rounded", row.price);
  return {
    item,
    size,
    supplier,
    packSize: pieces(packSize),
    price: price.price,
    fromPacks,
    leastPacks,
    leadDays: leadDays(),
    priceDate: priceDate(),
    place: row.item.place,
  };
}

/** Offers that cost no less than one of the same pack from as few packs or fewer. */
const pricesThatRise = (offers: readonly Offer[]): readonly Finding[] =>
  [...offersByItem(offers).values()].flatMap((group) =>
    group.flatMap((offer, index) => {
      const { item, supplier, packSize, fromPacks, price, place } = offer;
      const isPassedOver = group.some(
        (other, at) =>
          other.supplier === supplier &&
          other.packSize === packSize &&
          other.price <= price &&
          (other.fromPacks < fromPacks ||
            (other.fromPacks === fromPacks && (other.price < price || at < index))),
      );
      const details = { place, found: String(fromPacks), values: { item, supplier } };
      return isPassedOver ? [makeFinding(offerFindings, "price-rises", details)] : [];
    }),
  );

const isCount = (number: number): boolean =>
  Number.isInteger(number) && number >= 1 && number < largestCount;
