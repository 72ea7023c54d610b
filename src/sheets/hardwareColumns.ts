/** The columns of the hardware sheet, in order. */
export type HardwareColumnKey =
  | "item"
  | "description"
  | "size"
  | "quantity"
  | "spares"
  | "toOrder"
  | "unit"
  | "unitsEach"
  | "unitCost"
  | "cost"
  | "weightEach"
  | "weight";

export type HardwareColumn = {
  readonly key: HardwareColumnKey;
  /** `{sign}` is the currency's. */
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
  column("quantity", "Quantity (pcs)", 10, {
    numbers: true,
    note: "Counted through the kit book. The Reasons sheet says why.",
  }),
  column("spares", "Spares (pcs)", 9, {
    numbers: true,
    note: "By the item's percentage and least number. You may type over it.",
  }),
  column("toOrder", "To order (pcs)", 9, { numbers: true, note: "Quantity and spares." }),
  column("unit", "Priced by", 12),
  column("unitsEach", "Units per piece", 9, {
    numbers: true,
    note: "Feet or square feet in one piece; 1 where it goes by the piece.",
  }),
  column("unitCost", "Unit cost ({sign})", 10, { numbers: true, isCost: true }),
  column("cost", "Cost ({sign})", 12, {
    numbers: true,
    isCost: true,
    note: "To order x units per piece x unit cost, rounded to cents.",
  }),
  column("weightEach", "Weight (lb per unit)", 10, { numbers: true }),
  column("weight", "Weight (lb)", 11, { numbers: true }),
];
