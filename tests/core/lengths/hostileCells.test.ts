import { describe, expect, test } from "@jest/globals";
import { readLength } from "../../../src/core/lengths/readLength";
import { readPrice } from "../../../src/core/money/price";
import { hostileCells } from "../hostileCells";

describe("a hundred thousand random and hostile cells", () => {
  test("are each a length or a fault, and a price or a fault", () => {
    let lengths = 0;
    let prices = 0;
    for (const cell of hostileCells(100_000, 20_261_124)) {
      const length = readLength(cell, "in");
      const price = readPrice(cell);
      if (length.ok) lengths += 1;
      else if (length.error.message === "") throw new Error(`no words for ${JSON.stringify(cell)}`);
      if (price.ok) prices += 1;
      else if (price.error.message === "") throw new Error(`no words for ${JSON.stringify(cell)}`);
    }
    // The cells are worth reading only where some of each are good and most are not.
    expect(lengths).toBeGreaterThan(1000);
    expect(prices).toBeGreaterThan(1000);
    expect(lengths + prices).toBeLessThan(100_000);
  });

  test("may be as long as a cell can be", () => {
    for (const piece of ["9", " ", "'", "1,", "1/", "-", "½", "(", "1.", "7'-"]) {
      const cell = piece.repeat(32_767 / piece.length);
      expect(readLength(cell, "mm").ok).toBe(false);
      expect(readPrice(cell).ok).toBe(false);
    }
  });
});
