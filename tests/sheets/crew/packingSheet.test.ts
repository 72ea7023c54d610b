import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { cellText } from "../../../src/core/base/cell";
import { finish } from "../../../src/core/base/steps";
import type { Estimate } from "../../../src/core/estimate/estimate";
import type { JobEstimate } from "../../../src/core/estimate/jobEstimate";
import { drawPacking } from "../../../src/sheets/crew/packingSheet";
import { checkBox, packingWidths } from "../../../src/sheets/crew/packingColumns";
import { pageBreaks, pageHeight } from "../../../src/sheets/crew/printedPages";
import type { Drawing } from "../../../src/workbook/drawing";
import { anyOpenings, rowsOf } from "../../core/takeoff/anyOpenings";
import { estimateRows, scheduleRow } from "../../core/takeoff/notation";
import { corrected, firstJob, lengths, textsOf, valuesOf } from "../packedJobs";

const drawn = ({ items }: Pick<Estimate, "items">, jobs: readonly JobEstimate[]): Drawing =>
  finish(drawPacking({ jobs, items, lengths }));

const packing = (estimate: Estimate): Drawing => drawn(estimate, estimate.jobs);

/** The pieces of every row with a box to tick, by item and size. */
function ticked(drawing: Drawing): Readonly<Record<string, number>> {
  const sums: Record<string, number> = {};
  for (const [box, pieces, item, size] of valuesOf(drawing)) {
    if (box !== checkBox || typeof pieces !== "number") continue;
    const key = `${cellText(item ?? null)} ${cellText(size ?? null)}`;
    sums[key] = (sums[key] ?? 0) + pieces;
  }
  return sums;
}

const titlesOf = (drawing: Drawing): readonly string[] =>
  drawing.rows.flatMap(({ cells: [cell] }) =>
    cell?.kind === "text" && cell.look === "title" ? [cell.text] : [],
  );

const three = (): Estimate =>
  estimateRows([
    scheduleRow("8' x 7' on 8'", { mark: "A-1", quantity: 2, tailRun: "5'", hand: "left" }),
    scheduleRow("4' x 3' on 8'", { mark: "A-2", type: "service window" }),
    scheduleRow("6' x 9' on 8'", { mark: "A-3" }),
  ]);

