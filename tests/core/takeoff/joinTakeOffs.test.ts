import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { compileKitBook } from "../../../src/core/kitbook/compileKitBook";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";
import { checkOpenings } from "../../../src/core/openings/checkOpenings";
import { quantityOf } from "../../../src/core/takeoff/explain";
import { joinTakeOffs } from "../../../src/core/takeoff/joinTakeOffs";
import { pieceKey } from "../../../src/core/takeoff/partColumn";
import { countsIn } from "../../../src/core/takeoff/take";
import { takeOff, type TakeOff } from "../../../src/core/takeoff/takeOff";
import { readSchedule } from "../../../src/tables/scheduleTable";
import { scheduleHeadings, scheduleRow, showLength } from "./notation";

const { book } = compileKitBook(starterKitBook, []);
const types = book.types.map(({ name }) => name);

const row = fc
  .record({
    job: fc.constantFrom("North", " north", "South"),
    type: fc.constantFrom("sliding door", "hinged door", "fixed transom"),
    width: fc.integer({ min: 20, max: 220 }),
    quantity: fc.integer({ min: 1, max: 9 }),
  })
  .map(({ width, ...words }) => scheduleRow(`${width} x 84 on 96`, words));

function openingsOf(rows: readonly ReturnType<typeof scheduleRow>[]) {
  const block = { sheet: "Schedule", row: 0, column: 0, rows: [scheduleHeadings, ...rows] };
  const reading = readSchedule(block);
  if (!reading.ok) throw new Error(reading.error.message);
  return checkOpenings(reading.value.schedule, types, "in").openings;
}

const quantities = ({ jobs }: TakeOff) =>
  jobs.map(({ job, openings, stopped, lines }) => ({
    job,
    marks: openings.map(({ place }) => place.row),
    stopped: new Set(stopped.map(({ place }) => place.row)),
    lines: new Map(lines.map((line) => [pieceKey(line.item, line.size), line.quantity])),
  }));

describe("take-offs of parts of a schedule", () => {
  test("together count what a take-off of all of it counts", () => {
    fc.assert(
      fc.property(fc.array(row, { maxLength: 12 }), fc.nat(12), (rows, cut) => {
        const openings = openingsOf(rows);
        const parts = [openings.slice(0, cut), openings.slice(cut)];
        const joined = joinTakeOffs(parts.map((part) => takeOff(book, part, showLength)));
        const whole = takeOff(book, openings, showLength);
        expect(quantities(joined)).toEqual(quantities(whole));
        expect(joined.findings).toHaveLength(whole.findings.length);
      }),
      { numRuns: 60 },
    );
  });

  test("keep the reasons of each line, which add up to its quantity", () => {
    const part = takeOff(book, openingsOf([scheduleRow("48 x 84 on 96")]), showLength);
    const other = takeOff(book, openingsOf([scheduleRow("50 x 84 on 96")]), showLength);
    for (const line of joinTakeOffs([part, other]).jobs[0]?.lines ?? []) {
      const counted = [...countsIn(line.counts)].map(quantityOf);
      expect(counted.reduce((sum, count) => sum + count, 0)).toBe(line.quantity);
    }
  });

  test("of no parts at all count nothing", () => {
    expect(joinTakeOffs([])).toEqual({ jobs: [], takes: [], findings: [] });
  });
});
