/** All jobs beside one another: cost, price, profit, margin, target, and what is at risk. */
import { dateText } from "../base/date";
import { makeFinding, type Finding } from "../base/finding";
import { cents, type Cents } from "../base/units";
import { sumOf } from "../money/amounts";
import { moneyText } from "../money/writeMoney";
import { costByPrice, keepsTarget, priceThatKeeps } from "./keepTarget";
import { profitOf, type Profit } from "./margin";
import { percentText, ratioText, shareOf, type Percent } from "./rates/percent";
import { priceFindings } from "./priceFindings";
import type { RollUp } from "./rollup/rollUp";

/** A job's roll-up, and what is known of its prices. */
export type PricedJob = {
  readonly rollUp: RollUp;
  readonly target: Percent;
  /** The date serial of the oldest price in it; `null` where no price has a date. */
  readonly oldestPrice: number | null;
  /** Lines of its hardware, and how many of them have no price. */
  readonly lines: number;
  readonly unpricedLines: number;
};

export type MarginRow = Profit & {
  readonly job: string;
  readonly cost: Cents;
  readonly price: Cents;
  readonly target: Percent;
  /** Margin less target, as a share of the price; `null` for a price of nothing. */
  readonly gap: number | null;
  /**
   * What the price is short of the one that keeps the target; zero where it keeps it. A single cent is
   * what rounding to the cent took of a price at its target, and is not short.
   */
  readonly short: Cents;
  readonly oldestPrice: number | null;
  /** Of the lines, from 0 to 1. */
  readonly shareNotPriced: number;
  /** Whether cost and price are only a least. */
  readonly isIncomplete: boolean;
};

export type MarginTable = {
  /** What is most at risk first. */
  readonly rows: readonly MarginRow[];
  readonly total: Profit & { readonly cost: Cents; readonly price: Cents; readonly short: Cents };
};

function marginRow({ rollUp, target, oldestPrice, lines, unpricedLines }: PricedJob): MarginRow {
  const { job, cost, price, profit, markup, margin } = rollUp;
  const costs = costByPrice(rollUp);
  const short = keepsTarget(costs, price, target) ? 0 : priceThatKeeps(costs, target) - price;
  return {
    job,
    cost,
    price,
    profit,
    markup,
    margin,
    target,
    gap: margin === null ? null : margin - shareOf(target),
    short: cents(short > 1 ? short : 0),
    oldestPrice,
    shareNotPriced: lines === 0 ? 0 : unpricedLines / lines,
    isIncomplete: unpricedLines > 0 || rollUp.notPriced.length > 0,
  };
}

/**
 * By what is at risk: the most money short of the target first, then the largest share not priced,
 * then the oldest prices (a job whose prices have no date before all), then by name.
 */
function byRisk(a: MarginRow, b: MarginRow): number {
  const age = (row: MarginRow): number => row.oldestPrice ?? 0;
  return (
    b.short - a.short ||
    Number(b.isIncomplete) - Number(a.isIncomplete) ||
    b.shareNotPriced - a.shareNotPriced ||
    age(a) - age(b) ||
    a.job.localeCompare(b.job, "en", { numeric: true })
  );
}

export function marginTable(jobs: readonly PricedJob[]): MarginTable {
  const rows = jobs.map(marginRow).sort(byRisk);
  const cost = sumOf(rows.map((row) => row.cost));
  const price = sumOf(rows.map((row) => row.price));
  const short = sumOf(rows.map((row) => row.short));
  return { rows, total: { cost, price, short, ...profitOf(cost, price) } };
}

/** When a price is old: so many days before `today`, both as date serials. */
export type PriceAge = { readonly today: number; readonly mostDays: number };

/** What an owner should know of each job, by the rows' order. */
export function marginDoubts(
  { rows }: MarginTable,
  jobs: readonly PricedJob[],
  { today, mostDays }: PriceAge,
): readonly Finding[] {
  const notPriced = new Map(jobs.map(({ rollUp }) => [rollUp.job, rollUp.notPriced]));
  return rows.flatMap((row) => {
    const { job } = row;
    const names = notPriced.get(job) ?? [];
    const doubts: Finding[] = [];
    const add = (
      code: keyof typeof priceFindings,
      found: string,
      values: Readonly<Record<string, string | number>>,
    ): void => {
      doubts.push(makeFinding(priceFindings, code, { job, found, values }));
    };
    if (names.length > 0) {
      const all = names.join(", ");
      add("price-incomplete", all, { job, count: names.length, names: all });
    }
    const [cost, price] = [moneyText(row.cost), moneyText(row.price)];
    if (row.price < row.cost) add("price-below-cost", price, { price, cost });
    else if (row.short > 0) {
      const margin = `${ratioText(row.profit, row.price, 1) ?? ""} %`;
      const needed = `A price of ${moneyText(cents(row.price + row.short))}`;
      add("margin-below-target", margin, { margin, target: percentText(row.target), needed });
    }
    if (row.oldestPrice !== null && today - row.oldestPrice > mostDays) {
      const date = dateText(row.oldestPrice);
      add("prices-old", date, { date, days: Math.floor(today - row.oldestPrice) });
    }
    return doubts;
  });
}
