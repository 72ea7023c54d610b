import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { starterKitBook } from "../../src/core/kitbook/starter/starterKitBook";
import { estimateOf, pricesOf, ratesOf } from "../core/pricing/pricedJobs";
import type { FunctionInput } from "../../src/functions/worksheetFunction";
import { ask, askerOf } from "./ask";

describe("price, markup and margin", () => {
  test.each([
    ["PRICE", [1500, 0.25], 2000],
    ["PRICE", [1500, "25 %"], 2000],
    ["PRICE", [100, "25"], 133.33],
    ["MARGIN", [3], 0.75],
    ["PRICE", [0, 0.25], 0],
    ["MARKUP", [0.2], 0.25],
    ["MARKUP", [0.5], 1],
    ["MARGIN", [0.25], 0.2],
    ["MARGIN", [1], 0.5],
  ] as const)("%s of %j is %d", (name, inputs, expected) => {
    expect(ask(name, ...inputs)).toBe(expected);
  });

  test("markup and margin lead back to one another", () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 800 }), (tenths) => {
        const margin = tenths / 1000;
        expect(ask("MARGIN", ask("MARKUP", margin) as number)).toBeCloseTo(margin, 5);
      }),
    );
  });

  test.each([
    ["PRICE", ["much", 0.25], "cost"],
    ["PRICE", [-1, 0.25], "cost"],
    ["PRICE", [null, 0.25], "cost"],
    ["PRICE", [1e12, 0.25], "cost"],
    ["PRICE", [[[1, 2]], 0.25], "cost"],
    ["PRICE", [100, 1], "margin"],
    ["PRICE", [100, 25], "margin"],
    ["PRICE", [100, ""], "margin"],
    ["MARKUP", ["x"], "margin"],
    ["MARGIN", [null], "markup"],
    ["MARGIN", [true], "markup"],
  ] as const)("%s of %j names the argument %3$s", (name, inputs, argument) => {
    expect(ask(name, ...(inputs as unknown as FunctionInput[]))).toMatch(
      new RegExp(`^value: The argument ${argument} is wrong: `),
    );
  });
});

test("the hours of an opening are those of its bags in a job's price", () => {
  const none = { unpackMinutes: 0, adjustMinutes: 0, travelMinutes: 0, setUpMinutes: 0 };
  const [price] = pricesOf(estimateOf([{ mark: "D1" }]), ratesOf({ ...none, cleanUpMinutes: 0 }));
  const hours = ask("HOURS", "sliding door", "8'", "7'", "8'", "yes", "concrete");
  expect(hours).toBeGreaterThan(1);
  expect(hours).toBeCloseTo((price?.hours.minutes ?? 0) / 60, 9);
});

test("the hours of an opening are not answered where the minutes of a row are no time", () => {
  const parts = starterKitBook.parts.map((part) =>
    part.type.value === "Sliding door" && part.item.value === "JAMB"
      ? { ...part, minutes: { value: "2 * tail_run", place: null } }
      : part,
  );
  const hours = askerOf({ ...starterKitBook, parts })(
    "HOURS",
    "sliding door",
    "8'",
    "7'",
    "8'",
    "yes",
    "concrete",
  );
  expect(hours).toMatch(/^na: The minutes of kit book parts row \d+ are no time: .*blank/);
});
