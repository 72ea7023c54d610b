import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { bagCopies, packJob } from "../../../src/core/bags/bags";
import { cellText } from "../../../src/core/base/cell";
import type { Estimate } from "../../../src/core/estimate/estimate";
import {
  isLabelGrid,
  labelGridFault,
  labelSize,
  plainLabelGrid,
  type LabelGrid,
} from "../../../src/sheets/crew/labelGrid";
import { labelSheet } from "../../../src/sheets/crew/labelSheet";
import { paperSizes } from "../../../src/sheets/crew/printedPages";
import { columnPoints } from "../../../src/workbook/columnSize";
import { brokenLines } from "../../../src/sheets/wrapped";
import { papers, shownValue, type Drawing } from "../../../src/workbook/drawing";
import { estimateRows, scheduleRow } from "../../core/takeoff/notation";
import { firstJob, lengths, textsOf } from "../packedJobs";

const labels = (estimate: Estimate, grid: LabelGrid = plainLabelGrid): Drawing =>
  labelSheet({ jobs: estimate.jobs, lengths, grid });

const door = (quantity = 1, mark = "A-1"): Estimate =>
  estimateRows([scheduleRow("8' x 7' on 8'", { mark, quantity, tailRun: "20'" })]);

/** Title, words and contents of each label, in the order of printing. */
function labelsOf({ rows }: Drawing): readonly (readonly [string, string, readonly string[]])[] {
  const textAt = (row: number, column: number): string => {
    const cell = rows[row]?.cells[column];
    return cellText(cell === undefined || cell === null ? null : shownValue(cell));
  };
  return rows.flatMap(({ cells }, row) =>
    cells.flatMap((cell, column) =>
      cell?.look === "labelTitle"
        ? [
            [
              textAt(row, column),
              textAt(row + 1, column),
              textAt(row + 2, column).split("\n"),
            ] as const,
          ]
        : [],
    ),
  );
}

const grids = fc
  .record({
    paper: fc.constantFrom(...papers),
    columns: fc.integer({ min: 1, max: 5 }),
    rows: fc.integer({ min: 1, max: 12 }),
    margins: fc.record({
      top: fc.double({ min: 0, max: 1, noNaN: true }),
      bottom: fc.double({ min: 0, max: 1, noNaN: true }),
      left: fc.double({ min: 0, max: 1, noNaN: true }),
      right: fc.double({ min: 0, max: 1, noNaN: true }),
    }),
    gapAcross: fc.double({ min: 0, max: 0.25, noNaN: true }),
    gapDown: fc.double({ min: 0, max: 0.25, noNaN: true }),
  })
  .filter((grid) => labelGridFault(grid) === null);

