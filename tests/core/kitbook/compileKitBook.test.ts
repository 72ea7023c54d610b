import { describe, expect, test } from "@jest/globals";
import { findingCell } from "../../../src/core/base/finding";
import { openingTypeNamed } from "../../../src/core/kitbook/kitBook";
import { byItem, count, opening, typeOf } from "./openings";
import { brief, compiled, onePart, type Notation } from "./rows";

const door = opening("6' x 7' on 8'");

describe("a good book", () => {
  const notation: Notation = {
    sizes: [
      "Door | bolts | leaves * 2 | count | two a leaf | assumed",
      "Door | leaves | IF(width > 5', 2, 1) | count",
      "Door, Gate | Leaf width | width / 2 | length",
    ],
    parts: [
      "Door | Hinges | 1 | BOLT | | bolts | leaves > 1 | | 3 * bolts | | assumed",
      "* | Leaf | 2 | PANEL | leaf_width x height | 1",
      'Gate | Track | = 2 + 1 | =CHART("rail", height) | | 1 | | width - 1"',
    ],
    limits: ["Gate | height > 7' | warn | {Height} is more than {leaf_width}"],
    charts: ["rail | next up | 6' | | RAIL 6", "rail | next up | 8' | | RAIL 8"],
  };
  const { book, findings } = compiled(notation);

  test("has no findings, and its types in the order in which they are named", () => {
    expect(findings).toEqual([]);
    expect(book.types.map(({ name }) => name)).toEqual(["Door", "Gate"]);
    expect(book.types.map(({ broken }) => broken)).toEqual([[], []]);
  });

  test("works sizes out in the order in which they need each other", () => {
    const type = typeOf("door", book);
    const names = type.sizes.map(({ name }) => name);
    expect(names.indexOf("leaves")).toBeLessThan(names.indexOf("bolts"));
    expect(type.sizes.map(({ slot }) => slot)).toEqual([14, 15, 16]);
    expect(type.slots.slice(-3).map(({ label }) => label)).toEqual(names);
  });

  test("counts by its rows", () => {
    expect(count(typeOf("Door", book), door, book).counts).toEqual({
      BOLT: 4,
      "PANEL (36 x 84)": 1,
    });
    expect(count(typeOf("Gate", book), door, book).counts).toEqual({
      "PANEL (36 x 84)": 1,
      "RAIL 8 (71)": 1,
    });
  });

  test("knows where each row stands", () => {
    const [bolt, panel] = typeOf("Door", book).parts;
    expect(bolt).toMatchObject({
      source: { section: "parts", number: 1, place: { row: 0, column: 0 } },
      basis: "assumed",
      minutes: { text: "3 * bolts", place: { row: 0, column: 8 } },
    });
    expect(panel).toMatchObject({ source: { number: 2 }, minutes: null });
  });

  test("shows values in messages by any spelling of their names", () => {
    const tall = opening("6' x 7.5' on 8'");
    expect(count(typeOf("Gate", book), tall, book).said).toEqual([
      { level: "warn", message: "90 is more than 36" },
    ]);
  });

  test.each(["Door", "DOOR", " door ", "door."])("finds the opening type as %j", (name) => {
    expect(openingTypeNamed(book, name)?.name).toBe("Door");
  });
});

describe("further headings of the schedule", () => {
  test("are fields that formulas may use", () => {
    const parts = ['Door | Bag | 1 | CLOSER | | 1 | Closer_type = "heavy"', onePart];
    const { book, findings } = compiled({ parts }, ["Closer type", "Width", "!!"]);
    expect(findings).toEqual([]);
    expect(book.fields.slice(14)).toEqual([
      { name: "closer_type", label: "Closer type", kind: "found" },
    ]);
    const fields = { ...door, closer_type: "Heavy" };
    expect(count(typeOf("Door", book), fields, book).counts).toEqual({ CLOSER: 1, NUT: 1 });
  });

  test("give way to a size of the same name, with a warning", () => {
    const notation = { sizes: ["Door | leaf width | width - 2 | length"], parts: [onePart] };
    const { book, findings } = compiled(notation, ["Leaf Width"]);
    expect(findings.map(brief)).toEqual(["sizes!B1 size-hides-a-heading"]);
    expect(count(typeOf("Door", book), { ...door, leaf_width: 1 }, book).sizes).toMatchObject({
      leaf_width: 70,
    });
  });
});

