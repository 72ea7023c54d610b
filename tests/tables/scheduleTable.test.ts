import { describe, expect, test } from "@jest/globals";
import type { Block, CellValue } from "../../src/core/base/cell";
import { noColumn, scheduleLikeness, type ScheduleMapping } from "../../src/tables/scheduleLayout";
import { readSchedule } from "../../src/tables/scheduleTable";

const block = (...rows: readonly (readonly CellValue[])[]): Block => ({
  sheet: "Schedule",
  row: 0,
  column: 0,
  rows,
});

const headings = ["Job", "Mark", "Qty", "Type", "Width", "Height"];

function read(from: Block, mapping?: ScheduleMapping) {
  const reading = readSchedule(from, mapping);
  if (!reading.ok) throw new Error(reading.error.message);
  return reading.value;
}

describe("rows of a schedule", () => {
  test("are read with the place of every cell", () => {
    const { schedule } = read(block(headings, ["J", "A-1", 2, "sliding door", 48, 84]));
    expect(schedule.rows[0]?.cells.width).toEqual({
      value: 48,
      place: { sheet: "Schedule", row: 1, column: 4 },
    });
  });

  test("skip blank rows, repeated headings, totals and titles, and say what was skipped", () => {
    const { schedule, findings } = read(
      block(
        ["Level 1"],
        headings,
        ["J", "A-1", 2, "sliding door", 48, 84],
        [null, "  ", null],
        headings,
        ["J", "A-2", 2, "sliding door", 48, 84],
        [null, "Total", 4],
        [null, null, null, null, null, null, "Level 2"],
      ),
    );
    expect(schedule.rows.map((row) => row.cells.mark?.value)).toEqual(["A-1", "A-2"]);
    expect(findings.map(({ code, found }) => [code, found])).toEqual([
      ["total-row", "Total"],
      ["title-row", "Level 2"],
    ]);
  });

  test("keep a row that has a mark and nothing else: it is an opening without sizes", () => {
    const { schedule } = read(block(headings, [null, "A-9"]));
    expect(schedule.rows).toHaveLength(1);
  });

  test("keep a row whose mark reads like a total but has sizes", () => {
    const { schedule } = read(block(headings, ["J", "Total", 1, "sliding door", 48, 84]));
    expect(schedule.rows).toHaveLength(1);
  });

  test("take the job from a title row above where they name none", () => {
    const { schedule } = read(
      block(headings, ["North crib"], [null, "A-1", 1, "sliding door", 48, 84]),
    );
    expect(schedule.rows[0]?.cells.job?.value).toBe("North crib");
  });

  test("keep further columns as fields by their heading", () => {
    const { schedule } = read(
      block([...headings, "Closer type"], ["J", "A-1", 1, "d", 48, 84, "heavy"]),
    );
    expect(schedule.otherHeadings).toEqual({ closer_type: "Closer type" });
    expect(schedule.rows[0]?.others["closer_type"]?.value).toBe("heavy");
  });
});

describe("columns", () => {
  test("that the person maps are taken by heading or by letter", () => {
    const from = block(["Tag", "A", "B"], ["A-1", 48, 84]);
    const { columns } = read(from, { mark: "Tag", width: "B", height: "C" });
    expect(columns.map(({ key, column }) => [key, column])).toEqual([
      ["mark", 0],
      ["width", 2],
      ["height", 2],
    ]);
  });

  test("that the person maps and that are not there are an error", () => {
    const reading = readSchedule(block(headings), { width: "Breadth" });
    expect(reading).toMatchObject({
      ok: false,
      error: { code: "mapped-column-missing", found: "Breadth" },
    });
  });

  test("for width or height that are missing are a stop", () => {
    const { findings } = read(block(["Mark", "Qty", "Type", "Width"], ["A-1", 1, "d", 48]));
    expect(findings.map((finding) => [finding.code, finding.level])).toEqual([
      ["column-missing", "stop"],
    ]);
  });

  test("that fit the same heading twice are a warning that names the one used", () => {
    const { findings } = read(block([...headings, "Width"], ["J", "A-1", 1, "d", 48, 84, 50]));
    expect(findings[0]).toMatchObject({ code: "heading-twice", place: { column: 6 } });
    expect(findings[0]?.message).toContain("Schedule!E1");
  });
});

test("a sheet without headings is no schedule", () => {
  expect(readSchedule(block([1, 2, 3], ["a", "b"]))).toMatchObject({
    ok: false,
    error: { code: "no-schedule" },
  });
  expect(scheduleLikeness(block(["Code", "Description", "Unit cost"]))).toBe("none");
  expect(scheduleLikeness(block(headings))).toBe("whole");
  expect(scheduleLikeness(block(headings.slice(0, 5)))).toBe("part");
});

describe("a column that the person said is not there", () => {
  test("is not guessed from its heading", () => {
    const from = block(["Job", "Mark", "Width", "Height", "Hand"], ["J", "A-1", 48, 84, "by hand"]);
    const { schedule, columns } = read(from, { hand: noColumn });
    expect(columns.map(({ key }) => key)).not.toContain("hand");
    expect(schedule.rows[0]?.cells.hand).toBeUndefined();
  });
});
