/** Random rows of a schedule for the starter book, some of which cannot be counted. */
import fc from "fast-check";
import type { CellValue } from "../../../src/core/base/cell";
import { scheduleRow } from "./notation";

/** An opening of the starter book, counted or not. */
export const anyOpening = fc.record({
  job: fc.constantFrom("North", "South"),
  type: fc.constantFrom(
    "sliding door",
    "bi-parting sliding door",
    "hinged door",
    "hinged door pair",
    "service window",
    "fixed transom",
    "no such type",
  ),
  width: fc.integer({ min: 20, max: 200 }),
  height: fc.constantFrom(84, 96, 108, 120),
  post: fc.constantFrom(84, 96, 108, 120, 144),
  quantity: fc.integer({ min: 1, max: 9 }),
  tailPost: fc.boolean(),
  tailRun: fc.option(fc.integer({ min: 12, max: 300 })),
  floor: fc.constantFrom("concrete", "wood", "sand"),
});
export type AnyOpening = typeof anyOpening extends fc.Arbitrary<infer Value> ? Value : never;

export const anyOpenings = fc.array(anyOpening, { maxLength: 12 });

/** Their rows; the marks are M-0, M-1 and so on. */
export const rowsOf = (openings: readonly AnyOpening[]): readonly (readonly CellValue[])[] =>
  openings.map((given, index) =>
    scheduleRow(`${given.width} x ${given.height} on ${given.post}`, {
      job: given.job,
      mark: `M-${index}`,
      type: given.type,
      quantity: given.quantity,
      tailPost: given.tailPost,
      tailRun: given.tailRun,
      floor: given.floor,
    }),
  );
