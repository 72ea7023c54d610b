/** What the sheets of an order are drawn with. */
import type { Cents } from "../../core/base/units";
import type { LengthStyle } from "../../core/lengths/writeLength";
import type { Currency } from "../../core/money/currency";
import { majorUnits } from "../../core/money/writeMoney";
import type { OrderPlan } from "../../core/purchasing/orders/orderPlan";
import type { OrderContents } from "../../core/purchasing/books/orderRecord";
import type { SizedItem } from "../../core/purchasing/sizedItem";
import type { SizeText } from "../../core/takeoff/sizeTexts";
import type { DrawnCell, SheetMark } from "../../workbook/drawing";
import { date, number, text, type Dress } from "../cells";

export type OrderSheetWish = {
  readonly plan: OrderPlan;
  readonly complete: boolean;
  readonly lengths: LengthStyle;
  /** The size of a line in words; never the same for two sizes of an item. */
  readonly sizeText: SizeText;
  readonly currency: Currency;
  /** An item's description; the empty text where it has none. */
  readonly describe: (item: string) => string;
  /** `null` for an order that is not kept. */
  readonly number: string | null;
};

/** What the sheets that stand on the record alone are drawn with. */
export type RecordedOrder = {
  readonly contents: OrderContents;
  readonly currency: Currency;
  /** `null` for an order that is not kept. */
  readonly number: string | null;
  /** `Draft of 2026-11-02`, `Sent on 2026-11-03`. */
  readonly stateWords: string;
  /** What goes out says nothing of what is not on it. */
  readonly isSent: boolean;
};

/** An order's own sheet beside those of other orders: `Order allocation`, or `PO-7 allocation`. */
export const orderSheetName = (number: string | null, words: string): string =>
  number === null ? `Order ${words}` : `${number} ${words}`;

/** The mark of a sheet about a whole order. */
export const orderMark = (kind: OrderSheetKind, number: string | null): SheetMark => ({
  kind,
  subject: number ?? "",
});

/** The kinds of sheets that an order has one each of. */
export const orderSheetKinds = ["allocation", "order needs", "cut list", "left over"] as const;
type OrderSheetKind = (typeof orderSheetKinds)[number];

/** The mark of what one supplier is to send. */
export const supplierMark = (supplier: string, number: string | null): SheetMark => ({
  kind: "order",
  subject: number === null ? supplier : `${number}: ${supplier}`,
});

export const notComplete =
  "NOT COMPLETE: not everything that is needed is on this order. See the findings.";

export const moneyCell = (amount: Cents, currency: Currency, dress: Dress = {}): DrawnCell =>
  number(majorUnits(amount, currency), "money", dress);

export const sizeCell = (sized: SizedItem, { sizeText }: OrderSheetWish): DrawnCell =>
  text(sizeText(sized), { align: "right" });

/** In the middle, so that it stands clear of numbers before it and words behind it. */
export const dateCell = (serial: number | null): DrawnCell =>
  serial === null ? text("") : date({ kind: "date", serial }, { align: "center" });
