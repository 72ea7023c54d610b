/** Alternates and options as typed, and priced beside their job. */
import { describe, expect, test } from "@jest/globals";
import type { CellValue } from "../../../../src/core/base/cell";
import { cents } from "../../../../src/core/base/units";
import {
  checkAlternates,
  type AlternateColumn,
  type AlternateRow,
} from "../../../../src/core/pricing/alternates/alternateRows";
import { checkItems } from "../../../../src/core/pricing/item";
import {
  alternatesForJob,
  alternatesOf,
} from "../../../../src/core/pricing/alternates/jobAlternates";
import { percent } from "../../../../src/core/pricing/rates/percent";
import { rollUp } from "../../../../src/core/pricing/rollup/rollUp";
import type { RollUpInput } from "../../../../src/core/pricing/rollup/rollUpInput";
import { starterItems } from "../../../../src/core/kitbook/starter/items";
import { plainJob } from "../jobs";
import { dollars } from "../pricedJobs";

const { items } = checkItems(starterItems, dollars);

const row = (cells: Readonly<Partial<Record<AlternateColumn, CellValue>>>): AlternateRow =>
  Object.fromEntries(
    Object.entries(cells).map(([key, value], column) => [
      key,
      { value, place: { sheet: "Alternates", row: 4, column } },
    ]),
  );
const read = (...rows: readonly AlternateRow[]) => checkAlternates(rows, items, dollars);
const priced = (input: RollUpInput, ...rows: readonly AlternateRow[]) =>
  alternatesOf(
    { input, rollUp: rollUp(input), target: percent(200_000) },
    alternatesForJob("North", read(...rows).alternates).map((one) => ({
      ...one,
      input: null,
      how: "",
    })),
  );

/** Nothing on top of costs, and a price at a fifth of margin: what is added is easily followed. */
const bare: RollUpInput = {
  ...plainJob,
  overhead: null,
  contingency: null,
  salesTax: { paid: null, charged: null },
  price: { method: "margin", percent: percent(200_000) },
  rounding: { step: 0, way: "up" },
};

describe("as typed", () => {
  test("rows of one name are one alternate; an item is priced as the items say", () => {
    const { alternates, findings } = read(
      row({ name: "Closers", kind: "Option", adds: "item", of: "hinge", quantity: 4 }),
      row({ name: "closers", adds: "Hours", quantity: "1.25" }),
      row({ name: "Closers", adds: "allowance", of: "Trim", each: "$30" }),
    );
    expect(findings).toEqual([]);
    expect(alternates).toEqual([
      {
        name: "Closers",
        kind: "option",
        job: "",
        place: { sheet: "Alternates", row: 4, column: 0 },
        changes: [],
        additions: [
          { adds: "material", name: "Leaf", amount: 4 * 690 },
          { adds: "hours", hundredths: 125 },
          { adds: "allowance", name: "Trim", amount: 3000 },
        ],
      },
    ]);
  });

  test.each<readonly [string, Readonly<Partial<Record<AlternateColumn, CellValue>>>, string]>([
    ["another kind", { kind: "maybe", adds: "hours" }, "its kind must be"],
    ["nothing that can be added", { adds: "luck" }, "or add item, material"],
    ["an item that is not there", { adds: "item", of: "HINGES" }, "did you mean HINGE?"],
    ["words for a quantity", { adds: "hours", quantity: "some" }, "some is no quantity"],
    ["material without a price", { adds: "material", of: "Closers" }, "has no price"],
    ["too much money", { adds: "material", of: "Gold", quantity: 1e8, each: 9e8 }, "more money"],
    ["years of hours", { adds: "hours", quantity: 1e12 }, "too many"],
  ])("%s leaves the alternate out as a whole", (_what, cells, reason) => {
    const good = row({ name: "Extra", adds: "hours", quantity: 1 });
    const { alternates, findings } = read(good, row({ name: "Extra", ...cells }));
    expect(alternates).toEqual([]);
    expect(findings).toEqual([
      expect.objectContaining({
        code: "alternate-wrong",
        level: "warn",
        message: expect.stringContaining(reason),
        place: { sheet: "Alternates", row: 4, column: 0 },
      }),
    ]);
  });

  test("a price that is none is a warning of its own, and leaves the alternate out", () => {
    const { alternates, findings } = read(row({ name: "Extra", adds: "material", each: "lots" }));
    expect(alternates).toEqual([]);
    expect(findings.map(({ code, level }) => [code, level])).toEqual([
      ["price-not-understood", "warn"],
    ]);
  });
});

describe("priced beside the base", () => {
  test("by margin: a fifth of the price is left of it too", () => {
    const [extra] = priced(bare, row({ name: "Extra", adds: "material", of: "New", each: 80 }));
    // Margin: 80 / (1 - 20 %) = 100, to a cent of rounding either way.
    expect(extra?.addsCost).toBe(8000);
    expect(Math.abs((extra?.addsPrice ?? 0) - 10_000)).toBeLessThanOrEqual(1);
  });

  test("what is taken away costs as much less, and twice that is the negative of once more", () => {
    const once = priced(bare, row({ name: "Less", adds: "item", of: "HINGE", quantity: -10 }));
    expect(once[0]?.addsCost).toBe(-6900);
    expect(once[0]?.addsPrice).toBeLessThan(-8000);
  });

  test("hours go to the roles as the job's own, at their rates and burden", () => {
    const [extra] = priced(bare, row({ name: "Extra", adds: "hours", quantity: 2 }));
    // An hour each at 42.50 and 31.00 with 32 % of burden.
    expect(extra?.addsCost).toBe(Math.round(4250 * 1.32) + Math.round(3100 * 1.32));
  });

  test("on top of a typed price what it costs is priced at the target margin", () => {
    const typed: RollUpInput = { ...bare, price: { method: "typed", price: cents(900_000) } };
    const [extra] = priced(typed, row({ name: "Extra", adds: "material", of: "New", each: 80 }));
    expect([extra?.addsCost, extra?.addsPrice]).toEqual([8000, 10_000]);
  });

  test("one that adds nothing leaves a typed price alone, whatever prices are rounded to", () => {
    const rounding = { step: 25, way: "nearest" } as const;
    const typed: RollUpInput = {
      ...bare,
      price: { method: "typed", price: cents(2_345_678) },
      rounding,
    };
    const [same, extra] = priced(
      typed,
      row({ name: "Same", adds: "hours", quantity: 0 }),
      row({ name: "Extra", adds: "material", of: "New", each: 90 }),
    );
    expect([same?.addsCost, same?.addsPrice]).toEqual([0, 0]);
    // 90 / (1 - 20 %) = 112.50, to the nearest 25.
    expect([extra?.addsCost, extra?.addsPrice]).toEqual([9000, 12_500]);
  });

  test("a job's own goes before everyone's of the same name; another job's is not offered", () => {
    const hours = (job: string | null, quantity: number) =>
      row({ name: "Extra", job, adds: "hours", quantity });
    const all = priced(bare, hours(null, 1), hours(" north ", 3), hours("South", 5));
    expect(all.map(({ name, addsCost }) => [name, addsCost])).toEqual([
      ["Extra", Math.round(6375 * 1.32) + Math.round(4650 * 1.32)],
    ]);
  });
});