describe("a type's own size", () => {
  test("stands in for one of the same name for all types, wherever they stand", () => {
    const { book, findings } = compiled({
      sizes: [
        "Gate | section | 20' | length",
        "* | section | 16' | length",
        "* | sections | ROUNDUP(width / section, 0) | count",
      ],
      parts: ["Door, Gate | Bag | 1 | RAIL | | sections"],
    });
    expect(findings).toEqual([]);
    const wide = opening("18' x 7'");
    expect(byItem(count(typeOf("Door", book), wide, book))).toEqual({ RAIL: 2 });
    expect(byItem(count(typeOf("Gate", book), wide, book))).toEqual({ RAIL: 1 });
  });
});

/** What is wrong, the book, and the findings with their cells. */
const faults: readonly (readonly [string, Notation, readonly string[]])[] = [
  ["no opening type at all", {}, ["book-without-types"]],
  [
    "a row without a type",
    { parts: [onePart, " | Bag | 1 | NUT | | 1"] },
    ["parts!A2 book-type-empty"],
  ],
  [
    "an unknown name",
    { sizes: ["Door | a | widht * 2 | length"], parts: [onePart] },
    ["sizes!C1 formula-name-unknown"],
  ],
  [
    "a formula that makes no sense",
    { sizes: ["Door | a | width * | length"], parts: [onePart] },
    ["sizes!C1 formula-value-expected"],
  ],
  [
    "sizes that need each other",
    {
      sizes: ["Door | a | b + 1 | length", "Door | b | a | length", "Door | c | b | length"],
      parts: [onePart],
    },
    ["sizes!C1 size-cycle", "sizes!C2 size-cycle", "sizes!C3 book-needs-bad-size"],
  ],
  [
    "a size that needs itself",
    { sizes: ["Door | a | a + 1 | length"], parts: [onePart] },
    ["sizes!C1 size-cycle"],
  ],
  [
    "a size twice",
    { sizes: ["Door | a | 1 | count", "Door | A | 2 | count"], parts: [onePart] },
    ["sizes!B2 size-twice"],
  ],
  [
    "a size twice alike",
    { sizes: ["Door | a | 1 | count", "Door | a | 1 | count"], parts: [onePart] },
    ["sizes!B2 size-repeated"],
  ],
  [
    "a size with a field's name",
    { sizes: ["Door | Post height | 8' | length"], parts: [onePart] },
    ["sizes!B1 size-name-is-a-field"],
  ],
  [
    "a size with a name that no formula can use",
    { sizes: ["Door | 2nd | 8' | length"], parts: [onePart] },
    ["sizes!B1 size-name-unusable"],
  ],
  [
    "an unknown unit",
    { sizes: ["Door | a | 8' | furlong"], parts: [onePart] },
    ["sizes!D1 size-unit-unknown"],
  ],
  [
    "a size that is never of its unit",
    { sizes: ['Door | a | "long" | length', "Door | b | 1.5 | count"], parts: [onePart] },
    ["sizes!C1 size-wrong-kind", "sizes!C2 size-wrong-kind"],
  ],
  ["an empty item", { parts: ["Door | Bag | 1 | | | 1"] }, ["parts!D1 book-cell-empty"]],
  [
    "an item that is only =",
    { parts: ["Door | Bag | 1 | = | | 1"] },
    ["parts!D1 item-or-formula-empty"],
  ],
  ["no quantity", { parts: ["Door | Bag | 1 | NUT"] }, ["parts!F1 book-cell-empty"]],
  ["no bag", { parts: ["Door | | 1 | NUT | | 1"] }, ["parts!B1 bag-empty"]],
  [
    "a quantity that is never whole",
    { parts: ["Door | Bag | 1 | NUT | | 1/2", "Door | Bag | 1 | NUT | | -1"] },
    ["parts!F1 quantity-not-whole", "parts!F2 quantity-not-whole"],
  ],
  [
    "three measures",
    { parts: ["Door | Bag | 1 | BOX | 1 x 2 x 3 | 1"] },
    ["parts!E1 size-not-one-or-two"],
  ],
  [
    "a size and a cut length",
    { parts: ["Door | Bag | 1 | RAIL | width | 1 | | width"] },
    ["parts!H1 size-and-cut-length"],
  ],
  [
    "a live formula that the spreadsheet worked out",
    { parts: ["Door | Bag | 1 | #NAME? | | 1"] },
    ["parts!D1 book-cell-error"],
  ],
  [
    "a length that the spreadsheet made a date",
    { sizes: ["Door | a | @45475 | length"], parts: [onePart] },
    ["sizes!C1 book-cell-date"],
  ],
  [
    "several faults in one row",
    { parts: ["Door | Bag | 1 + | =CHRT(1) | | nuts"] },
    ["parts!C1 formula-value-expected", "parts!D1 formula-function-unknown"],
  ],
  [
    "an unknown level",
    { limits: ["Door | width > 1 | panic | Too wide"], parts: [onePart] },
    ["limits!C1 level-unknown"],
  ],
  [
    "a limit without condition or message",
    { limits: ["Door | | stop | Too wide", "Door | TRUE | stop"], parts: [onePart] },
    ["limits!B1 book-cell-empty", "limits!D2 book-cell-empty"],
  ],
  [
    "an unknown name in a message",
    { limits: ["Door | TRUE | note | {widht} is wide"], parts: [onePart] },
    ["limits!D1 message-name-unknown"],
  ],
  [
    "a chart that is not there",
    { parts: [onePart, 'Door | Bag | 1 | =CHART("rail", width) | | 1'] },
    ["parts!D2 formula-chart-unknown"],
  ],
  [
    "an unknown match",
    { charts: ["rail | nearly | 1 | | R"], parts: [onePart] },
    ["charts!B1 chart-match-unknown"],
  ],
  [
    "a match that changes",
    { charts: ["rail | exact | 1 | | R", "rail | next up | 2 | | S"], parts: [onePart] },
    ["charts!B2 chart-match-differs"],
  ],
  [
    "an entry without chart, key or value",
    {
      charts: [" | exact | 1 | | R", "rail | exact | | | R", "rail | exact | 3 | | "],
      parts: [onePart],
    },
    ["charts!A1 book-cell-empty", "charts!C2 book-cell-empty", "charts!E3 chart-value-empty"],
  ],
  [
    "an entry twice",
    { charts: ["rail | | 84 | | R", "rail | | 7' | | S", "rail | | 7' | | S"], parts: [onePart] },
    ["charts!A2 chart-entry-twice", "charts!A3 chart-entry-twice"],
  ],
  [
    "an entry twice alike",
    { charts: ["rail | | Wood | | R", "rail | | WOOD | | r"], parts: [onePart] },
    ["charts!A2 chart-entry-repeated"],
  ],
  [
    "a two-way chart with a hole",
    { charts: ["rail | | 1 | 1 | R", "rail | | 2 | | R"], parts: [onePart] },
    ["charts!D2 chart-across-empty"],
  ],
  [
    "text among the numbers of a next up chart",
    { charts: ["rail | next up | 1 | | R", "rail | next up | wide | | R"], parts: [onePart] },
    ["charts!A2 chart-text-next-up"],
  ],
  [
    "a chart looked into with the wrong number of values",
    {
      charts: ["rail | exact | 1 | | R", "plate | exact | 1 | 1 | P"],
      parts: [
        onePart,
        'Door | Bag | 1 | =CHART("rail", width, height) | | 1',
        'Door | Bag | 1 | =CHART("plate", width) | | 1',
      ],
    },
    ["parts!D2 chart-ways", "parts!D3 chart-ways"],
  ],
  [
    "a type that is likely a slip",
    { parts: ["Sliding door | Bag | 1 | NUT | | 1", "Slidng door | Bag | 1 | NUT | | 1"] },
    ["parts!A1 book-type-likeness", "parts!A2 book-type-likeness"],
  ],
  [
    "a type without parts",
    { sizes: ["Hatch | a | 1 | count"], parts: [onePart] },
    ["sizes!A1 book-type-without-parts"],
  ],
];

