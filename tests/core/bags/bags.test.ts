import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { bagCopies, packJob, type JobBags } from "../../../src/core/bags/bags";
import { isBigPart } from "../../../src/core/bags/bigParts";
import { countsOfOpening, openingCounts } from "../../../src/core/bags/openingCounts";
import { openingNotes, openingWords } from "../../../src/core/bags/openingNotes";
import { inches } from "../../../src/core/base/units";
import type { Estimate } from "../../../src/core/estimate/estimate";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";
import { pieceKey } from "../../../src/core/takeoff/partColumn";
import { anyOpenings, rowsOf } from "../takeoff/anyOpenings";
import { estimateOpening, estimateRows, scheduleRow, showLength } from "../takeoff/notation";
import { packedOpening, starterCases } from "./starterOpenings";

const packed = ({ jobs }: Estimate): readonly JobBags[] =>
  jobs.map(({ takeOff }) => packJob(takeOff));

/** Bags as `10 Latch side`, in order. */
const bagsInOrder = (estimate: Estimate): readonly string[] =>
  (packed(estimate)[0]?.openings[0]?.bags ?? []).map(({ step, name }) => `${step} ${name}`);

/** What all copies of all bags hold together. */
function inBags(bags: JobBags): Readonly<Record<string, number>> {
  const sums: Record<string, number> = {};
  for (const { bag } of bagCopies(bags)) {
    for (const { item, size, pieces } of bag.contents) {
      const key = pieceKey(item, size);
      sums[key] = (sums[key] ?? 0) + pieces;
    }
  }
  return sums;
}

const onTheList = ({ takeOff }: Estimate["jobs"][number]): Readonly<Record<string, number>> =>
  Object.fromEntries(
    takeOff.lines.map(({ item, size, quantity }) => [pieceKey(item, size), quantity]),
  );

