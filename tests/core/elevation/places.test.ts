import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { cellText } from "../../../src/core/base/cell";
import { packJob, type PackedOpening } from "../../../src/core/bags/bags";
import { drawElevation } from "../../../src/core/elevation/drawElevation";
import type { Elevation } from "../../../src/core/elevation/elevation";
import { placesOf } from "../../../src/core/elevation/placesOf";
import { kindOfItem, type PartKind } from "../../../src/core/elevation/partKinds";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";
import { pieceKey } from "../../../src/core/takeoff/partColumn";
import { packedOpening, starterCases } from "../bags/starterOpenings";
import { anyOpenings, rowsOf } from "../takeoff/anyOpenings";
import { estimateRows, scheduleRow, type OpeningWords } from "../takeoff/notation";

/** Pieces by item and size, over all places. */
function placed({ places }: Elevation): Readonly<Record<string, number>> {
  const sums: Record<string, number> = {};
  for (const { item, size, pieces } of places.flatMap(({ contents }) => contents)) {
    const key = pieceKey(item, size);
    sums[key] = (sums[key] ?? 0) + pieces;
  }
  return sums;
}

function counted({ pieces }: PackedOpening): Readonly<Record<string, number>> {
  const sums: Record<string, number> = {};
  for (const { item, size, count } of pieces) {
    const key = pieceKey(item, size);
    sums[key] = (sums[key] ?? 0) + count.each;
  }
  return sums;
}

/** How many places there are for each kind of part, and how many pieces are counted of it. */
function byKind(opening: PackedOpening, elevation: Elevation) {
  const drawn: Partial<Record<PartKind, number>> = {};
  for (const { kind } of elevation.places) {
    if (kind !== "trackStop" && kind !== "other") drawn[kind] = (drawn[kind] ?? 0) + 1;
  }
  const needed: Partial<Record<PartKind, number>> = {};
  for (const { item, count } of opening.pieces) {
    const kind = kindOfItem(item);
    if (kind !== null) needed[kind] = (needed[kind] ?? 0) + count.each;
  }
  return { drawn, needed };
}

function expectAgreement(opening: PackedOpening): void {
  const elevation = drawElevation(opening);
  expect(placed(elevation)).toEqual(counted(opening));
  const { drawn, needed } = byKind(opening, elevation);
  expect(drawn).toEqual(needed);
  const ids = new Set(elevation.places.map(({ id }) => id));
  expect(ids.size).toBe(elevation.places.length);
  const drawnIds = new Set(
    elevation.shapes.flatMap(({ place }) => (place === null ? [] : [place])),
  );
  expect(drawnIds).toEqual(ids);
}

describe("places drawn are pieces counted", () => {
  const hands: readonly OpeningWords[] = [
    { hand: "right", tailRun: "20'", floor: "concrete" },
    { hand: "left", transom: "yes", floor: "wood", tailPost: "no" },
    { tailRun: "3'", floor: "sand" },
  ];

  test.each(starterCases)("for a %s, %s", (type, sizes) => {
    for (const words of hands) expectAgreement(packedOpening(type, sizes, words));
  });

  test("for any opening of the starter book", () => {
    fc.assert(
      fc.property(anyOpenings, (given) => {
        for (const { takeOff } of estimateRows(rowsOf(given)).jobs) {
          packJob(takeOff).openings.forEach(expectAgreement);
        }
      }),
      { numRuns: 30 },
    );
  });

  test("of every part of a sliding door, by name", () => {
    const opening = packedOpening("Sliding door", "9' x 8' on 9'");
    const { drawn } = byKind(opening, drawElevation(opening));
    expect(drawn).toEqual({
      jamb: 1,
      strike: 1,
      trackPlate: 3,
      trackClamp: 3,
      track: 2,
      panel: 2,
      panelClamp: 6,
      splice: 1,
      angle: 1,
      stile: 1,
      spacer: 4,
      trolley: 2,
      guide: 1,
      bracket: 2,
      anchor: 2,
    });
    expect(drawElevation(opening).places.filter(({ kind }) => kind === "trackStop")).toHaveLength(
      1,
    );
  });

  test("each piece with its own share of the fasteners", () => {
    const { places } = drawElevation(packedOpening("Sliding door", "9' x 8' on 9'"));
    const contentsOf = (name: string) =>
      places
        .find((place) => place.name === name)
        ?.contents.map(({ item, pieces }) => `${pieces} ${item}`);
    expect(contentsOf("track plate 1 of 3")).toEqual([
      "1 PLATE 9-8",
      "2 HB 1/4 x 3/4",
      "2 FW 1/4",
      "2 LW 1/4",
      "2 HN 1/4",
    ]);
    expect(contentsOf("jamb")).toEqual(["1 JAMB", "2 CB 1/4 x 1-1/4", "2 HN 1/4"]);
    expect(contentsOf("track stop")).toEqual(["1 CB 1/2 x 1-1/4", "1 FW 1/2", "1 HN 1/2"]);
    expect(contentsOf("bracket 2 of 2")).toEqual(["1 BRACKET", "1 CB 5/16 x 1", "1 FN 5/16"]);
  });

  test("a line of the list finds its places, and only those", () => {
    const elevation = drawElevation(packedOpening("Sliding door", "9' x 8' on 9'"));
    const names = (item: string, size: readonly number[] = []) =>
      placesOf(elevation, item, size as never).map(({ name }) => name);
    expect(names("trolley")).toEqual(["trolley 1 of 2", "trolley 2 of 2"]);
    expect(names("HN 1/2")).toEqual(["trolley 1 of 2", "trolley 2 of 2", "track stop"]);
    expect(names("PANEL", [54, 96])).toEqual(["panel 1 of 2", "panel 2 of 2"]);
    expect(names("PANEL", [48, 96])).toEqual([]);
  });
});

