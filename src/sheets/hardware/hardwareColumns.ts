/** The columns of the hardware sheet, in order. */
export type HardwareColumnKey =
  | "item"
  | "description"
  | "size"
  | "counted"
  | "correction"
  | "reason"
  | "by"
  | "quantity"
  | "spares"
  | "toOrder"
  | "unit"
  | "unitsEach"
  | "unitCost"
  | "cost"
  | "weightEach"
  | "weight"
  | "line";

export type HardwareColumn = {
  readonly key: HardwareColumnKey;
  /** `{sign}` is the currency's, `{weight}` the unit of weight. */
  readonly heading: string;
  /** Characters. */
  readonly width: number;
  readonly numbers: boolean;
  /** Left out of a sheet without costs. */
  readonly isCost: boolean;
  readonly note?: string;
};

const column = (
  key: HardwareColumnKey,
  heading: string,
  width: number,
  more: Partial<HardwareColumn> = {},
): HardwareColumn => ({ key, heading, width, numbers: false, isCost: false, ...more });

export const hardwareColumns: readonly HardwareColumn[] = [
  column("item", "Item", 19),
  column("description", "Description", 66),
  column("size", "Size", 19),
  column("counted", "Counted (pcs)", 10, {
    numbers: true,
    note: "Counted through the kit book. The Reasons sheet says why.",
  }),
  column("correction", "Correction", 11, {
    numbers: true,
    note: "Type +3 for three more, -2 for two fewer, =14 or 14 for fourteen instead of the count. It is kept by job, item and size when you take off again. To take it away, clear the cell; a row that is deleted comes back.",
  }),
  column("reason", "Reason", 22, { note: "Why it was corrected." }),
  column("by", "By", 6, { note: "The initials of who corrected it." }),
  column("quantity", "Quantity (pcs)", 10, {
    numbers: true,
    note: "What is counted, with the correction.",
  }),
  column("spares", "Spares (pcs)", 9, {
    numbers: true,
    note: "By the item's percentage and least number. You may type over it: what you type is kept. Clear the cell to go by the rule again.",
  }),
  column("toOrder", "To order (pcs)", 9, { numbers: true, note: "Quantity and spares." }),
  column("unit", "Priced by", 12),
  column("unitsEach", "Units per piece", 9, {
    numbers: true,
    note: "Feet or square feet in one piece; 1 where it goes by the piece.",
  }),
  column("unitCost", "Unit cost ({sign})", 10, {
    numbers: true,
    isCost: true,
    note: "Change it on the items sheet. What is typed here is not carried on: the sheet is then kept beside the new one.",
  }),
  column("cost", "Cost ({sign})", 12, {
    numbers: true,
    isCost: true,
    note: "To order x units per piece x unit cost, rounded to cents.",
  }),
  column("weightEach", "Weight ({weight} per unit)", 10, { numbers: true }),
  column("weight", "Weight ({weight})", 11, { numbers: true }),
  column("line", "Line", 12, {
    note: "Cribsheet knows the row by this: job, item and exact size in inches. Leave it as it is.",
  }),
];
