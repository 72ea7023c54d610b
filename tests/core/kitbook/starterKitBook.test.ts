import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { cellText } from "../../../src/core/base/cell";
import { compileKitBook } from "../../../src/core/kitbook/compileKitBook";
import { kitBookSections } from "../../../src/core/kitbook/rows";
import { starterItems } from "../../../src/core/kitbook/starter/items";
import { starterKitBook, starterTypes } from "../../../src/core/kitbook/starter/starterKitBook";
import { byItem, count, opening, typeOf } from "./openings";

const { book, findings } = compileKitBook(starterKitBook, []);
const codes = starterItems.map(({ code }) => cellText(code.value));

describe("the starter kit book", () => {
  test("has nothing to be found wrong", () => {
    expect(findings).toEqual([]);
    expect(book.types.map(({ name }) => name)).toEqual(starterTypes);
  });

  test("says in every row where its numbers come from", () => {
    const known = /^(common practice, no source|assumed|invented starter: replace with)/;
    for (const section of kitBookSections) {
      for (const { basis } of starterKitBook[section]) expect(basis.value).toMatch(known);
    }
  });

  test("says of everything but the sliding door that it is invented", () => {
    const { sizes, parts, limits } = starterKitBook;
    const others = [...sizes, ...parts, ...limits].filter(
      ({ type }) => type.value !== "Sliding door",
    );
    expect(others.length).toBeGreaterThan(100);
    for (const { basis } of others) {
      expect(basis.value).toBe("invented starter: replace with your supplier's");
    }
  });

  test("says of every number of minutes that it is invented", () => {
    const timed = starterKitBook.parts.filter(({ minutes }) => minutes.value !== null);
    expect(timed.length).toBeGreaterThan(30);
    for (const { basis } of timed) expect(basis.value).toMatch(/invented/);
  });

  test("gives every part a bag and a step", () => {
    for (const { parts } of book.types) {
      for (const part of parts) {
        expect(part.bag).not.toBe("");
        expect(part.step).not.toBeNull();
      }
    }
  });

  test.each(["", ", tail run 1'", ", tail run 40'"])(
    "never comes back to a bag in the order of work%s",
    (run) => {
      for (const { name } of book.types) {
        const { bags } = count(typeOf(name), opening(`8' x 7' on 7', tail post, concrete${run}`));
        expect(bags.length).toBeGreaterThan(0);
        expect(bags).toEqual([...new Set(bags)]);
      }
    },
  );
});

describe("the starter's items", () => {
  const named = [
    ...book.types.flatMap(({ parts }) =>
      parts.flatMap(({ item }) => (item.kind === "code" ? [item.code] : [])),
    ),
    ...book.charts.flatMap(({ entries }) => entries.map(({ value }) => String(value))),
    // The codes that the size `floor_anchor` gives.
    "FA 1/4",
    "LS 1/4 x 1-1/2",
  ];

  test("are those that the book can name, each once, and no other", () => {
    expect(codes.toSorted()).toEqual([...new Set(named)].sort());
  });

  test("have a description, a family, a unit, a cost, a weight and a price date", () => {
    for (const item of starterItems) {
      expect(item).toMatchObject({
        unit: { value: expect.stringMatching(/^(each|foot|square foot)$/) as unknown },
        priceDate: { value: "2026-10-01" },
        basis: { value: expect.stringContaining("invented") as unknown },
      });
      for (const cell of [item.description, item.family]) expect(cell.value).toMatch(/\w/);
      for (const cell of [item.unitCost, item.weight]) expect(cell.value).toBeGreaterThan(0);
      expect(item.sparesPercent.value).toBeGreaterThanOrEqual(0);
    }
  });
});

// Invented starters, checked for their own sense only.
describe("a bi-parting sliding door", () => {
  const type = typeOf("Bi-parting sliding door");

  test("has twice the leaf hardware of a sliding door of half its width", () => {
    const both = byItem(count(type, opening("16' x 7' on 7', tail post, concrete")));
    const one = byItem(
      count(typeOf("Sliding door"), opening("8' x 7' on 7', tail post, concrete")),
    );
    for (const item of ["PANEL", "STILE", "TROLLEY", "CLAMP PANEL", "GUIDE", "SPLICE", "SPACER"]) {
      expect(both[item]).toBe(2 * (one[item] ?? 0));
    }
    expect(both["PLATE 7-7"]).toBe(4);
    expect(both).not.toHaveProperty("JAMB");
  });

  test("has leaves of half the opening", () => {
    const { counts } = count(type, opening("8' x 7' on 7', tail post, concrete"));
    expect(counts).toMatchObject({ "PANEL (48 x 84)": 2, "TRACK (192)": 1 });
  });
});

