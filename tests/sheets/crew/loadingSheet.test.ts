import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { packJob } from "../../../src/core/bags/bags";
import { cellText } from "../../../src/core/base/cell";
import type { Estimate } from "../../../src/core/estimate/estimate";
import type { JobEstimate } from "../../../src/core/estimate/jobEstimate";
import { bagLoads, loadWeights } from "../../../src/sheets/owner/loads";
import { loadingSheet } from "../../../src/sheets/crew/loadingSheet";
import type { Drawing } from "../../../src/workbook/drawing";
import { anyOpenings, rowsOf } from "../../core/takeoff/anyOpenings";
import { estimateRows, scheduleRow } from "../../core/takeoff/notation";
import { corrected, firstJob, lengths, textsOf, valuesOf } from "../packedJobs";
import { recalculated } from "../recalculated";

const loading = ({ items }: Pick<Estimate, "items">, jobs: readonly JobEstimate[]): Drawing =>
  loadingSheet({ jobs, items, lengths });

const two = (): Estimate =>
  estimateRows([
    scheduleRow("8' x 7' on 8'", { mark: "A-1", quantity: 2, tailRun: "5'" }),
    scheduleRow("8' x 7' on 8'", { mark: "A-2", tailRun: "20'" }),
    scheduleRow("6' x 9' on 8'", { mark: "A-3" }),
  ]);

/** The total rows: what the loads come to, and what the hardware list orders. */
function totals(drawing: Drawing) {
  const rows = valuesOf(drawing);
  const loaded = rows.filter((row) => cellText(row[1] ?? null).endsWith(": all that is loaded"));
  const ordered = rows.filter((row) =>
    cellText(row[1] ?? null).startsWith("To order by the hardware"),
  );
  return { loaded: loaded.map((row) => row.slice(4)), ordered: ordered.map((row) => row.slice(4)) };
}

function expectSame(drawing: Drawing): void {
  const { loaded, ordered } = totals(drawing);
  expect(loaded.length).toBeGreaterThan(0);
  for (const [index, [pieces, weight]] of loaded.entries()) {
    expect(pieces).toBe(ordered[index]?.[0]);
    expect(weight).toBeCloseTo(Number(ordered[index]?.[1]), 6);
  }
}

describe("a loading list", () => {
  test("adds up to what the hardware list orders, in pieces and pounds", () => {
    const estimate = two();
    expectSame(loading(estimate, estimate.jobs));
  });

  test("adds up with corrections and lines added by hand", () => {
    const estimate = two();
    const changes = { "HN 1/4": "-4", TROLLEY: "+1", SPACER: "=20" };
    const job = corrected(estimate, firstJob(estimate), changes, { item: "HASP", quantity: "2" });
    const drawing = loading(estimate, [job]);
    expectSame(drawing);
    expect(
      valuesOf(drawing).filter(([, what]) => cellText(what ?? null).startsWith("HN 1/4: -4")),
    ).toMatchObject([{ 4: -4 }]);
  });

  test("adds up whatever the schedule", () => {
    fc.assert(
      fc.property(anyOpenings, (given) => {
        const estimate = estimateRows(rowsOf(given));
        if (estimate.jobs.length > 0) expectSame(loading(estimate, estimate.jobs));
      }),
      { numRuns: 15 },
    );
  });

  test("sums up live: another spreadsheet comes to the same, and follows a changed number", () => {
    const estimate = two();
    const drawing = loading(estimate, estimate.jobs);
    const { formulas, typing } = recalculated(drawing);
    expect(formulas).toHaveLength(2);
    for (const { drawn, found } of formulas) expect(Number(found)).toBeCloseTo(Number(drawn), 6);
    const [pieces] = formulas;
    const row = valuesOf(drawing).findIndex((cells) => typeof cells[4] === "number");
    if (pieces === undefined) throw new Error("No sum");
    const now = typing(row, 4, 1000)(pieces.row, pieces.column);
    const before = valuesOf(drawing)[row]?.[4];
    expect(Number(now) - Number(pieces.drawn)).toBe(1000 - Number(before));
  });

  test("lists big parts once each with their marks, and bags without them", () => {
    const estimate = two();
    const rows = valuesOf(loading(estimate, estimate.jobs));
    expect(rows.find(([, what]) => what === "TRACK")?.slice(2, 5)).toEqual([
      "A-1 (2), A-2",
      `16'-0"`,
      3,
    ]);
    expect(rows.filter(([, what]) => what === "bag 2 of 7: Track (big parts only)")).toHaveLength(
      2,
    );
    expect(
      rows.find(
        ([, what, mark]) => what === "bag 1 of 7: Overhead" && mark === "A-1, copy 1 of 2",
      )?.[4],
    ).toBe(36);
  });

  test("says what it lacks: openings that are not counted, items that are not weighed", () => {
    const estimate = two();
    const items = new Map([...estimate.items].filter(([key]) => key !== "trolley"));
    const job = {
      ...firstJob(estimate),
      material: { ...firstJob(estimate).material, unweighed: ["TROLLEY"] },
    };
    const texts = textsOf(loading({ items }, [job]));
    expect(texts).toContain("NOT COMPLETE. Not counted here: A-3. The findings say why.");
    expect(texts).toContain("Not weighed, and not in the total: TROLLEY");
    expect(texts).toContain("not weighed");
    expect(texts.some((text) => text.startsWith("A hanging door can fall"))).toBe(true);
  });

  test("of very many bags goes opening by opening, and still adds up", () => {
    const estimate = two();
    const job = firstJob(estimate);
    const weight = loadWeights(job.material, estimate.items, "pounds");
    const bags = packJob(job.takeOff);
    const sums = (oneByOne: boolean) =>
      bagLoads(bags, weight, oneByOne).reduce(
        (sum, load) => [(sum[0] ?? 0) + load.pieces, (sum[1] ?? 0) + (load.weight ?? 0)],
        [0, 0],
      );
    expect(bagLoads(bags, weight, false)).toHaveLength(2);
    expect(sums(false)[0]).toBe(sums(true)[0]);
    expect(sums(false)[1]).toBeCloseTo(sums(true)[1] ?? 0, 6);
  });

  test("of several jobs has a page for each", () => {
    const rows = ["North", "South"].map((job) => scheduleRow("4' x 7' on 8'", { job }));
    const estimate = estimateRows(rows);
    const { print, name, mark } = loading(estimate, estimate.jobs);
    expect([print.breaksBefore.length, name, mark]).toEqual([
      1,
      "Loading",
      { kind: "loading", subject: "" },
    ]);
    expectSame(loading(estimate, estimate.jobs));
  });
});
