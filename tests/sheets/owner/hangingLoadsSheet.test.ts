/** The sheet of hanging loads: figures beside what was entered, and a verdict that follows them. */
import { describe, expect, test } from "@jest/globals";
import type { CellValue } from "../../../src/core/base/cell";
import { jobLoads, loadRules, type JobLoads } from "../../../src/core/pricing/loads/openingLoads";
import type { RateKey } from "../../../src/core/pricing/rates/rateRows";
import { rateReader } from "../../../src/core/pricing/rates/rates";
import { hangingLoadsSheet } from "../../../src/sheets/owner/hangingLoadsSheet";
import { shownValue, type DrawnCell } from "../../../src/workbook/drawing";
import { starterItems } from "../../../src/core/kitbook/starter/items";
import type { ItemRow } from "../../../src/core/pricing/item";
import { dollars, estimateOf, ratesOf } from "../../core/pricing/pricedJobs";

type Entered = Readonly<Partial<Record<RateKey, CellValue>>>;

function loadsOf(entered: Entered, items: readonly ItemRow[] = starterItems): JobLoads {
  const result = estimateOf(
    [
      { mark: "A-1", width: "4'" },
      { mark: "A-2", width: "12'" },
      { mark: "A-3", width: "3'", type: "hinged door" },
    ],
    items,
  );
  const [job] = result.jobs;
  if (job === undefined) throw new Error("no job");
  return jobLoads(
    job.takeOff,
    result.items,
    loadRules(rateReader(ratesOf(entered), "North", dollars)),
  );
}

function rowsOf(loads: JobLoads) {
  const { rows } = hangingLoadsSheet([loads]);
  return rows.filter(({ cells: [first] }) => {
    const shown = first === undefined || first === null ? null : shownValue(first);
    return typeof shown === "string" && shown.startsWith("A-");
  });
}
const verdictCell = 16;
const verdicts = (loads: JobLoads): readonly (DrawnCell | null | undefined)[] =>
  rowsOf(loads).map(({ cells }) => cells[verdictCell]);

describe("the verdict", () => {
  test("is a formula over the loads and capacities of its row, and what hangs from nothing has none", () => {
    const cells = verdicts(loadsOf({ trolleyCarries: 60, hangerCarries: 1000 }));
    expect(cells).toEqual([
      expect.objectContaining({ kind: "formula", result: "not checked", look: "note" }),
      expect.objectContaining({ kind: "formula", result: "over", look: "stop" }),
    ]);
    const [first] = cells;
    // A narrow door has one section of track: no joint, so no joint decides.
    expect(first?.kind === "formula" && first.formula).not.toContain("M6");
    expect(first?.kind === "formula" && first.formula).toContain("COUNT(F6,G6)=2");
  });

  test("is words where no load can be worked out, and the parts without a weight are named", () => {
    const noWeight = starterItems.map((item) =>
      item.code.value === "PANEL" ? { ...item, weight: { value: null, place: null } } : item,
    );
    const loads = loadsOf({ trolleyCarries: 60 }, noWeight);
    expect(verdicts(loads)).toEqual([
      expect.objectContaining({ kind: "text", text: "not checked" }),
      expect.objectContaining({ kind: "text", text: "not checked" }),
    ]);
    const [row] = rowsOf(loads);
    const last = row?.cells.at(-1);
    expect(last?.kind === "text" && last.text).toBe("No weight is given for PANEL.");
    expect(loads.findings.map(({ code }) => code)).toEqual([
      "leaf-weight-not-known",
      "leaf-weight-not-known",
    ]);
  });
});

test("the caution stands at the head of the sheet and at the foot of each page", () => {
  const { rows, print } = hangingLoadsSheet([loadsOf({})]);
  const caution = rows[1]?.cells[0];
  expect(caution?.kind === "text" && caution.text).toContain("licensed engineer");
  expect(print.footer).toContain("licensed engineer");
});

test("each job but the first begins a page", () => {
  const [north, south] = [loadsOf({}), { ...loadsOf({}), job: "South" }];
  const { rows, print } = hangingLoadsSheet([north, south]);
  const place = rows.findIndex(
    ({ cells: [first] }) => first?.kind === "text" && first.text === "South",
  );
  expect(print.breaksBefore).toEqual([place]);
});
