import { describe, expect, test } from "@jest/globals";
import { columnChoices, withColumn } from "../../src/pane/setUp/columnChoices";
import { noColumn } from "../../src/tables/scheduleLayout";
import { likelyHeadings } from "../../src/tables/likelyHeadings";
import { readSchedule } from "../../src/tables/scheduleTable";

const block = {
  sheet: "Doors",
  row: 2,
  column: 1,
  rows: [
    ["Mark", "Width", "Height", "Note", "note", "Height"],
    ["A-1", 48, 84, "", "", 90],
  ],
};

describe("the columns to choose from", () => {
  const reading = readSchedule(block);
  if (!reading.ok) throw new Error(reading.error.message);
  const choices = columnChoices(reading.value);

  test("are all that have a heading, by the letters of the sheet", () => {
    expect(choices.map(({ label }) => label)).toEqual([
      "B: Mark",
      "C: Width",
      "D: Height",
      "E: Note",
      "F: note",
      "G: Height",
    ]);
  });

  test("are kept by their heading, and by their letters where two headings are alike", () => {
    expect(choices.map(({ value }) => value)).toEqual(["Mark", "Width", "D", "E", "F", "G"]);
  });

  test("mean the column that was chosen when the schedule is read again", () => {
    for (const { value, column } of choices) {
      const again = readSchedule(block, { hand: value });
      const hand = again.ok
        ? again.value.columns.find((match) => match.key === "hand")?.column
        : null;
      expect({ value, hand }).toEqual({ value, hand: column });
    }
  });
});

describe("choosing a column", () => {
  test("sets it, changes it, says that there is none, and leaves it to be found", () => {
    const set = withColumn({ width: "B" }, "height", "Tall");
    expect(set).toEqual({ width: "B", height: "Tall" });
    expect(withColumn(set, "height", noColumn)).toEqual({ width: "B", height: noColumn });
    expect(withColumn(set, "height", "")).toEqual({ width: "B" });
  });
});

describe("headings that nobody knows", () => {
  test("are the row with the most texts", () => {
    const rows = [["Doors of the crib"], ["Where", "Breadth", "Tallness"], ["Crib", 48, "7'"]];
    expect(likelyHeadings({ sheet: "Doors", row: 0, column: 0, rows })).toEqual([
      { column: 0, heading: "Where" },
      { column: 1, heading: "Breadth" },
      { column: 2, heading: "Tallness" },
    ]);
  });

  test("are none on a sheet of numbers or of one text", () => {
    const rows = [
      [1, 2, 3],
      ["alone", 4],
    ];
    expect(likelyHeadings({ sheet: "Doors", row: 0, column: 0, rows })).toEqual([]);
  });
});
