/** Markup and margin against worked examples anybody can look up. */
import { describe, expect, test } from "@jest/globals";
import { cents } from "../../src/core/base/units";
import {
  marginFromMarkup,
  markupFromMargin,
  priceByMargin,
  priceByMarkup,
  profitOf,
} from "../../src/core/pricing/margin";
import { noPercent, percent, ratioText } from "../../src/core/pricing/rates/percent";

describe("markup and margin", () => {
  test("a cost of $40 with a markup of 50 % sells at $60, a margin of 33.33 %", () => {
    // calcreal.com/math/markup-calculator, worked example.
    const price = priceByMarkup(cents(4000), percent(500_000), noPercent);
    expect(price).toBe(6000);
    expect(ratioText(profitOf(cents(4000), price).profit, price, 2)).toBe("33.33");
  });

  test("a cost of $29.99 with a markup of 25 % sells at $37.49", () => {
    // power.one, markup calculator, worked example.
    expect(priceByMarkup(cents(2999), percent(250_000), noPercent)).toBe(3749);
  });

  test("a cost of $5.00 sells at $6.50 by 30 % of cost, and at $7.14 by 30 % of price", () => {
    // education-academia.github.io, business mathematics, question on markup, explanation 3.
    expect(priceByMarkup(cents(500), percent(300_000), noPercent)).toBe(650);
    expect(priceByMargin(cents(500), percent(300_000), noPercent)).toBe(714);
  });

  test.each([
    // The usual table of one against the other; each is m = k / (1 + k) to the shown places.
    [25, 20],
    [33.3333, 25],
    [42.8571, 30],
    [50, 33.3333],
    [66.6667, 40],
    [100, 50],
  ])("a markup of %d %% is a margin of %d %%", (markup, margin) => {
    const [k, m] = [percent(Math.round(markup * 1e4)), percent(Math.round(margin * 1e4))];
    expect(Math.abs(marginFromMarkup(k) - m)).toBeLessThanOrEqual(1);
    expect(Math.abs(markupFromMargin(m) - k)).toBeLessThanOrEqual(3);
  });
});
