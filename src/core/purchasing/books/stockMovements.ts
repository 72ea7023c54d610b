/**
 * Stock on hand as rows that are only ever added: what came, what went, why, and who says so.
 *
 * Each row has the next number and the balance of its item after it, so that a row changed, taken
 * out or put in between shows. A mistake is put right by a row that turns it round.
 */
import { makeFinding, type Finding, type FindingTable } from "../../base/finding";
import { pieces, type Pieces } from "../../base/units";
import { compareSized, sizedKey, type SizedItem } from "../sizedItem";

/**
 * `counted`: a count of the shelf differs from the rows. `received`: packs came. `used`: went to the
 * job they were bought for. `taken`: went from the shelf to a job. `offcut`: left of a bar and kept.
 * `returned`: came back from a job. `reversed`: turns an earlier row round.
 */
export const movementKinds = [
  "counted",
  "received",
  "used",
  "taken",
  "offcut",
  "returned",
  "reversed",
] as const;
export type MovementKind = (typeof movementKinds)[number];

/** What happened, before it has its row. */
export type StockChange = SizedItem & {
  readonly kind: MovementKind;
  /** Pieces that came, or went where below zero. */
  readonly change: number;
  /** A date serial. */
  readonly day: number;
  readonly job: string | null;
  readonly order: string | null;
  readonly who: string;
  readonly note: string;
};

export type StockMovement = StockChange & {
  /** From one, without a gap. */
  readonly number: number;
  /** Pieces of this item and size on hand after it. */
  readonly balance: number;
};

export const movementFindings = {
  "movement-number-wrong": {
    level: "warn",
    says: "Stock movement {found} stands where number {expected} belongs: a row was taken out, put in or moved.",
    todo: "Put the rows back as they were written; mend a mistake with a new row.",
  },
  "movement-balance-wrong": {
    level: "warn",
    says: "Stock movement {found} says {balance} of {item} on hand where the rows come to {expected}: a row was changed.",
    todo: "Put the row back as it was written; mend a mistake with a new row.",
  },
  "stock-below-zero": {
    level: "warn",
    says: "After stock movement {found} there are {balance} of {item} on hand.",
    todo: "Count the shelf and write what is there.",
  },
} as const satisfies FindingTable;

/** The rows with the changes added behind them, numbered and balanced. */
export function addMovements(
  rows: readonly StockMovement[],
  changes: readonly StockChange[],
): readonly StockMovement[] {
  const balances = balancesOf(rows);
  const last = rows.reduce((most, row) => Math.max(most, row.number), 0);
  const added = changes
    .filter(({ change }) => change !== 0)
    .map((change, index) => {
      const key = sizedKey(change);
      const balance = (balances.get(key) ?? 0) + change.change;
      balances.set(key, balance);
      return { ...change, number: last + index + 1, balance };
    });
  return [...rows, ...added];
}

/** What turns a row round; the row itself stays. */
export const reverseMovement = (
  row: StockMovement,
  day: number,
  who: string,
  why: string,
): StockChange => ({
  item: row.item,
  size: row.size,
  kind: "reversed",
  change: -row.change,
  day,
  job: row.job,
  order: row.order,
  who,
  note: `Reverses movement ${row.number}: ${why}`,
});

/** What makes the rows agree with a count of the shelf; a change of zero where they do. */
export const countChange = (
  rows: readonly StockMovement[],
  sized: SizedItem,
  found: Pieces,
  by: Pick<StockChange, "day" | "who" | "note">,
): StockChange => ({
  item: sized.item,
  size: sized.size,
  kind: "counted",
  change: found - (balancesOf(rows).get(sizedKey(sized)) ?? 0),
  job: null,
  order: null,
  ...by,
});

/** What is on hand by the rows, by item and size; what has none left is not there. */
export function stockOnHand(
  rows: readonly StockMovement[],
): readonly (SizedItem & { readonly pieces: Pieces })[] {
  const balances = balancesOf(rows);
  const first = new Map(rows.toReversed().map((row) => [sizedKey(row), row]));
  return [...first]
    .flatMap(([key, { item, size }]) => {
      const balance = balances.get(key) ?? 0;
      return balance > 0 ? [{ item, size, pieces: pieces(balance) }] : [];
    })
    .sort(compareSized);
}

/** What cannot be as it was written: numbers out of turn, balances that do not add up, stock below zero. */
export function auditMovements(rows: readonly StockMovement[]): readonly Finding[] {
  const balances = new Map<string, number>();
  return rows.flatMap((row, index) => {
    const key = sizedKey(row);
    const expected = (balances.get(key) ?? 0) + row.change;
    balances.set(key, expected);
    const say = (code: keyof typeof movementFindings, values: Record<string, number>): Finding =>
      makeFinding(movementFindings, code, {
        found: String(row.number),
        values: { item: row.item, balance: row.balance, ...values },
      });
    return [
      ...(row.number === index + 1 ? [] : [say("movement-number-wrong", { expected: index + 1 })]),
      ...(row.balance === expected ? [] : [say("movement-balance-wrong", { expected })]),
      ...(expected < 0 ? [say("stock-below-zero", { balance: expected })] : []),
    ];
  });
}

function balancesOf(rows: readonly StockMovement[]): Map<string, number> {
  const balances = new Map<string, number>();
  for (const row of rows)
    balances.set(sizedKey(row), (balances.get(sizedKey(row)) ?? 0) + row.change);
  return balances;
}
