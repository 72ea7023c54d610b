import { describe, expect, test } from "@jest/globals";
import type { CellValue } from "../../../src/core/base/cell";
import { checkOpenings } from "../../../src/core/openings/checkOpenings";
import { readYesNo } from "../../../src/core/openings/yesNo";
import type { LengthUnit } from "../../../src/core/lengths/length";
import { readSchedule } from "../../../src/tables/scheduleTable";

const types = ["Sliding door", "Bi-parting sliding door", "Hinged door", "Hinged door pair"];

/** Checks rows of a schedule under the given headings. */
function check(headings: string, rows: readonly (readonly CellValue[])[], unit: LengthUnit = "in") {
  const reading = readSchedule({
    sheet: "S",
    row: 0,
    column: 0,
    rows: [headings.split("|"), ...rows],
  });
  if (!reading.ok) throw new Error(reading.error.message);
  return checkOpenings(reading.value.schedule, types, unit);
}

const all = "Job|Mark|Qty|Type|Width|Height|Post height|Tail post|Tail run|Transom|Floor";
const row = (changes: Readonly<Record<number, CellValue>> = {}): readonly CellValue[] =>
  ["J", "A-1", 1, "sliding door", 48, 84, 96, "yes", null, null, "concrete"].map((value, index) =>
    index in changes ? (changes[index] ?? null) : value,
  );
const codes = (...given: Parameters<typeof check>): readonly string[] =>
  check(...given).findings.map((finding) => `${finding.level} ${finding.code}`);

describe("a good row", () => {
  test("becomes an opening whose lengths are inches", () => {
    const { openings, findings } = check(all, [row({ 4: `4'-6 1/2"`, 5: "2134 mm" })]);
    expect(findings).toEqual([]);
    expect(openings[0]?.fields).toMatchObject({
      width: 54.5,
      height: (2134 * 5) / 127,
      tail_post: true,
    });
  });

  test("takes bare numbers in the workbook's unit", () => {
    const { openings } = check(all, [row({ 4: 1524, 5: 2134, 6: 2438 })], "mm");
    expect(openings[0]?.fields["width"]).toBe(60);
  });

  test("takes bare numbers in the unit of their heading", () => {
    const { openings } = check("Mark|Type|Width (mm)|Height (ft)", [
      ["A-1", "sliding door", 1524, 7],
    ]);
    expect(openings[0]?.fields).toMatchObject({ width: 60, height: 84 });
  });

  test("takes a transom's height for a transom", () => {
    const { openings } = check(all, [row({ 9: `2'-0"` })]);
    expect(openings[0]?.fields).toMatchObject({ transom: true, transom_height: 24 });
  });

  test.each(["-", "n/a", "none"])("takes %s for no tail run", (value) => {
    const { openings, findings } = check(all, [row({ 8: value })]);
    expect([openings[0]?.fields["tail_run"], findings]).toEqual([null, []]);
  });
});

describe("the type", () => {
  test.each([
    ["SLIDING DOOR", "Sliding door", []],
    ["Sliding", "Sliding door", ["note type-guessed"]],
    ["bi parting sliding door", "Bi-parting sliding door", []],
    ["hinged door single", "Hinged door", ["note type-guessed"]],
    ["hinged door", "Hinged door", []],
  ])("%s is %s", (typed, type, said) => {
    const { openings, findings } = check(all, [row({ 3: typed })]);
    expect(openings[0]?.type).toBe(type);
    expect(findings.map((finding) => `${finding.level} ${finding.code}`)).toEqual(said);
  });

  test("that nobody knows is a stop with the nearest name", () => {
    const { uncounted } = check(all, [row({ 3: "slidng door" })]);
    expect(uncounted[0]?.findings[0]?.message).toContain("Did you mean Sliding door?");
  });

  test("is never guessed from words that could be another type", () => {
    expect(codes(all, [row({ 3: "sliding door special" })])).toEqual(["stop type-unknown"]);
  });
});

describe("what is wrong is a finding with its cell", () => {
  test.each<readonly [string, Readonly<Record<number, CellValue>>, string]>([
    ["no job", { 0: null }, "warn job-missing"],
    ["no mark", { 1: "  " }, "warn mark-missing"],
    ["no quantity", { 2: null }, "stop quantity-missing"],
    ["a quantity of white space", { 2: " " }, "stop quantity-missing"],
    ["a quantity of zero", { 2: 0 }, "stop quantity-not-a-count"],
    ["half a door", { 2: 1.5 }, "stop quantity-not-a-count"],
    ["a quantity in words", { 2: "2 or 3" }, "stop quantity-not-a-count"],
    ["no type", { 3: null }, "stop type-missing"],
    ["no width", { 4: null }, "stop size-is-missing"],
    ["a width that is no length", { 4: "wide" }, "stop length-not-understood"],
    [
      "a height that became a date",
      { 5: { kind: "date", serial: 46204 } },
      "stop length-is-a-date",
    ],
    ["millimetres in a column of inches", { 4: 2134 }, "warn length-not-a-door"],
    ["a tail post of maybe", { 7: "maybe" }, "stop not-yes-or-no"],
    [
      "an error in the post height",
      { 6: { kind: "error", error: "#REF!" } },
      "stop length-is-an-error",
    ],
  ])("%s", (_what, changes, said) => {
    const { findings } = check(all, [row(changes)]);
    expect(findings.map((finding) => `${finding.level} ${finding.code}`)).toEqual([said]);
    const [column] = Object.keys(changes);
    expect(findings[0]?.place).toEqual({ sheet: "S", row: 1, column: Number(column) });
  });

  test("all faults of a row are told, and the row is kept aside", () => {
    const { openings, uncounted } = check(all, [
      row({ 2: 0, 4: "wide", 7: "maybe" }),
      row({ 1: "A-2" }),
    ]);
    expect(openings.map((opening) => opening.mark)).toEqual(["A-2"]);
    expect(uncounted[0]?.findings).toHaveLength(3);
  });

  test("a mark twice in one job is a warning, and in two jobs is none", () => {
    expect(codes(all, [row(), row()])).toEqual(["warn mark-twice"]);
    expect(codes(all, [row(), row({ 0: "K" })])).toEqual([]);
  });

  test("no quantity column counts each row once, with one note", () => {
    expect(
      codes("Mark|Type|Width|Height", [
        ["A", "hinged door", 36, 84],
        ["B", "hinged door", 36, 84],
      ]),
    ).toEqual(["note quantity-assumed", "note job-column-missing"]);
  });
});

describe("yes and no", () => {
  test.each<readonly [CellValue, boolean | null | undefined]>([
    ["Yes", true],
    ["y", true],
    ["TRUE", true],
    ["x", true],
    [1, true],
    [true, true],
    ["No", false],
    ["n", false],
    ["-", false],
    ["N/A", false],
    [0, false],
    [false, false],
    ["", null],
    ["  ", null],
    [null, null],
    ["maybe", undefined],
    [2, undefined],
    [{ kind: "error", error: "#N/A" }, undefined],
  ])("%j reads as %s", (value, answer) => {
    expect(readYesNo(value)).toBe(answer);
  });
});
