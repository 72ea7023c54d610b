/** Phase eight of an order: what is not on it, what is late, and what is not proven. */
import { dateText } from "../../base/date";
import { makeFinding, type Finding } from "../../base/finding";
import { sizeOfBar } from "../bars";
import type { CutPlan } from "../cutting/cutProblem";
import { groupBy } from "../../base/groupBy";
import type { ItemCuts } from "./orderCuts";
import { orderFindings } from "./orderFindings";
import type { OrderInput } from "./orderInput";
import type { OrderLine } from "./orderPlan";
import { sizedName, type ShowSize } from "../sizedItem";
import type { Wanted } from "../wanted";

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

/** One finding for all that nobody offers, cut lengths without any bar too. */
function unsold({ wanted, cuts }: OrderParts, show: ShowSize): readonly Finding[] {
  const names = [
    ...wanted.flatMap(({ sized, buy, offers }) =>
      buy === 0 || offers.length > 0 ? [] : [`${buy} of ${sizedName(sized, show)}`],
    ),
    ...cuts.filter(hasNoBars).flatMap(({ plan }) => notCut(plan, show)),
  ];
  return names.length === 0 ? [] : [gathered("nobody-sells", names)];
}

/** One finding for all lengths that the bars are too short for, or too few. */
function unplaced({ cuts }: OrderParts, show: ShowSize): readonly Finding[] {
  const left = cuts
    .filter((each) => !hasNoBars(each))
    .flatMap(({ plan }) => plan.unplaced.map((piece) => ({ plan, piece })));
  const [first] = left;
  if (first === undefined) return [];
  const names = left.map(
    ({ plan, piece: { length, count, job, mark } }) =>
      `${count} of ${sizedName({ item: plan.item, size: sizeOfBar(length) }, show)} for ${mark} of ${job}`,
  );
  const { job, mark } = first.piece;
  const isOneJob = left.every(({ piece }) => piece.job === job);
  const isOneMark = isOneJob && left.every(({ piece }) => piece.mark === mark);
  return [
    {
      ...gathered("no-bar-long-enough", names),
      ...(isOneJob ? { job } : {}),
      ...(isOneMark ? { mark } : {}),
    },
  ];
}

const gathered = (code: keyof typeof orderFindings, names: readonly string[]): Finding =>
  makeFinding(orderFindings, code, { found: names.join("; "), values: { count: names.length } });

const hasNoBars = ({ problem }: ItemCuts): boolean =>
  problem.stock.length === 0 && problem.onHand.length === 0;

/** By length, whatever mark it is for. */
const notCut = (plan: CutPlan, show: ShowSize): readonly string[] =>
  [...groupBy(plan.unplaced, ({ length }) => length)].map(([length, all]) => {
    const count = all.reduce((sum, each) => sum + each.count, 0);
    return `${count} of ${sizedName({ item: plan.item, size: sizeOfBar(length) }, show)}`;
  });

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