describe("a bad book", () => {
  test.each(faults)("with %s says so at its cell", (_what, notation, wanted) => {
    expect(compiled(notation).findings.map(brief).sort()).toEqual([...wanted].sort());
  });

  test("suggests the name that was likely meant", () => {
    const { findings } = compiled({
      sizes: ["Door | a | widht | length"],
      limits: ["Door | TRUE | note | {widht}"],
      parts: [onePart],
    });
    for (const { message } of findings) expect(message).toContain("width");
    expect(findings).toHaveLength(2);
  });

  test("says in how few rows a type stands that is likely a slip", () => {
    const row = "Slidng door | Bag | 1 | NUT | | 1";
    const [first] = compiled({
      parts: [row, ...Array.from({ length: 5 }, () => row.replace("Slidng", "Sliding"))],
    }).findings;
    expect(first?.message).toMatch(
      /^The opening type "Slidng door" stands in 1 row of the kit book only, and there is one called "Sliding door"\./,
    );
  });

  test("shows the path of a cycle", () => {
    const sizes = ["Door | a | b | length", "Door | b | c | length", "Door | c | a | length"];
    const [first] = compiled({ sizes, parts: [onePart] }).findings;
    expect(first?.message).toContain("a → b → c → a");
  });
});

describe("the good rows of a bad book", () => {
  const { book, findings } = compiled({
    sizes: [
      "Door | good | width / 12 | number",
      "Door | bad | wdth | length",
      "Door | worse | bad * 2 | length",
    ],
    parts: [
      "Door | Bag | 1 | GOOD | | good",
      "Door | Bag | 1 | BAD | | worse",
      "Door | Bag | 1 | LATE | | 1 | bad > 1",
      "Gate | Bag | 1 | GATE | | 1",
      "Gate | Bag | 1 | NUTS | | 2",
      "Gate | Bag | 1 | BOLTS | | 2",
    ],
    limits: ["Door | good > 5 | note | {bad}", "Door | good > 5 | note | {good} feet"],
  });

  test("still work", () => {
    const counted = count(typeOf("Door", book), door, book);
    expect(counted.counts).toEqual({ GOOD: 6 });
    expect(counted.said).toEqual([{ level: "note", message: "6 feet" }]);
  });

  test("are told apart from the rows that cannot be used", () => {
    const left = typeOf("Door", book).broken.map(({ source }) => [source.section, source.number]);
    expect(left).toEqual([
      ["sizes", 2],
      ["sizes", 3],
      ["parts", 2],
      ["parts", 3],
      ["limits", 1],
    ]);
    expect(typeOf("Gate", book).broken).toEqual([]);
  });

  test("leave a finding for each row that cannot be used", () => {
    expect(findings.map(findingCell)).toEqual([
      "sizes!C2",
      "sizes!C3",
      "parts!F2",
      "parts!G3",
      "limits!D1",
    ]);
  });
});

