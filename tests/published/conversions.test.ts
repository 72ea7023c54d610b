import { describe, expect, test } from "@jest/globals";
import { multiplyRational, rational } from "../../src/core/base/rational";
import { inchesPerUnit, lengthIn, toInches, type WrittenUnit } from "../../src/core/lengths/length";
import { readLength } from "../../src/core/lengths/readLength";

/**
 * Source: NIST Special Publication 811 (2008), Guide for the Use of the International System of
 * Units, appendix B.8: the factors printed in bold are exact. Also B.6: 1 in = 25.4 mm by
 * definition since 1959.
 */
describe("NIST SP 811", () => {
  test.each<[WrittenUnit, number, number, WrittenUnit]>([
    // from, factor as a fraction, to
    ["in", 254, 10, "mm"],
    ["in", 254, 100, "cm"],
    ["in", 254, 10_000, "m"],
    ["ft", 3048, 10, "mm"],
    ["ft", 3048, 100, "cm"],
    ["ft", 3048, 10_000, "m"],
    ["ft", 12, 1, "in"],
    ["m", 100, 1, "cm"],
    ["cm", 10, 1, "mm"],
  ])("1 %s is exactly %d/%d %s", (from, top, bottom, to) => {
    expect(multiplyRational(rational(top, bottom), inchesPerUnit[to])).toEqual(inchesPerUnit[from]);
  });

  test.each([
    [`1"`, "25.4 mm"],
    ["1 ft", "304.8 mm"],
    ["1 ft", "30.48 cm"],
    ["1 ft", "0.3048 m"],
    // A yard is 0.9144 m.
    ["3 ft", "0.9144 m"],
  ])("%s reads as %s", (customary, metric) => {
    const [one, other] = [readLength(customary, "in"), readLength(metric, "in")];
    if (!one.ok || !other.ok) throw new Error("not read");
    expect(one.value.length).toEqual(other.value.length);
  });

  test("whole feet of door sizes are whole inches by way of millimetres", () => {
    for (let feet = 1; feet <= 40; feet += 1) {
      expect(toInches(lengthIn(rational(feet * 3048, 10), "mm"))).toBe(feet * 12);
    }
  });
});