describe("the bags of a job", () => {
  test("add up to the job's list, whatever the schedule", () => {
    fc.assert(
      fc.property(anyOpenings, (given) => {
        for (const job of estimateRows(rowsOf(given)).jobs) {
          expect(inBags(packJob(job.takeOff))).toEqual(onTheList(job));
        }
      }),
      { numRuns: 40 },
    );
  });

  test.each(starterCases)("add up to the list for a %s, %s", (type, sizes) => {
    const [job] = estimateRows([scheduleRow(sizes, { type, quantity: 3 })]).jobs;
    if (job === undefined) throw new Error("No job");
    expect(Object.keys(onTheList(job)).length).toBeGreaterThan(0);
    expect(inBags(packJob(job.takeOff))).toEqual(onTheList(job));
  });

  test("are numbered in the order of work, with a copy for each of those alike", () => {
    const result = estimateOpening("4' x 7' on 8'", { quantity: 2, tailRun: "20'" });
    const labels = [...bagCopies(packed(result)[0] ?? { openings: [] })].map(
      ({ copy, of, bag }) => `copy ${copy} of ${of}: bag ${bag.number} of ${bag.of}, ${bag.name}`,
    );
    expect(labels).toHaveLength(14);
    expect(labels[0]).toBe("copy 1 of 2: bag 1 of 7, Latch side");
    expect(labels[13]).toBe("copy 2 of 2: bag 7 of 7, Floor guide");
  });

  test("come in the order that the opening needs: the jamb late where the leaf can't be loaded", () => {
    expect(bagsInOrder(estimateOpening("4' x 7' on 8'", { tailRun: "20'" }))).toEqual([
      "10 Latch side",
      "20 Overhead",
      "30 Track",
      "40 Leaf",
      "50 Trolleys",
      "60 Track stop",
      "70 Floor guide",
    ]);
    expect(bagsInOrder(estimateOpening("4' x 7' on 8'", { tailRun: "5'" }))).toEqual([
      "20 Overhead",
      "30 Track",
      "40 Leaf",
      "50 Trolleys",
      "55 Latch side",
      "60 Track stop",
      "70 Floor guide",
    ]);
  });

  test("hold one line for the same item and size, in the order of its first step", () => {
    const { bags } = packed(estimateOpening("8' x 7' on 8'"))[0]?.openings[0] ?? { bags: [] };
    const leaf = bags.find(({ name }) => name === "Leaf");
    expect(
      leaf?.contents.map(({ item, size, pieces }) => `${pieces} ${pieceKey(item, size)}`),
    ).toEqual([
      "2 panel (48 x 84)",
      "6 clamp panel",
      // Six at the clamps, two at the splice, four at the angle.
      "12 cb 1/4 x 1-1/4",
      "6 fn 1/4",
      "1 splice (96)",
      "2 fw 1/4",
      // Two at the splice, four at the angle, three at the stile.
      "9 hn 1/4",
      "1 angle (96)",
      "1 stile (84)",
      "3 hb 1/4 x 1-3/4",
      "4 spacer",
    ]);
    expect(leaf?.pieces).toBe(47);
  });

  test("leave out an opening that is not counted, and name one that needs nothing", () => {
    const nothing = {
      ...starterKitBook,
      parts: starterKitBook.parts.map((part) => ({
        ...part,
        when: { value: "width > 4'", place: null },
      })),
    };
    const rows = [
      scheduleRow("4' x 7' on 8'", { mark: "A-1" }),
      scheduleRow("5' x 7' on 8'", { mark: "A-2" }),
      scheduleRow("5' x 9' on 8'", { mark: "A-3" }),
    ];
    const [bags] = packed(estimateRows(rows, nothing));
    expect(bags?.openings.map(({ opening }) => opening.mark)).toEqual(["A-2"]);
    expect(bags?.empty.map(({ mark }) => mark)).toEqual(["A-1"]);
  });

  test("are one bag where the book writes its name in two ways, and last where it has no step", () => {
    const book = {
      ...starterKitBook,
      parts: starterKitBook.parts.map((part, index) => {
        if (part.bag.value === "Overhead") {
          return {
            ...part,
            bag: { value: index % 2 === 0 ? "Over head" : "OVER  HEAD ", place: null },
          };
        }
        return part.bag.value === "Track" ? { ...part, step: { value: null, place: null } } : part;
      }),
    };
    const result = estimateRows([scheduleRow("4' x 7' on 8'")], book);
    const { bags } = packed(result)[0]?.openings[0] ?? { bags: [] };
    expect(bags.map(({ name }) => name.toLowerCase())).toEqual([
      "latch side",
      "over head",
      "leaf",
      "trolleys",
      "track stop",
      "floor guide",
      "track",
    ]);
  });
});

describe("what the crew reads about an opening", () => {
  test("the order of work comes before all other notes", () => {
    const { take, row } = packedOpening("Sliding door", "7' x 7' on 8'", {
      tailRun: "5'",
      transom: "yes",
    });
    const notes = openingNotes(take, row, showLength).map(({ text }) => text.slice(0, 20));
    expect(notes).toEqual([
      "Order of work: put t",
      "Order of work: loadi",
      "Between 6 ft and 8 f",
      "The tail run is 5'-0",
    ]);
  });

  test("the schedule's sizes are written in the user's style, without blanks", () => {
    const { take, row } = packedOpening("Sliding door", "7' x 7' on 8'");
    expect(openingWords(take, row, showLength)).toEqual([
      `Width 7'-0"`,
      `Height 7'-0"`,
      `Post height 8'-0"`,
      "Tail post yes",
      "Floor concrete",
    ]);
  });

  test.each([
    [[], false],
    [[35.9], false],
    [[36], true],
    [[12, 84], true],
  ])("a piece of %j goes beside its bag: %s", (size, isBig) => {
    expect(isBigPart(size.map(inches))).toBe(isBig);
  });
});

test("the counts of one opening are those that it has among all", () => {
  fc.assert(
    fc.property(anyOpenings, (given) => {
      for (const { takeOff } of estimateRows(rowsOf(given)).jobs) {
        const all = new Map(openingCounts(takeOff).map((each) => [each.opening, each]));
        for (const opening of takeOff.openings) {
          expect(countsOfOpening(takeOff, opening)).toEqual(all.get(opening) ?? null);
        }
      }
    }),
    { numRuns: 20 },
  );
});
