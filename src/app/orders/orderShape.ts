/** A kept order, read from JSON: those of older versions too, which were received whole. */
import { inches, isCents, isPieces, cents, pieces, type Inches } from "../../core/base/units";
import {
  orderStates,
  type OrderedCut,
  type OrderRecord,
  type TakenPieces,
} from "../../core/purchasing/books/orderRecord";
import type { ReceivedLine, Receipt } from "../../core/purchasing/books/receipt";
import { allOpen } from "../../core/purchasing/books/receipts";
import type { Share } from "../../core/purchasing/orders/shares";
import type { JobPieces, SizedPieces } from "../../core/purchasing/sizedPieces";
import {
  aNumber,
  aText,
  aYesNo,
  ifThere,
  listOf,
  numberThat,
  orNull,
  oneOf,
  partsOf,
  type Shape,
} from "../jsonShape";

const aCount = numberThat(isPieces, pieces);
const anAmount = numberThat(isCents, cents);
export const aWhole: Shape<number> = (value) =>
  Number.isSafeInteger(value) ? (value as number) : undefined;
const aSize: Shape<readonly Inches[]> = listOf(numberThat((value) => value > 0, inches));
export const sized = { item: aText, size: aSize };
export const aSizedPieces: Shape<SizedPieces> = partsOf<SizedPieces>({ ...sized, pieces: aCount });
const aJobPieces: Shape<JobPieces> = partsOf<JobPieces>({ ...sized, pieces: aCount, job: aText });
const aTaken = partsOf<TakenPieces>({
  ...sized,
  pieces: aCount,
  job: orNull(aText),
});
const shares: Shape<readonly Share[]> = listOf(
  partsOf<Share>({ job: orNull(aText), cost: anAmount }),
);

const aCut: Shape<OrderedCut> = partsOf<OrderedCut>({
  bar: partsOf<OrderedCut["bar"]>(sized),
  bars: aCount,
  isBought: aYesNo,
  gives: listOf(aJobPieces),
  offcuts: listOf(aSizedPieces),
});
const aReceipt: Shape<Receipt> = partsOf<Receipt>({
  day: aWhole,
  who: aText,
  reason: aText,
  lines: listOf(partsOf<ReceivedLine>({ line: aWhole, came: aCount, isClosed: aYesNo })),
});

const theParts: Shape<OrderRecord> = partsOf<OrderRecord>({
  number: aText,
  state: oneOf(orderStates),
  after: listOf(aText),
  made: aWhole,
  sent: orNull(aWhole),
  received: orNull(aWhole),
  jobs: listOf(
    partsOf<OrderRecord["jobs"][number]>({ job: aText, needBy: orNull(aNumber), shipTo: aText }),
  ),
  packs: listOf(
    partsOf<OrderRecord["packs"][number]>({
      ...sized,
      words: partsOf<OrderRecord["packs"][number]["words"]>({ description: aText, size: aText }),
      supplier: aText,
      packSize: aCount,
      count: aWhole,
      price: anAmount,
      cost: anAmount,
      leftOver: aCount,
      needBy: orNull(aNumber),
      orderBy: orNull(aNumber),
      jobs: listOf(aText),
      shares,
    }),
  ),
  charges: listOf(
    partsOf<OrderRecord["charges"][number]>({
      supplier: aText,
      madeUp: anAmount,
      freight: anAmount,
      shares,
    }),
  ),
  covers: listOf(aJobPieces),
  fromShelf: listOf(aTaken),
  fromOrders: listOf(aTaken),
  offcuts: listOf(aSizedPieces),
  cuts: ifThere(orNull(listOf(aCut)), null),
  total: anAmount,
  currency: aText,
  complete: aYesNo,
  receipts: ifThere(listOf(aReceipt), []),
  givenUp: ifThere(listOf(aTaken), []),
});

/** An order that an older version marked as received has one receipt of all of it. */
export const anOrder: Shape<OrderRecord> = (value) => {
  const order = theParts(value);
  const { received = null } = order ?? {};
  if (order === undefined || received === null || order.receipts.length > 0) return order;
  const whole: Receipt = { day: received, who: "", reason: "", lines: allOpen(order) };
  return { ...order, receipts: [whole] };
};