describe("a packing list", () => {
  test("has a part for each of those alike, then what is for the whole job", () => {
    expect(titlesOf(packing(three()))).toEqual([
      "Packing list: Job",
      "A-1, copy 1 of 2: Sliding door",
      "A-1, copy 2 of 2: Sliding door",
      "A-2: Service window",
      "Job: for the whole job",
    ]);
  });

  test("says sizes, the order of work, the caution, and what could not be packed", () => {
    const texts = textsOf(packing(three()));
    expect(texts).toContain(
      `Job · Width 8'-0" · Height 7'-0" · Post height 8'-0" · Tail post yes · Tail run 5'-0" · Floor concrete · Hand left`,
    );
    expect(texts.filter((text) => text.startsWith("Order of work: loading the leaf"))).toHaveLength(
      2,
    );
    expect(texts.some((text) => text.startsWith("A hanging door can fall"))).toBe(true);
    expect(texts).toContain("NOT COMPLETE. Not counted here: A-3. The findings say why.");
  });

  test("lists bags in the order of work, each with its number and a box", () => {
    const bags = valuesOf(packing(three()))
      .filter(([box, words]) => box === checkBox && typeof words === "string")
      .map(([, words]) => words);
    expect(bags.slice(0, 3)).toEqual([
      "A-1, copy 1 of 2 · bag 1 of 7: Overhead",
      "A-1, copy 1 of 2 · bag 2 of 7: Track",
      "A-1, copy 1 of 2 · bag 3 of 7: Leaf",
    ]);
    expect(bags[4]).toBe("A-1, copy 1 of 2 · bag 5 of 7: Latch side");
  });

  test("adds up to what is ordered, spares and corrections included", () => {
    const estimate = three();
    const job = corrected(
      estimate,
      firstJob(estimate),
      { "HN 1/4": "-4", TROLLEY: "+1" },
      { item: "SIGN", quantity: "2" },
    );
    const pieces = Object.values(ticked(drawn(estimate, [job]))).reduce(
      (sum, each) => sum + each,
      0,
    );
    const ordered = job.material.lines.reduce((sum, { toOrder }) => sum + toOrder, 0);
    expect(pieces).toBe(ordered);
    const rows = valuesOf(drawn(estimate, [job]));
    expect(rows).toContainEqual([checkBox, -4, "HN 1/4", null, "-4 by AB: two were bent"]);
    expect(rows).toContainEqual([checkBox, 2, "SIGN", null, "2 added by hand: asked for on site"]);
    expect(rows.filter(([, , item]) => item === "TROLLEY").map((row) => row[4])).toEqual([
      "Trolley, four wheels, with 1/2-13 hanger bolt · corrected: see the end",
      "Trolley, four wheels, with 1/2-13 hanger bolt · corrected: see the end",
      "+1 by AB: two were bent",
    ]);
  });

  test("adds up to what is ordered, whatever the schedule", () => {
    fc.assert(
      fc.property(anyOpenings, (given) => {
        const estimate = estimateRows(rowsOf(given));
        const pieces = Object.values(ticked(packing(estimate))).reduce((a, b) => a + b, 0);
        const ordered = estimate.jobs
          .flatMap(({ material }) => material.lines)
          .reduce((sum, { toOrder }) => sum + toOrder, 0);
        expect(pieces).toBe(ordered);
      }),
      { numRuns: 10 },
    );
  });

  test("has the picture of each opening over a row that is high enough, with a text for it", () => {
    const { pictures = [], rows } = packing(three());
    expect(pictures).toHaveLength(3);
    for (const { row, column, height, title, description } of pictures) {
      expect(column).toBe(0);
      expect(rows[row]?.cells).toEqual([]);
      expect(rows[row]?.height).toBeGreaterThanOrEqual(height);
      expect(title).toMatch(/^Elevation of A-\d: /);
      expect(description).toContain("seen from the side where the crew stands");
    }
    expect(pictures[0]?.description).toContain("Drawn as a left hand");
  });

  test("repeats its headings on each page, and starts a page with each opening but the first", () => {
    const drawing = packing(three());
    const { rows, print } = drawing;
    const isTitle = (row: number): boolean => rows[row]?.cells[0]?.look === "title";
    const titles = rows.flatMap((_, row) => (isTitle(row) ? [row] : []));
    const heading = print.titleRows?.first ?? -1;
    expect(rows[heading]?.cells.map((cell) => cell?.look)).toContain("heading");
    expect(print.breaksBefore).toEqual(expect.arrayContaining(titles.slice(2)));
    expect(print.breaksBefore).not.toContain(titles[1]);
    // What is no title is a bag: no page starts in the middle of one.
    for (const row of print.breaksBefore) {
      expect(["title", "group"]).toContain(rows[row]?.cells[0]?.look);
    }
  });

  test("never has more on a page than a page holds", () => {
    const { rows, print } = packing(three());
    const edges = [0, ...print.breaksBefore, rows.length];
    for (const [index, start] of edges.slice(0, -1).entries()) {
      const page = rows.slice(start, edges[index + 1]);
      const points = page.reduce((sum, { height = 15 }) => sum + height, index === 0 ? 0 : 18);
      expect(points).toBeLessThanOrEqual(pageHeight(packingWidths));
    }
  });

  test("of many alike ends with how many are missing, and makes no more pictures than help", () => {
    const estimate = estimateRows([
      scheduleRow("4' x 3' on 8'", { type: "service window", quantity: 5000 }),
    ]);
    const { rows, pictures } = packing(estimate);
    expect(rows.length).toBeLessThan(51_000);
    expect(pictures).toHaveLength(400);
    expect(textsOf({ rows: rows.slice(-1) })[0]).toMatch(/^NOT COMPLETE. \d+ more openings/);
  });

  test("a mark that looks like a formula stays text", () => {
    const estimate = estimateRows([scheduleRow("4' x 7' on 8'", { mark: "=1+1" })]);
    const kinds = packing(estimate).rows.flatMap(({ cells }) => cells.map((cell) => cell?.kind));
    expect(kinds).not.toContain("formula");
    expect(titlesOf(packing(estimate))).toContain("=1+1: Sliding door");
  });
});

describe("page breaks", () => {
  const part = (points: number, startsPage = false) => ({ rows: 2, points, startsPage });
  const room = { first: 4, used: 50, repeated: 10, page: 100 };

  test.each([
    ["all that fits stays on the first page", [part(20), part(30)], []],
    ["what does not fit starts a page", [part(40), part(20), part(75)], [6, 8]],
    ["what starts a page does so, save the first", [part(5, true), part(5, true)], [6]],
    ["what is higher than a page breaks where it must", [part(250), part(10), part(65)], [8]],
  ])("%s", (_, parts, breaks) => {
    expect(pageBreaks(parts, room)).toEqual(breaks);
  });
});