describe("a size that cannot be read", () => {
  test("is known by its name to the rows that need it", () => {
    const { book, findings } = compiled({
      sizes: ["Door | leaf | width * | length", "Door | half | leaf / 2 | length"],
      parts: [onePart, "Door | Bag | 1 | PANEL | | leaf"],
    });
    expect(findings.map(brief)).toEqual([
      "sizes!C1 formula-value-expected",
      "sizes!C2 book-needs-bad-size",
      "parts!F2 book-needs-bad-size",
    ]);
    expect(typeOf("Door", book).broken).toHaveLength(3);
  });

  test("is not replaced by one for all types, which would be wrong for its own", () => {
    const { book } = compiled({
      sizes: ["Door | section | 20 * | length", "* | section | 16' | length"],
      parts: ["Door, Gate | Bag | 1 | RAIL | section | 1"],
    });
    expect(book.types.map(({ parts }) => parts.length)).toEqual([0, 1]);
  });
});

describe("a row for several types", () => {
  const sizes = ["Door | leaf | width | length"];
  const parts = [onePart, "Gate | Bag | 1 | NUT | | 1"];

  test("that is wrong for one of them names it", () => {
    const { book, findings } = compiled({
      sizes,
      parts: [...parts, "Door, Gate | Bag | 1 | PANEL | leaf | 1"],
    });
    expect(findings).toHaveLength(1);
    expect(findings[0]?.message).toMatch(/^For the opening type "Gate": /);
    expect(typeOf("Door", book).broken).toEqual([]);
    expect(typeOf("Gate", book).broken).toHaveLength(1);
  });

  test("that is wrong for all of them is reported once", () => {
    const { findings } = compiled({
      sizes,
      parts: [...parts, "* | Bag | 1 | PANEL | nothing_near | 1"],
    });
    expect(findings.map(brief)).toEqual(["parts!E3 formula-name-unknown"]);
    expect(findings[0]?.message).not.toContain("opening type");
  });

  test("without a type makes every type's count incomplete", () => {
    const { book } = compiled({ sizes, parts: [...parts, " | Bag | 1 | PANEL | | 1"] });
    expect(book.types.map(({ broken }) => broken.length)).toEqual([1, 1]);
  });
});

describe("sizes of pieces", () => {
  test.each([
    ["width x height", "72 x 84"],
    ["width X height", "72 x 84"],
    ["width × height", "72 x 84"],
    ["width", "72"],
    ['7\'-0 1/2" x 5"', "84.5 x 5"],
    ['IF(floor = "a x b", 1, 2) x height', "2 x 84"],
    ["72", "72"],
  ])("%s is %s", (written, size) => {
    const { book, findings } = compiled({ parts: [`Door | Bag | 1 | BOX | ${written} | 1`] });
    expect(findings).toEqual([]);
    expect(count(typeOf("Door", book), door, book).counts).toEqual({ [`BOX (${size})`]: 1 });
  });
});
