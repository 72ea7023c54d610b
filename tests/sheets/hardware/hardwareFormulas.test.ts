/** The live formulas of the hardware sheet, worked out by another engine, against the core. */
import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { pieces } from "../../../src/core/base/units";
import { changed, readChange } from "../../../src/core/corrections/change";
import { sparesFor } from "../../../src/core/pricing/material";
import { correctedFormula, sparesFormula } from "../../../src/sheets/hardware/hardwareFormulas";
import { drawing } from "../../workbook/drawings";
import { recalculated } from "../recalculated";

/** What the core makes of a count and a text: the count itself where the text is no good correction. */
function corrected(counted: number, typed: string): number {
  const change = readChange(typed);
  return change.ok ? (changed(pieces(counted), change.value) ?? counted) : counted;
}

describe("the quantity with a correction", () => {
  const sheet = recalculated(
    drawing("Hardware", null, [[14, "", `=${correctedFormula("A1", "B1")}`]]),
  );
  const shown = (counted: number, typed: number | string): number => {
    sheet.typing(0, 0, counted);
    return Number(sheet.typing(0, 1, typed)(0, 2));
  };

  test.each([
    "",
    " ",
    "+3",
    "-2",
    "=20",
    "20",
    "0",
    "+0",
    "-14",
    "-15",
    " +3 ",
    "+1.5",
    "1/2",
    "5%",
    "3+",
    "+-3",
    "1e3",
    "1=4",
    "two",
    "TRUE",
    "2026-07-06",
    "$5",
  ])("14 with “%s” is what the core makes of it", (typed) => {
    expect(shown(14, typed)).toBe(corrected(14, typed));
  });

  test("follows a number where a host made one of what was typed", () => {
    expect([shown(14, 20), shown(14, -2)]).toEqual([20, 12]);
  });

  test("is what the core makes of any count and any correction as we write it", () => {
    const typed = fc.tuple(fc.constantFrom("+", "-", "=", ""), fc.nat(3000));
    fc.assert(
      fc.property(fc.nat(2000), typed, (counted, [sign, count]) => {
        expect(shown(counted, `${sign}${count}`)).toBe(corrected(counted, `${sign}${count}`));
      }),
    );
  });
});

test("the spares are those of the core for any quantity and any rule", () => {
  const rule = fc.record({
    percent: fc.constantFrom(0, 2, 2.5, 5, 7.25, 10, 33.3333),
    least: fc.nat(5).map(pieces),
  });
  fc.assert(
    fc.property(fc.nat(20_000).map(pieces), rule, (quantity, policy) => {
      const words = `=${sparesFormula("A1", policy)}`;
      const { formulas } = recalculated(drawing("Hardware", null, [[quantity, words]]));
      expect(Number(formulas[0]?.found)).toBe(sparesFor(quantity, policy));
    }),
  );
});
