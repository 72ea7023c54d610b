import { describe, expect, test } from "@jest/globals";
import { cellText } from "../../../src/core/base/cell";
import { readFastener, type Fastener } from "../../../src/core/fasteners/readFastener";
import { starterItems } from "../../../src/core/kitbook/starter/items";

/** `carriage bolt 1/4-20 x 1.25`. */
function brief(fastener: Fastener | null): string {
  if (fastener === null) return "none";
  const { kind, nominal, threads, length, size } = fastener;
  const pitch = threads === null ? "" : `-${threads}`;
  return `${kind} ${nominal}${pitch}${length === null ? "" : ` x ${length}`}${size === null ? " ?" : ""}`;
}

describe("a description", () => {
  test.each([
    [
      "Carriage bolt (round head square neck), 1/4-20 x 1-1/4 in, steel",
      "carriage bolt 1/4-20 x 1.25",
    ],
    ["Bolt, round head square neck, 5/16-18 x 1 in", "carriage bolt 5/16-18 x 1"],
    ["CB 1/4 x 1/2", "carriage bolt 1/4 x 0.5"],
    ["Hex bolt (hex cap screw), 1/2-13 x 1 1/4 in", "hex bolt 1/2-13 x 1.25"],
    ['hex head cap screw 3/8" × 2"', "hex bolt 3/8 x 2"],
    ["Bolt, hex, 1/4-20 x .75 in", "hex bolt 1/4-20 x 0.75"],
    ["Hex nut, 1/4-20, steel", "hex nut 1/4-20"],
    ["Nut, hex flange, 5/16-18", "flange nut 5/16-18"],
    ["Flange nut (hex flange), 1/4-20", "flange nut 1/4-20"],
    ["Flat washer (plain, type B regular), 1/2 in", "flat washer 1/2"],
    ["Lock washer (helical spring, regular), 1/4 in", "lock washer 1/4"],
    ["LW 5/16", "lock washer 5/16"],
    ["Hex bolt, 7/16-14 x 2 in", "hex bolt 7/16-14 x 2 ?"],
    ["Hex bolt .25 x 1.5", "hex bolt 1/4 x 1.5"],
  ])("%s is read", (text, read) => {
    expect(brief(readFastener(text))).toBe(read);
  });

  test.each([
    "Track plate, for a 7 ft post and a 7 ft door",
    "Hinge bolt cover",
    "Lock nut, nylon insert, 1/4-20",
    "Jam nut, 1/4-20",
    "Fender washer, 1/4 in",
    "Lag screw (hex head), 1/4 x 1-1/2 in",
    "Carriage bolt",
    "",
  ])("%s is none that is known", (text) => {
    expect(readFastener(text)).toBeNull();
  });

  test("that says nothing leaves it to the code", () => {
    expect(brief(readFastener("", "HN 1/4"))).toBe("hex nut 1/4");
    expect(brief(readFastener("Hex nut, zinc", "HN 1/4"))).toBe("hex nut 1/4");
  });
});

test("every fastener of the starter is read alike from its description and from its code", () => {
  const fasteners = starterItems.filter(({ family }) => family.value === "Fasteners");
  expect(fasteners.length).toBeGreaterThan(12);
  for (const { code, description } of fasteners) {
    const described = readFastener(cellText(description.value));
    const coded = readFastener(cellText(code.value));
    expect(described).not.toBeNull();
    expect({ ...described, threads: null }).toEqual(coded);
  }
});
