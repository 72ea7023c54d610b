import { describe, expect, test } from "@jest/globals";
import { functionTable } from "../../src/functions/functionTable";
import { functionMetadata } from "../../src/functions/metadata";
import type { FunctionInput } from "../../src/functions/worksheetFunction";
import { ask } from "./ask";

const door = ["sliding door", `8'-0"`, 84, `7'`, "yes", "concrete"] as const;

describe("an answer about one opening", () => {
  test("is the count of the same door in a schedule", () => {
    expect(ask("COUNT", "HN 1/4", ...door)).toBe(19);
    expect(ask("COUNT", "cb 1/4 x 1-1/4", ...door)).toBe(14);
  });

  test("is zero for an item that this opening does not need", () => {
    expect(ask("COUNT", "HINGE", ...door)).toBe(0);
  });

  test("is a table of the whole kit", () => {
    const rows = ask("KIT", ...door);
    expect(rows).toContainEqual(["PANEL", `4'-0" x 7'-0"`, 2, expect.any(String)]);
  });

  test("has its reason", () => {
    expect(ask("WHY", "PANEL", ...door)).toContain("panels = 2");
  });

  test("has its sizes", () => {
    expect(ask("SIZE", "leaf_width", ...door)).toBe(96);
    expect(ask("SIZE", "Leaf width", ...door)).toBe(96);
  });

  test("costs and weighs what its lines add up to, without spares", () => {
    const cost = ask("COST", ...door);
    const weight = ask("WEIGHT", ...door);
    expect(cost).toBeGreaterThan(0);
    expect(weight).toBeGreaterThan(0);
  });

  test("takes further fields from a range of names and values", () => {
    const fields = [
      ["Transom", "yes"],
      ["tail run", `9'`],
    ];
    expect(
      ask("COUNT", "HN 1/4", "sliding door", 96, 84, 84, "yes", "concrete", null, null, fields),
    ).toBe(19);
  });
});

test.each([
  [`8'-0"`, `7'-0"`, "PLATE 8-7"],
  ["2134 mm", "2134 mm", "PLATE 7-7"],
  [`10'`, `10'`, "PLATE 10-10"],
])("the plate for a post of %s and a door of %s is %s", (post, height, plate) => {
  expect(ask("PLATE", post, height)).toBe(plate);
});

describe("a wrong argument is named, with what is wrong", () => {
  test.each([
    ["COUNT", [null, ...door], "value: The argument item is wrong: it is blank."],
    [
      "COUNT",
      ["HN 1/5", ...door],
      "value: The argument item is wrong: the kit book has no HN 1/5; did you mean HN 1/4.",
    ],
    [
      "COUNT",
      ["HN 1/4", "sliding door", null, 84],
      "value: The argument width is wrong: it is blank.",
    ],
    [
      "SIZE",
      ["leaf_widht", ...door],
      "value: The argument size is wrong: Sliding door has no size of that name; did you mean leaf_width.",
    ],
    ["INCHES", ["7 cubits", null], expect.stringContaining("value: ")],
    [
      "INCHES",
      [84, "cubits"],
      "value: The argument unit is wrong: it is cubits, and only in and mm are known.",
    ],
    ["FEET", ["x"], "value: The argument inches is wrong: it is not a number."],
    [
      "FEET",
      [84, 3],
      "value: The argument fraction is wrong: it is 3, and not 1, 2, 4, 8, 16, 32 or 64.",
    ],
    ["PLATE", [`9'`, `9'`], `na: The chart has no plate for a post of 9'-0" and a door of 9'-0".`],
    [
      "COUNT",
      ["HN 1/4", "sliding door", [[1, 2]], 84],
      "value: The argument width is wrong: give it one cell or one value.",
    ],
    ["COUNT", ["HN 1/4", "sliding door", 96, 84], expect.stringContaining("post height is blank")],
  ] as const)("%s of %j", (name, inputs, message) => {
    expect(ask(name, ...(inputs as unknown as FunctionInput[]))).toEqual(message);
  });
});

test.each([
  [`7'-0 1/2"`, 84.5],
  ["2134 mm", 84.01574803149606],
  [84, 84],
])("%s is %d inches", (text, inches) => {
  expect(ask("INCHES", text)).toBe(inches);
  expect(ask("INCHES", ask("FEET", ask("INCHES", text) as number, 64) as string)).toBeCloseTo(
    inches,
    1,
  );
});

describe("the registration file", () => {
  const { functions } = functionMetadata();

  test("has every function of the table with all of its arguments", () => {
    expect(functions.map(({ id }) => id)).toEqual(functionTable.map(({ name }) => name));
    expect(functions.map(({ parameters }) => parameters.length)).toEqual(
      functionTable.map((row) => row.arguments.length),
    );
  });

  test("names functions as Excel allows: letters, digits, _ and ., three characters, no cell's name", () => {
    for (const { id } of functions) {
      expect(id).toMatch(/^[A-Z][A-Z0-9_.]{2,}$/);
      expect(id).not.toMatch(/^[A-Z]{1,3}\d+$/);
    }
  });

  test("puts optional arguments behind the needed ones", () => {
    for (const { parameters } of functions) {
      const optional = parameters.map((parameter) => "optional" in parameter);
      expect(optional).toEqual([...optional].sort());
    }
  });
});
