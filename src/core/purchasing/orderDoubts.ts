/** Phase eight of an order: what is not on it, what is late, and what is not proven. */
import { dateText } from "../base/date";
import { makeFinding, type Finding } from "../base/finding";
import { sizeOfBar } from "./bars";
import type { ItemCuts } from "./orderCuts";
import { orderFindings } from "./orderFindings";
import type { OrderInput } from "./orderInput";
import type { OrderLine } from "./orderPlan";
import { sizedName, type ShowSize } from "./sizedItem";
import type { Wanted } from "./wanted";

export type OrderParts = {
  readonly input: OrderInput;
  readonly wanted: readonly Wanted[];
  readonly cuts: readonly ItemCuts[];
  readonly lines: readonly OrderLine[];
};

/** Stops first, then what is late, then notes. */
export const orderDoubts = (parts: OrderParts, show: ShowSize): readonly Finding[] => [
  ...unsold(parts, show),
  ...unplaced(parts, show),
  ...late(parts, show),
  ...unproven(parts, show),
  ...parts.wanted.flatMap(({ leftOut }) => leftOut),
  ...parts.cuts.flatMap(({ leftOut }) => leftOut),
  ...withoutDate(parts),
];

const unsold = ({ wanted }: OrderParts, show: ShowSize): readonly Finding[] =>
  wanted.flatMap(({ sized, buy, offers }) =>
    buy === 0 || offers.length > 0
      ? []
      : [
          makeFinding(orderFindings, "nobody-sells", {
            found: sizedName(sized, show),
            values: { pieces: buy },
          }),
        ],
  );

const unplaced = ({ cuts }: OrderParts, show: ShowSize): readonly Finding[] =>
  cuts.flatMap(({ plan }) =>
    plan.unplaced.map(({ job, mark, length, count }) =>
      makeFinding(orderFindings, "no-bar-long-enough", {
        found: sizedName({ item: plan.item, size: sizeOfBar(length) }, show),
        values: { pieces: count, job, mark },
        job,
        mark,
      }),
    ),
  );

const late = ({ lines }: OrderParts, show: ShowSize): readonly Finding[] =>
  lines.flatMap((line) =>
    line.packs.flatMap(({ offer, deadline }) =>
      deadline === null || deadline.lateDays === 0
        ? []
        : [
            makeFinding(orderFindings, "order-late", {
              place: offer.place,
              found: sizedName(line, show),
              values: {
                supplier: offer.supplier,
                orderBy: dateText(deadline.orderBy),
                days: deadline.lateDays,
              },
            }),
          ],
    ),
  );

const unproven = ({ lines }: OrderParts, show: ShowSize): readonly Finding[] =>
  lines.flatMap((line) =>
    line.exact
      ? []
      : [makeFinding(orderFindings, "packs-not-proven", { found: sizedName(line, show) })],
  );

const withoutDate = ({ input, wanted, cuts }: OrderParts): readonly Finding[] => {
  const buying = new Set([
    ...wanted
      .flatMap(({ need }) => need?.jobs.filter(({ buy }) => buy > 0) ?? [])
      .map(({ job }) => job),
    ...cuts.flatMap(({ problem }) => problem.pieces.map(({ job }) => job)),
  ]);
  return input.jobs.flatMap(({ job, needBy }) =>
    needBy === null && buying.has(job)
      ? [makeFinding(orderFindings, "job-without-date", { found: job, job })]
      : [],
  );
};
