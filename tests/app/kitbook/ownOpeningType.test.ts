/** A firm adds an opening type by nothing but rows on its kit-book sheets: everything knows it. */
import { beforeAll, describe, expect, test } from "@jest/globals";
import type { MemoryWorkbook } from "../../../src/adapters/memory/memoryWorkbook";
import { checkKitBook } from "../../../src/app/kitbook/checkKitBook";
import { kitBookAtHand, type KitBookAtHand } from "../../../src/app/kitbook/kitBookAtHand";
import { packingDrawings } from "../../../src/app/writing/packingLists";
import { defaultSettings } from "../../../src/app/settings";
import { setUpDrawings } from "../../../src/app/writing/setUpWorkbook";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../../../src/app/reading/workbookTakeOff";
import { takeOffDrawings } from "../../../src/app/writing/writeSheets";
import { cellText, type CellValue } from "../../../src/core/base/cell";
import { finish } from "../../../src/core/base/steps";
import { packJob } from "../../../src/core/bags/bags";
import { allSizes, boundaryTable } from "../../../src/core/bookcheck/boundaries";
import { tryOpening } from "../../../src/core/bookcheck/trial";
import { drawElevation } from "../../../src/core/elevation/drawElevation";
import { elevationWords } from "../../../src/core/elevation/elevationWords";
import { openingTypeNamed } from "../../../src/core/kitbook/kitBook";
import { shownValue } from "../../../src/workbook/drawing";
import { scheduleRows, workbookOf } from "../typedWorkbook";

/** Invented: a door of two leaves, one above the other, with a shelf on the lower one. */
const dutchDoor: Readonly<Record<string, readonly (readonly CellValue[])[]>> = {
  "Kit book sizes": [
    [
      "Dutch door",
      "lower_height",
      "ROUND(height * 0.45, 0)",
      "length",
      "of the lower leaf",
      "our own",
    ],
    [
      "Dutch door",
      "leaf_hinges",
      "IF(lower_height > 3', 3, 2)",
      "count",
      "for each leaf",
      "our own",
    ],
  ],
  "Kit book parts": [
    [
      "Dutch door",
      "Leaves",
      10,
      "PANEL",
      "width x lower_height",
      1,
      null,
      null,
      20,
      null,
      "our own",
    ],
    ["Dutch door", "Leaves", 10, "PANEL", "width x (height - lower_height)", 1, null, null, 20],
    ["Dutch door", "Hinges", 20, "HINGE", null, "2 * leaf_hinges", null, null, 8],
    [
      "Dutch door",
      "Hinges",
      20,
      "HB 1/4 x 1-3/4",
      null,
      "4 * leaf_hinges",
      null,
      null,
      null,
      '1 1/4"',
    ],
    ["Dutch door", "Hinges", 20, "HN 1/4", null, "4 * leaf_hinges"],
    ["Dutch door", "Shelf", 30, '=CHART("shelf", width)', null, 1, 'shelf = "yes"'],
    ["Dutch door", "Bolt", 40, "BARREL BOLT", null, 1],
  ],
  "Kit book limits": [
    [
      "Dutch door",
      "width > 4'",
      "stop",
      "A Dutch door of {width} is too wide: 4 ft at most.",
      "our own",
    ],
  ],
  "Kit book charts": [
    ["shelf", "next up", "3'", null, "SHELF 36"],
    ["shelf", "next up", "4'", null, "SHELF 48"],
    ["unused", "exact", 1, null, "X"],
  ],
};

let workbook: MemoryWorkbook;
let takeOff: WorkbookTakeOff;
let hand: KitBookAtHand;

beforeAll(async () => {
  const [headings = [], ...rows] = scheduleRows(
    "D-1 | 2 | dutch door | 3' | 7' |",
    "D-2 | 1 | Dutch Door | 5' | 7' |",
    "D-3 | 1 | dutch door | 3' 6\" | 6' 6\" |",
  );
  workbook = workbookOf({
    Schedule: [
      [...headings, "Shelf"],
      ...rows.map((cells, at) => [...cells, ["yes", "no", "yes"][at] ?? null]),
    ],
  });
  await workbook.write(setUpDrawings(new Set(["kitBook", "items"]), []));
  for (const [sheet, lines] of Object.entries(dutchDoor)) {
    const first = workbook.snapshot().sheets.find(({ name }) => name === sheet)?.rows.length ?? 0;
    for (const [row, cells] of lines.entries()) {
      for (const [column, value] of cells.entries()) {
        if (value !== null) workbook.type({ sheet, row: first + row, column }, value);
      }
    }
  }
  const taken = await takeOffWorkbook(workbook, defaultSettings);
  if (!taken.ok) throw new Error(taken.error.message);
  takeOff = taken.value;
  hand = kitBookAtHand(takeOff.inputs, defaultSettings);
});

