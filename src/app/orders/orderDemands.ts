/** What a job asks an order for: its lines after corrections, mark by mark. */
import { itemKey } from "../../core/pricing/item";
import { quantityByMark } from "../../core/corrections/correctedLine";
import type { Demand } from "../../core/purchasing/orders/orderInput";
import type { JobPieces } from "../../core/purchasing/sizedPieces";
import type { ChosenJob } from "./chooseJobs";

/**
 * Cut from bars is what the kit book gives a cut length, and what a person added of such an item in
 * one length.
 */
export function demandsOf({ name, estimate }: ChosenJob): readonly Demand[] {
  const { lines } = estimate.material;
  const isCutLine = ({ line }: (typeof lines)[number]): boolean =>
    line.counts.some(({ part }) => part.cutLength !== null);
  const cutItems = new Set(lines.filter(isCutLine).map(({ line }) => itemKey(line.item)));
  return lines.flatMap(({ line }) =>
    quantityByMark(line).map(({ mark, quantity }) => ({
      job: name,
      mark,
      item: line.item,
      size: line.size,
      quantity,
      isCut: line.size.length === 1 && cutItems.has(itemKey(line.item)),
    })),
  );
}

/** Spares that were typed for a line, which take the place of the item's rule. */
export const typedSparesOf = ({ name, estimate }: ChosenJob): readonly JobPieces[] =>
  estimate.material.lines.flatMap(({ line: { item, size, ownSpares } }) =>
    ownSpares === null ? [] : [{ job: name, item, size, pieces: ownSpares }],
  );
