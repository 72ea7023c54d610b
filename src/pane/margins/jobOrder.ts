/** The orders in which a person may look at jobs. */
import type { MarginRow } from "../../core/pricing/marginTable";

export const jobOrders = [
  "risk",
  "margin",
  "gap",
  "profit",
  "price",
  "age",
  "notPriced",
  "name",
] as const;
export type JobOrder = (typeof jobOrders)[number];

export const orderWords: Readonly<Record<JobOrder, string>> = {
  risk: "what is most at risk",
  margin: "lowest margin",
  gap: "furthest below target",
  profit: "lowest profit",
  price: "highest price",
  age: "oldest price",
  notPriced: "most not priced",
  name: "name",
};

/** What is asked for first comes first; what is not known comes before all, as it is doubtful. */
const compare: Readonly<Record<Exclude<JobOrder, "risk">, (a: MarginRow, b: MarginRow) => number>> =
  {
    margin: (a, b) => (a.margin ?? -Infinity) - (b.margin ?? -Infinity) || 0,
    gap: (a, b) => (a.gap ?? -Infinity) - (b.gap ?? -Infinity) || 0,
    profit: (a, b) => a.profit - b.profit,
    price: (a, b) => b.price - a.price,
    age: (a, b) => (a.oldestPrice ?? 0) - (b.oldestPrice ?? 0),
    notPriced: (a, b) =>
      b.shareNotPriced - a.shareNotPriced || Number(b.isIncomplete) - Number(a.isIncomplete),
    name: (a, b) => a.job.localeCompare(b.job, "en", { numeric: true }),
  };

/** `rows` come with what is most at risk first, and stay so among equals. */
export const inOrder = (rows: readonly MarginRow[], order: JobOrder): readonly MarginRow[] =>
  order === "risk" ? rows : rows.toSorted(compare[order]);