const type = () => {
  const found = openingTypeNamed(hand.book, "Dutch door");
  if (found === undefined) throw new Error("No such type.");
  return found;
};
const openings = () => takeOff.estimate.jobs[0]?.takeOff.openings ?? [];

describe("an opening type that a firm added by rows", () => {
  test("is read without a fault", () => {
    expect(hand.findings.filter(({ level }) => level !== "note")).toEqual([]);
    expect(type().broken).toEqual([]);
  });

  test("is counted, by its own limits and charts", () => {
    const lines = takeOff.estimate.jobs[0]?.takeOff.lines ?? [];
    const count = (item: string): number =>
      lines.filter((line) => line.item === item).reduce((sum, { quantity }) => sum + quantity, 0);
    // D-1: lower leaf 38 in, 3 hinges a leaf, two alike. D-3: 35 in, 2 hinges a leaf.
    expect(["PANEL", "HINGE", "HB 1/4 x 1-3/4", "SHELF 36", "SHELF 48"].map(count)).toEqual([
      6, 16, 32, 2, 1,
    ]);
    expect(takeOff.findings.map(({ message }) => message).join("\n")).toContain(
      "A Dutch door of 5'-0\" is too wide",
    );
    expect(takeOff.complete).toBe(false);
  });

  test("can be tried, row by row", () => {
    const [opening] = openings();
    if (opening === undefined) throw new Error("No opening.");
    const trial = tryOpening(hand.book, type(), opening, hand.show);
    expect(trial.isCounted).toBe(true);
    expect(trial.sizes.map(({ name, text }) => [name, text])).toEqual([
      ["lower_height", `3'-2"`],
      ["leaf_hinges", "3"],
    ]);
    expect(trial.parts.every(({ deed }) => deed === "counts")).toBe(true);
  });

  test("has its boundaries, worked out from its own rows", () => {
    const [opening] = openings();
    if (opening === undefined) throw new Error("No opening.");
    const valuesOf = (field: string) => {
      const question = { ...hand, type: type(), opening, field, domain: allSizes };
      const { boundaries, isProven } = boundaryTable(question);
      return { isProven, values: boundaries.map(({ value, goesWith }) => [value, goesWith]) };
    };
    // The shelf is the next larger one; 4 ft is where it ends and where the limit begins.
    expect(valuesOf("width")).toEqual({
      isProven: true,
      values: [
        [36, "below"],
        [48, "below"],
      ],
    });
    const { values } = valuesOf("height");
    // 45 % of the height, to the inch, is above 3 ft from 36.5 in on.
    const hinges = values.filter(([value]) => Math.abs(Number(value) - 36.5 / 0.45) < 1e-6);
    expect(hinges).toHaveLength(1);
  });

  test("is looked at for what it leaves open", () => {
    const { findings } = finish(checkKitBook(hand));
    const about = findings
      .map(({ message }) => message)
      .filter((words) => /BARREL BOLT|SHELF 36|chart "unused"|shelf/i.test(words));
    expect(about.join("\n")).toMatch(/The items table has no BARREL BOLT/);
    expect(about.join("\n")).toMatch(/No row of the book looks into the chart "unused"/);
  });

  test("is drawn from its parts, or told in words, and packed", () => {
    const job = takeOff.estimate.jobs[0];
    if (job === undefined) throw new Error("No job.");
    const [first] = packJob(job.takeOff).openings;
    if (first === undefined) throw new Error("No bags.");
    const words = elevationWords(drawElevation(first), hand.show);
    expect(words).toContain("Dutch door D-1");
    expect(words).toMatch(/2 panels, 1 shelf, 6 hinges/);
    // What no layout has a place for is said as its bag.
    expect(words).toContain("the bag Bolt");
  });

  test("stands on every written sheet", () => {
    const drawings = [
      ...takeOffDrawings(takeOff, defaultSettings),
      ...packingDrawings(takeOff, defaultSettings),
    ];
    for (const drawing of drawings.filter(({ mark }) => mark?.kind !== "findings")) {
      const texts = drawing.rows.flatMap(({ cells }) =>
        cells.map((cell) => (cell === null ? "" : cellText(shownValue(cell)))),
      );
      expect([drawing.name, texts.some((text) => /SHELF 36|Shelf/.test(text))]).toEqual([
        drawing.name,
        true,
      ]);
    }
  });
});
