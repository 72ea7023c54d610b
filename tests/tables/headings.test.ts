import { describe, expect, test } from "@jest/globals";
import { findHeadingRow, matchHeadings, readHeading } from "../../src/tables/headings";
import { scheduleColumns } from "../../src/tables/scheduleColumns";

const keyOf = (heading: string): string | undefined =>
  matchHeadings([heading], scheduleColumns).matches[0]?.key;

describe("a heading is known by its words", () => {
  test.each([
    ["Job", "job"],
    ["PROJECT NAME", "job"],
    ["Mark", "mark"],
    ["Door #", "mark"],
    ["Opening No.", "mark"],
    ["Qty", "quantity"],
    ["How many alike", "quantity"],
    ["Door type", "type"],
    ["W", "width"],
    ["Clear opening width", "width"],
    ["Width (mm)", "width"],
    ["Door Height", "height"],
    ["Post ht.", "post_height"],
    ["Height of posts", "post_height"],
    ["post_height", "post_height"],
    ["Tail post?", "tail_post"],
    ["Transom", "transom"],
    ["Transom height", "transom_height"],
    ["Floor type", "floor"],
    ["Handing", "hand"],
  ])("%s is the column for %s", (heading, key) => {
    expect(keyOf(heading)).toBe(key);
  });

  test.each(["Track height", "Closer", "Colour", "Remarks", "Delivery week"])(
    "%s is no column of the schedule's own",
    (heading) => {
      expect(keyOf(heading)).toBeUndefined();
    },
  );
});

test.each([
  ["Width (mm)", "mm"],
  ["Width, in", "in"],
  ["Height ft", "ft"],
  ["Width", null],
  ["in", null],
])("the heading %s gives its numbers the unit %s", (heading, unit) => {
  expect(readHeading(heading).unit).toBe(unit);
});

describe("each key has one column", () => {
  test("the better fit wins over the earlier column", () => {
    const { matches, repeats } = matchHeadings(["Opening width", "Width"], scheduleColumns);
    expect(matches.map((match) => match.heading)).toEqual(["Opening width"]);
    expect(repeats.map((match) => match.heading)).toEqual(["Width"]);
  });

  test("post height does not take the height's column", () => {
    const { matches } = matchHeadings(["Post height", "Height"], scheduleColumns);
    expect(matches.map(({ key, column }) => [key, column])).toEqual([
      ["post_height", 0],
      ["height", 1],
    ]);
  });

  test("a column that the person names wins over any guess", () => {
    const { matches } = matchHeadings(
      ["Mark", "Width", "Frame"],
      scheduleColumns,
      new Map([["width", 2]]),
    );
    expect(matches.map(({ key, heading }) => [key, heading])).toEqual([
      ["mark", "Mark"],
      ["width", "Frame"],
    ]);
  });
});

test("the heading row is found below titles and notes", () => {
  const rows = [
    ["Door schedule, revision B"],
    ["All sizes in inches"],
    [],
    ["Mark", "Qty", "Width", "Height"],
    ["A-1", 1, 48, 84],
  ];
  expect(findHeadingRow(rows, scheduleColumns, 3)).toBe(3);
  expect(findHeadingRow(rows.slice(0, 3), scheduleColumns, 3)).toBe(-1);
});