describe("labels", () => {
  test("are one for each bag of each copy, with job, mark, bag and what is in it", () => {
    const found = labelsOf(labels(door(2)));
    expect(found).toHaveLength(14);
    expect(found[0]).toEqual([
      "A-1 · bag 1 of 7",
      "Latch side · copy 1 of 2 · Job",
      [
        `1 × JAMB, 7'-0"   2 × CB 1/4 x 1-1/4   4 × HN 1/4`,
        "1 × STRIKE   2 × CB 1/4 x 1/2   2 × LW 1/4",
      ],
    ]);
    expect(found.at(-1)?.slice(0, 2)).toEqual([
      "A-1 · bag 7 of 7",
      "Floor guide · copy 2 of 2 · Job",
    ]);
  });

  test("hold all that is in the bags on any grid: what does not fit goes on a further label", () => {
    const estimate = door(1);
    const bags = [...bagCopies(packJob(firstJob(estimate).takeOff))];
    const wanted = bags.flatMap(({ bag }) =>
      bag.contents.map(({ item, pieces }) => `${pieces} × ${item}`),
    );
    fc.assert(
      fc.property(grids, (grid) => {
        const all = labelsOf(labels(estimate, grid))
          .flatMap(([, , contents]) => contents)
          .join(" ")
          .replace(/\s+/g, " ");
        for (const entry of wanted) expect(all).toContain(entry);
      }),
      { numRuns: 40 },
    );
  });

  test.each(["A-1", "A mark that is long: level 2, north side, behind the compressor room"])(
    "of %s have no more lines than a label has room for, on any grid",
    (mark) => {
      const bold = { labelTitle: 11, label: 8 } as const;
      fc.assert(
        fc.property(grids, (grid) => {
          const { rows } = labels(door(2, mark), grid);
          const { width } = labelSize(grid);
          for (const { cells, height = 0 } of rows) {
            for (const cell of cells) {
              if (cell?.kind !== "text" || (cell.look !== "label" && cell.look !== "labelTitle")) {
                continue;
              }
              const isTitle = cell.look === "labelTitle";
              const size = bold[cell.look];
              const lines = cell.text
                .split("\n")
                .flatMap((line) => brokenLines(line, width * 72 - 12, size, isTitle));
              expect(lines.length * size * 1.32).toBeLessThanOrEqual(height + 0.01);
            }
          }
        }),
        { numRuns: 40 },
      );
    },
  );

  test("say which of several they are where a bag has more than one", () => {
    const small = { ...plainLabelGrid, columns: 4, rows: 12 };
    const leaf = labelsOf(labels(door(1), small)).filter(([, words]) => words.startsWith("Leaf"));
    expect(leaf.length).toBeGreaterThan(1);
    expect(leaf[0]?.[1]).toBe(`Leaf · Job · label 1 of ${leaf.length}`);
  });

  test("lie where the grid says: columns, rows, margins and gaps add up to the paper", () => {
    fc.assert(
      fc.property(grids, (grid) => {
        const { columnWidths, rows, print } = labels(door(3), grid);
        const paper = paperSizes[grid.paper];
        const size = labelSize(grid);
        const wide = columnWidths.reduce((sum, width) => sum + columnPoints(width), 0);
        const { left = 0, top = 0, right, bottom = 0 } = print.margins ?? {};
        // Each label has 6 points of padding left and right, and 4 above and below.
        expect(left * 72 + wide + 6 + grid.margins.right * 72).toBeCloseTo(paper.width * 72, 6);
        expect(right).toBe(0);
        const [second] = columnWidths.slice(1);
        if (second !== undefined) {
          const pitch = columnPoints(columnWidths[0] ?? 0) + columnPoints(second);
          expect(pitch).toBeCloseTo((size.width + grid.gapAcross) * 72, 6);
        }
        const pageEnd = print.breaksBefore[0] ?? rows.length;
        const high = rows.slice(0, pageEnd).reduce((sum, { height = 0 }) => sum + height, 0);
        expect(top * 72 + high).toBeLessThanOrEqual((paper.height - bottom) * 72 + 1e-6);
        if (print.breaksBefore.length > 0) {
          expect(top * 72 + high + 4 + grid.margins.bottom * 72).toBeCloseTo(paper.height * 72, 6);
        }
      }),
      { numRuns: 40 },
    );
  });

  test("start a page after a page's worth", () => {
    const { rows, print } = labels(door(3), { ...plainLabelGrid, columns: 3, rows: 4 });
    for (const row of print.breaksBefore) expect(rows[row]?.cells[0]?.look).toBe("labelTitle");
    const first = rows
      .slice(0, print.breaksBefore[0])
      .filter(({ cells }) => cells[0]?.look === "labelTitle");
    expect(first).toHaveLength(4);
    expect(print).toMatchObject({ header: "", footer: "", paper: "letter" });
  });

  test("end with one that says what could not be packed", () => {
    const estimate = estimateRows([scheduleRow("6' x 9' on 8'", { mark: "A-3" })]);
    expect(textsOf(labels(estimate)).join(" ")).toContain("NOT COMPLETE. Not counted here: A-3.");
  });

  test("of a job with far too many are cut, and say so", () => {
    const estimate = estimateRows([scheduleRow("4' x 7' on 8'", { quantity: 4000 })]);
    const found = labelsOf(labels(estimate));
    expect(found.length).toBeLessThan(20_020);
    expect(found.at(-1)?.[0]).toBe("NOT COMPLETE");
  });
});

describe("a grid of labels", () => {
  test("has labels of the size that is left", () => {
    expect(labelSize({ ...plainLabelGrid, columns: 3, rows: 10 })).toEqual({
      width: 2.5,
      height: 1,
    });
    const gaps = { ...plainLabelGrid, columns: 3, rows: 10, gapAcross: 0.25, gapDown: 0.1 };
    expect(labelSize(gaps).width).toBeCloseTo(7 / 3, 9);
    expect(labelSize(gaps).height).toBeCloseTo(0.91, 9);
  });

  test.each<readonly [Partial<LabelGrid>, RegExp | null]>([
    [{ columns: 3, rows: 10 }, null],
    [{ columns: 0 }, /1 to 10 columns/],
    [{ rows: 2.5 }, /1 to 30 rows/],
    [{ columns: 8 }, /would be 0.94 in wide/],
    [{ rows: 20 }, /in high/],
    [{ gapDown: -1 }, /from zero up/],
    [{ gapAcross: Number.NaN }, /from zero up/],
    [{ margins: { top: 9, bottom: 9, left: 0, right: 0 } }, /0 in high/],
  ])("%j is told to be wrong where it is", (change, fault) => {
    const found = labelGridFault({ ...plainLabelGrid, ...change });
    if (fault === null) expect(found).toBeNull();
    else expect(found).toMatch(fault);
  });

  test.each([
    [plainLabelGrid, true],
    [{ ...plainLabelGrid, paper: "stone" }, false],
    [{ ...plainLabelGrid, columns: "2" }, false],
    [{ ...plainLabelGrid, margins: null }, false],
    [{ ...plainLabelGrid, margins: { top: 1 } }, false],
    [null, false],
    ["2 x 5", false],
  ])("%j kept in a workbook is a grid: %s", (value, isGrid) => {
    expect(isLabelGrid(value)).toBe(isGrid);
  });
});
