import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { inches, pieces } from "../../../../src/core/base/units";
import {
  addMovements,
  auditMovements,
  countChange,
  movementKinds,
  reverseMovement,
  stockOnHand,
  type StockChange,
} from "../../../../src/core/purchasing/books/stockMovements";

const changeOf = (item: string, change: number, size: readonly number[] = []): StockChange => ({
  item,
  size: size.map(inches),
  kind: change < 0 ? "taken" : "received",
  change,
  day: 46_000,
  job: null,
  order: null,
  who: "KB",
  note: "",
});
const codes = (rows: ReturnType<typeof addMovements>): readonly string[] =>
  auditMovements(rows).map(({ code }) => code);

describe("stock movements", () => {
  const rows = addMovements(
    [],
    [changeOf("HN 1/4", 100), changeOf("hn 1/4", -30), changeOf("TRACK", 2, [54])],
  );

  test("are numbered, and each has the balance of its item and size", () => {
    expect(rows.map(({ number, balance }) => [number, balance])).toEqual([
      [1, 100],
      [2, 70],
      [3, 2],
    ]);
    expect(stockOnHand(rows)).toEqual([
      { item: "HN 1/4", size: [], pieces: 70 },
      { item: "TRACK", size: [54], pieces: 2 },
    ]);
    expect(codes(rows)).toEqual([]);
  });

  test("are put right by a further row, never by changing one", () => {
    const wrong = rows[1];
    if (wrong === undefined) throw new Error("There are three rows.");
    const mended = addMovements(rows, [reverseMovement(wrong, 46_001, "KB", "wrong item")]);
    expect(mended.slice(0, 3)).toEqual(rows);
    expect(mended[3]).toMatchObject({ kind: "reversed", change: 30, balance: 100, number: 4 });
  });

  test("follow a count of the shelf", () => {
    const counted = countChange(rows, { item: "HN 1/4", size: [] }, pieces(65), {
      day: 46_002,
      who: "KB",
      note: "year end",
    });
    expect(counted.change).toBe(-5);
    expect(addMovements(rows, [counted]).at(-1)?.balance).toBe(65);
  });

  test("leave out a change of nothing", () => {
    expect(addMovements(rows, [changeOf("HN 1/4", 0)])).toEqual(rows);
  });

  test("show a row that was changed, taken out or moved", () => {
    expect(codes(rows.map((row) => (row.number === 1 ? { ...row, change: 90 } : row)))).toEqual([
      "movement-balance-wrong",
      "movement-balance-wrong",
    ]);
    expect(codes(rows.filter(({ number }) => number !== 2))).toEqual(["movement-number-wrong"]);
    expect(codes(rows.toReversed())).toContain("movement-number-wrong");
  });

  test("show stock below zero", () => {
    expect(codes(addMovements(rows, [changeOf("TRACK", -3, [54])]))).toEqual(["stock-below-zero"]);
  });

  test("add up whatever comes, and any one change to a row is seen", () => {
    const anyChange = fc
      .record({
        item: fc.constantFrom("A", "B"),
        change: fc.integer({ min: 1, max: 50 }),
        kind: fc.constantFrom(...movementKinds),
      })
      .map(({ item, change, kind }) => ({ ...changeOf(item, change), kind }));
    fc.assert(
      fc.property(
        fc.array(anyChange, { minLength: 1, maxLength: 10 }),
        fc.nat(),
        fc.integer({ min: 1, max: 9 }),
        (changes, at, by) => {
          const all = addMovements(addMovements([], changes.slice(0, 3)), changes.slice(3));
          expect(auditMovements(all)).toEqual([]);
          const tampered = all.map((row, index) =>
            index === at % all.length ? { ...row, change: row.change + by } : row,
          );
          expect(auditMovements(tampered)).not.toEqual([]);
        },
      ),
      { numRuns: 200 },
    );
  });
});
