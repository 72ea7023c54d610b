/** Jobs taken off by the starter's kit book, to price in tests. */
import type { CellValue } from "../../../src/core/base/cell";
import { estimate, type Estimate } from "../../../src/core/estimate/estimate";
import type { KitBookRows } from "../../../src/core/kitbook/rows";
import { starterItems } from "../../../src/core/kitbook/starter/items";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";
import type { MeasureStyle } from "../../../src/core/measures/measures";
import { usDollar } from "../../../src/core/money/currency";
import type { ItemRow } from "../../../src/core/pricing/item";
import { priceJob, type JobPrice } from "../../../src/core/pricing/priceJob";
import type { RateKey } from "../../../src/core/pricing/rates/rateRows";
import type { RateTable, TypedRates } from "../../../src/core/pricing/rates/rates";

export const dollars = usDollar;

export type OpeningWords = {
  readonly job?: string;
  readonly mark: string;
  readonly quantity?: number;
  readonly type?: string;
  readonly width?: CellValue;
  readonly height?: CellValue;
  readonly postHeight?: CellValue;
};

/** An estimate of openings as a person would type them, by the starter's book and items. */
export function estimateOf(
  openings: readonly OpeningWords[],
  items: readonly ItemRow[] = starterItems,
  kitBook: KitBookRows = starterKitBook,
): Estimate {
  const typed = (value: CellValue) => ({ value, place: null });
  return estimate({
    schedules: [
      {
        sheet: "Schedule",
        units: {},
        otherHeadings: {},
        rows: openings.map((opening, index) => ({
          place: { sheet: "Schedule", row: index + 1, column: 0 },
          cells: {
            job: typed(opening.job ?? "North"),
            mark: typed(opening.mark),
            quantity: typed(opening.quantity ?? 1),
            type: typed(opening.type ?? "sliding door"),
            width: typed(opening.width ?? "8'"),
            height: typed(opening.height ?? "7'"),
            post_height: typed(opening.postHeight ?? "8'"),
            tail_post: typed("yes"),
            floor: typed("concrete"),
          },
          others: {},
        })),
      },
    ],
    kitBook,
    items,
    unit: "in",
    currency: usDollar,
    showLength: (length) => `${length} in`,
  });
}

/** Rates as typed: the usual ones, and those of the job North. */
export function ratesOf(
  usual: Readonly<Partial<Record<RateKey, CellValue>>>,
  north: Readonly<Partial<Record<RateKey, CellValue>>> = {},
): RateTable {
  const typed = (values: Readonly<Partial<Record<RateKey, CellValue>>>): TypedRates =>
    Object.fromEntries(
      Object.entries(values).map(([key, value], row) => [
        key,
        { value, place: { sheet: "Rates", row: row + 2, column: 3 } },
      ]),
    );
  return { usual: typed(usual), byJob: new Map([["north", typed(north)]]) };
}

/** Each job of the estimate, priced. */
export const pricesOf = (
  result: Estimate,
  rates: RateTable,
  style: MeasureStyle = "pounds",
): readonly JobPrice[] =>
  result.jobs.map(({ job, takeOff, material, uncounted }) =>
    priceJob(
      { job, takeOff, material, uncounted: uncounted.map(({ mark }) => mark) },
      rates,
      usDollar,
      style,
    ),
  );
