import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { compareCounts, isEmpty } from "../../../src/core/revisions/compareCounts";
import { countOf } from "../../../src/core/revisions/countOf";
import { countText, longestIssue, readCount } from "../../../src/core/revisions/issueText";
import { estimateRows, scheduleRow } from "../takeoff/notation";
import { anyCount, countWith, opening } from "./anyCounts";

describe("a count as text", () => {
  test("is read back as it was", () => {
    fc.assert(
      fc.property(anyCount, (count) => {
        expect(readCount(countText(count))).toEqual({ ok: true, value: count });
      }),
    );
  });

  test("of an estimate is read back as it was", () => {
    const rows = [
      scheduleRow("8' x 7' on 7'", { mark: "A-1", quantity: 2 }),
      scheduleRow("wide x 7'", { mark: "A-2" }),
      scheduleRow("3' x 7'", { mark: "B-1", type: "Hinged door", job: "Cage" }),
    ];
    const count = countOf(estimateRows(rows), "USD");
    expect(count.openings.map(({ mark, isCounted }) => [mark, isCounted])).toEqual([
      ["A-1", true],
      ["A-2", false],
      ["B-1", true],
    ]);
    expect(count.lines.length).toBeGreaterThan(20);
    const read = readCount(countText(count));
    expect(read.ok && isEmpty(compareCounts(count, read.value))).toBe(true);
  });

  test("of ten thousand openings is short enough to be kept", () => {
    const openings = Array.from({ length: 10_000 }, (_, index) =>
      opening(`A-${index}`, { width: 36 + (index % 40), height: 84, hand: "left" }),
    );
    expect(countText(countWith(openings)).length).toBeLessThan(longestIssue / 2);
  });

  test.each(["", "null", "[]", "{}", '{"version":2}', '{"version":1,"texts":[1]}', "{broken"])(
    "is none where it says %s",
    (text) => {
      expect(readCount(text)).toEqual({ ok: false, error: null });
    },
  );

  test("is refused or read, whatever of it was changed", () => {
    const text = countText(countWith([opening("A-1", { width: 36 })]));
    fc.assert(
      fc.property(fc.nat(text.length - 1), fc.constantFrom("", "9", '"', "-", "]"), (at, put) => {
        expect(typeof readCount(text.slice(0, at) + put + text.slice(at + 1)).ok).toBe("boolean");
      }),
    );
  });
});
