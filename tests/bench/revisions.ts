/**
 * How large a frozen count is and how fast two are compared: `npm run bench`. Nothing here is a test.
 *
 * Ten thousand openings in twelve jobs are frozen by the starter's kit book. The peer of the text is
 * plain JSON of the same count; that of the comparison is reading the issue back, which comes before
 * every comparison.
 */
import { settingsXml } from "../../src/workbook/settingsXml";
import { compareCounts } from "../../src/core/revisions/compareCounts";
import { countOf } from "../../src/core/revisions/countOf";
import type { Count } from "../../src/core/revisions/issue";
import { countText, longestIssue, readCount } from "../../src/core/revisions/issueText";
import { estimateRows, scheduleRow } from "../core/takeoff/notation";

const widths = ["3'", "4'", "5'-6\"", "6'-2 1/2\"", "7'", "8'", "9'-4\""];
const heights = ["7'", "7'-6\"", "8'"];

function counted(openings: number): Count {
  const rows = Array.from({ length: openings }, (_, index) =>
    scheduleRow(`${widths[index % 7] ?? ""} x ${heights[index % 3] ?? ""} on 10'`, {
      mark: `A-${index}`,
      job: `Job ${index % 12}`,
    }),
  );
  return countOf(estimateRows(rows), "USD");
}

/** The quickest of some runs, in milliseconds. */
function quickest(act: () => unknown): number {
  const times = Array.from({ length: 5 }, () => {
    const began = performance.now();
    act();
    return performance.now() - began;
  });
  return Math.min(...times);
}

/** Every third width is another, and half the marks of the last job. */
const revised = (count: Count): Count => ({
  ...count,
  openings: count.openings.map((each, index) => ({
    ...each,
    mark: index % 24 === 11 ? `${each.mark}R` : each.mark,
    fields: index % 3 === 0 ? { ...each.fields, width: 61 } : each.fields,
  })),
});

for (const openings of [100, 10_000]) {
  const count = counted(openings);
  const text = countText(count);
  const other = revised(count);
  const xml = settingsXml({ "issues.1": text });
  const writing = quickest(() => countText(count));
  const reading = quickest(() => readCount(text));
  const comparing = quickest(() => compareCounts(count, other));
  const { openings: found } = compareCounts(count, other);
  console.log(
    [
      `${openings} openings, ${count.lines.length} lines:`,
      `  text ${text.length} characters, ${((100 * text.length) / longestIssue).toFixed(1)} % of the longest, 1/${(JSON.stringify(count).length / text.length).toFixed(1)} of plain JSON; in the file ${xml.length}`,
      `  written in ${writing.toFixed(1)} ms, read in ${reading.toFixed(1)} ms, compared in ${comparing.toFixed(1)} ms (${(comparing / reading).toFixed(1)} x reading)`,
      `  ${found.changed.length} changed, ${found.guesses.length} guesses, not guessed: ${found.notGuessed.length} jobs`,
    ].join("\n"),
  );
}
