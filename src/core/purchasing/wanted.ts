/** Phase three of an order: what is to be bought, and who sells it in time. */
import type { Finding } from "../base/finding";
import type { Pieces } from "../base/units";
import { barsToBuy, sizeOfBar } from "./bars";
import type { Need } from "./need";
import { offersByItem, type Offer } from "./offers/offers";
import type { ItemCuts } from "./orders/orderCuts";
import type { OrderInput } from "./orders/orderInput";
import { barLine, looseLine } from "./orders/orderLines";
import type { OrderNeed } from "./orders/orderNeeds";
import type { OrderLine } from "./orders/orderPlan";
import type { PackCover } from "./offers/packs";
import { sizedKey, type SizedItem } from "./sizedItem";
import { timelyOffers } from "./offers/timelyOffers";

/** Something to buy, and the line it makes. */
export type Wanted = {
  readonly sized: SizedItem;
  readonly buy: Pieces;
  /** `null` for bars. */
  readonly need: Need | null;
  readonly offers: readonly Offer[];
  readonly leftOut: readonly Finding[];
  /** `null` where there is nothing to buy or nobody sells it. */
  readonly lineOf: (cover: PackCover | null) => OrderLine;
};

/** Loose needs, also those that the shelf covers wholly, then new bars. */
export function wantedOf(
  input: OrderInput,
  needs: readonly OrderNeed[],
  cuts: readonly ItemCuts[],
): readonly Wanted[] {
  const selling = offersByItem(input.offers);
  const loose = needs
    .filter(({ isCut }) => !isCut)
    .map((each): Wanted => {
      const { need, needBy } = each;
      const all = selling.get(sizedKey(need)) ?? [];
      const { offers, leftOut } =
        input.leaveOutLate && need.buy > 0
          ? timelyOffers(all, needBy, input.timing)
          : { offers: all, leftOut: [] };
      const lineOf = (cover: PackCover | null): OrderLine => looseLine(each, cover, input.timing);
      return { sized: need, buy: need.buy, need, offers, leftOut, lineOf };
    });
  const bars = cuts.flatMap(({ plan, offers, needBy }) =>
    barsToBuy(plan).map((bar): Wanted => ({
      sized: { item: plan.item, size: sizeOfBar(bar.length) },
      buy: bar.bars,
      need: null,
      offers: offers.get(bar.length) ?? [],
      leftOut: [],
      lineOf: (cover) => barLine(bar, plan, cover, needBy, input.timing),
    })),
  );
  return [...loose, ...bars];
}

/** Whether there is something to buy and somebody sells it. */
export const isSold = ({ buy, offers }: Wanted): boolean => buy > 0 && offers.length > 0;