describe("a firm's own book", () => {
  /** The starter book with every part's item changed. */
  const bookWith = (change: (item: string) => string) => ({
    ...starterKitBook,
    parts: starterKitBook.parts.map((part) => ({
      ...part,
      item: { value: change(cellText(part.item.value)), place: null },
    })),
  });
  const openingOf = (change: (item: string) => string): PackedOpening => {
    const { jobs, findings } = estimateRows(
      [scheduleRow("9' x 8' on 9'", { tailRun: "20'" })],
      bookWith(change),
    );
    const opening = jobs[0] === undefined ? undefined : packJob(jobs[0].takeOff).openings[0];
    if (opening === undefined) throw new Error(findings.map(({ message }) => message).join());
    return opening;
  };

  test("whose items are all unknown has a place for each bag, which adds up", () => {
    const opening = openingOf((item) => (item.startsWith("=") ? item : `ZZ ${item}`));
    const elevation = drawElevation(opening);
    expect(placed(elevation)).toEqual(counted(opening));
    expect(elevation.places.map(({ name }) => name)).toEqual(
      expect.arrayContaining(["Latch side", "Leaf", "Track"]),
    );
  });

  test("whose items are renamed at random always adds up", () => {
    const names = fc.constantFrom(
      "PANEL",
      "TRACK",
      "HINGE",
      "FA 1/4",
      "ODD",
      "STRIKE",
      "CLAMP PANEL",
    );
    fc.assert(
      fc.property(fc.array(names, { minLength: 12, maxLength: 12 }), (picked) => {
        let next = 0;
        const opening = openingOf((item) =>
          item.startsWith("=") ? item : (picked[next++ % picked.length] ?? item),
        );
        expectAgreement(opening);
      }),
      { numRuns: 40 },
    );
  });

  test("with thousands of one part draws one place that lists them all", () => {
    const book = {
      ...starterKitBook,
      parts: starterKitBook.parts.map((part) =>
        part.item.value === "TROLLEY" ? { ...part, quantity: { value: 5000, place: null } } : part,
      ),
    };
    const { jobs } = estimateRows([scheduleRow("9' x 8' on 9'")], book);
    const opening = jobs[0] === undefined ? undefined : packJob(jobs[0].takeOff).openings[0];
    if (opening === undefined) throw new Error("No opening");
    const elevation = drawElevation(opening);
    expect(placed(elevation)).toEqual(counted(opening));
    expect(placesOf(elevation, "TROLLEY", []).map(({ name }) => name)).toEqual(["5000 trolleys"]);
  });

  test.each([
    ["PANEL", "panel"],
    ["plate 8-7", "trackPlate"],
    ["FA 1/4", "anchor"],
    ["LS 1/4 x 1-1/2", "anchor"],
    ["Bracket Shelf", "shelfBracket"],
    ["PANEL CLIP", null],
    ["CB 1/4 x 1/2", null],
    ["", null],
    ["constructor", null],
  ])("item %s is of the kind %s", (item, kind) => {
    expect(kindOfItem(item)).toBe(kind);
  });
});