describe("hinged doors", () => {
  // Common practice, no source: a hinge for each 30 in of height.
  test.each([
    ["5", 2],
    ["7", 3],
    ["7.5", 3],
    ["8", 4],
    ["10", 4],
  ])("%s ft high hang on %d hinges a leaf", (height, hinges) => {
    const size = (width: number) => opening(`${width}' x ${height}' on 10', concrete`);
    expect(byItem(count(typeOf("Hinged door"), size(3)))["HINGE"]).toBe(hinges);
    expect(byItem(count(typeOf("Hinged door pair"), size(6)))["HINGE"]).toBe(2 * hinges);
  });

  test("need no post height", () => {
    const { errors, said } = count(typeOf("Hinged door"), opening("3' x 7'"));
    expect([errors, said]).toEqual([[], []]);
  });

  test.each([
    ["Hinged door", "5.01' x 7'"],
    ["Hinged door pair", "3.9' x 7', concrete"],
    ["Hinged door", "3' x 8' on 7'"],
  ])("of type %s stop at %s", (type, size) => {
    expect(count(typeOf(type), opening(size)).said.map(({ level }) => level)).toContain("stop");
  });
});

describe("a lock", () => {
  const notes = (lock: string | null) =>
    count(typeOf("Hinged door"), { ...opening("3' x 7'"), lock }).said.filter(({ message }) =>
      message.includes("is not counted"),
    );

  test.each(["mortise lock", "cylinder", "padlock hasp"])(
    "%s is said not to be counted",
    (lock) => {
      expect(notes(lock)).toHaveLength(1);
    },
  );

  // Common practice, no source: whoever uses the door brings the padlock.
  test.each([null, "padlock", "Padlock ", "2 PADLOCKS", "keyed-alike padlocks"])(
    "%s needs no note",
    (lock) => {
      expect(notes(lock)).toEqual([]);
    },
  );
});

test("a service window has a frame of four cut pieces", () => {
  const { counts, errors } = count(typeOf("Service window"), opening("4' x 3' on 8'"));
  expect(errors).toEqual([]);
  expect(counts).toMatchObject({
    "FRAME WINDOW (48)": 2,
    "FRAME WINDOW (36)": 2,
    "GUIDE SASH (72)": 2,
    "PANEL (48 x 36)": 1,
  });
});

test("a fixed transom takes its transom height where one is given", () => {
  const type = typeOf("Fixed transom");
  const wide = opening("12' x 2'");
  expect(count(type, wide).counts).toMatchObject({ "PANEL (72 x 24)": 2, "CLAMP PANEL": 4 });
  expect(count(type, { ...wide, transom_height: 30 }).counts).toMatchObject({
    "PANEL (72 x 30)": 2,
  });
});

test("every opening in range counts whole pieces of known items, without an error", () => {
  const feet = (min: number, max: number) =>
    fc.integer({ min: min * 16, max: max * 16 }).map((sixteenths) => sixteenths * 0.75);
  const fields = fc.record({
    width: feet(4, 16),
    height: fc.constantFrom(84, 96, 120),
    post_height: fc.constantFrom(120, 144),
    tail_post: fc.constantFrom(true, false, null),
    tail_run: fc.option(feet(0, 40)),
    transom: fc.constantFrom(true, false, null),
    floor: fc.constantFrom("concrete", "wood", "tile", null),
  });
  fc.assert(
    fc.property(fc.constantFrom(...starterTypes), fields, (name, values) => {
      const counted = count(typeOf(name), values);
      expect(counted.errors).toEqual([]);
      for (const [item, quantity] of Object.entries(byItem(counted))) {
        expect(codes).toContain(item);
        expect(Number.isSafeInteger(quantity) && quantity > 0).toBe(true);
      }
    }),
  );
});
