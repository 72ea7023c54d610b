import { describe, expect, test } from "@jest/globals";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";
import type { KitBookRows } from "../../../src/core/kitbook/rows";
import { numberStyle } from "../../../src/core/lengths/writeLength";
import { hardwareSheet } from "../../../src/sheets/hardware/hardwareSheet";
import { codesOf, estimateRows, itemsOf, scheduleRow } from "../takeoff/notation";

/** The starter, in which the quantity of the sliding door's strike is misspelt. */
const badBook: KitBookRows = {
  ...starterKitBook,
  parts: starterKitBook.parts.map((part) =>
    part.type.value === "Sliding door" && part.item.value === "STRIKE"
      ? { ...part, quantity: { value: "strikes", place: null } }
      : part,
  ),
};
const rows = [
  scheduleRow("8' x 7' on 7'", { mark: "A-1" }),
  scheduleRow("3' x 7'", { mark: "A-2", type: "Hinged door" }),
  scheduleRow("8' x 7'", { mark: "A-3" }),
];

describe("an opening whose type has a bad row in the kit book", () => {
  const result = estimateRows(rows, badBook);

  test("is counted and named as counted in part", () => {
    expect(itemsOf(result)).toMatchObject({ "PLATE 7-7": 3 });
    expect(result.complete).toBe(false);
    expect(codesOf(result, "stop")).toContain("formula-name-unknown");
    expect(result.jobs[0]?.partly).toMatchObject([
      { type: "Sliding door", badRows: 1, openings: [{ mark: "A-1" }] },
    ]);
  });

  test("makes the hardware sheet say that it is not complete", () => {
    const { rows: drawn } = hardwareSheet({
      jobs: result.jobs,
      lengths: numberStyle,
      withCosts: false,
      currencySign: "$",
      basis: "",
      items: null,
    });
    const words = drawn.flatMap(({ cells }) =>
      cells.flatMap((cell) => (cell?.kind === "text" ? [cell.text] : [])),
    );
    expect(words).toContain(
      "NOT COMPLETE. A row of the kit book for Sliding door does not work, so parts of these may be missing: A-1. The findings say why.",
    );
  });
});

test("a book without bad rows counts nothing in part", () => {
  expect(estimateRows(rows).jobs[0]?.partly).toEqual([]);
});
