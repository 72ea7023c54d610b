/** Which offers come in time, and which are left out because others do. */
import { dateText } from "../../base/date";
import { makeFinding, type Finding } from "../../base/finding";
import { deadline, type Timing } from "../orders/dates";
import type { Offer } from "./offers";
import { orderFindings } from "../orders/orderFindings";

export type TimelyOffers = {
  readonly offers: readonly Offer[];
  /** Offers that were left out for coming too late. */
  readonly leftOut: readonly Finding[];
};

/** Whether an order today still comes in time. Always, where no date is known. */
const isInTime = (offer: Offer, needBy: number | null, timing: Timing): boolean =>
  needBy === null || deadline(needBy, offer.leadDays, timing).lateDays === 0;

/** Leaves out the late offers where at least one is in time. With none in time all stay: late is better than never. */
export function timelyOffers(
  offers: readonly Offer[],
  needBy: number | null,
  timing: Timing,
): TimelyOffers {
  const inTime = offers.filter((offer) => isInTime(offer, needBy, timing));
  if (needBy === null || inTime.length === 0 || inTime.length === offers.length) {
    return { offers, leftOut: [] };
  }
  const leftOut = offers.filter((offer) => !inTime.includes(offer));
  return {
    offers: inTime,
    leftOut: leftOut.map((offer) =>
      makeFinding(orderFindings, "offer-too-late", {
        place: offer.place,
        found: offer.item,
        values: {
          supplier: offer.supplier,
          days: deadline(needBy, offer.leadDays, timing).lateDays,
          needBy: dateText(needBy),
        },
      }),
    ),
  };
}
