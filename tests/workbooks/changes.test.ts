/** The sheet of changes, against `changes.expected.txt`; its formulas worked out by another engine. */
import { expect, test } from "@jest/globals";
import { freezeIssue, readIssue } from "../../src/app/revisions/issues";
import { keepAnswer, readAnswers } from "../../src/app/revisions/markAnswers";
import { countNow, revisionDrawing, revisionOf } from "../../src/app/revisions/revisions";
import { defaultSettings } from "../../src/app/settings";
import { takeOffWorkbook } from "../../src/app/reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../../src/app/reading/workbookTakeOff";
import { orderedOf } from "../../src/core/revisions/ordered";
import { inches, pieces } from "../../src/core/base/units";
import type { Drawing } from "../../src/workbook/drawing";
import { scheduleRows, workbookOf } from "../app/typedWorkbook";
import { disagreeing, recalculated } from "../sheets/recalculated";
import { drawingText } from "./drawingText";
import { check } from "./expected";

const workbook = workbookOf({
  Schedule: scheduleRows(
    "D-1 | 2 | hinged door | 3' | 7' | 8'",
    "D-2 | 1 | sliding door | 8' | 7' | 8'",
    "D-3 | 1 | hinged door | 3' | 7' | 8'",
    "D-4 | 1 | service window | 4' | 3' | 8'",
    "D-5 | 1 | sliding door | 5' | 8' | 8'",
    "=D+6 | 1 | hinged door | 3' | 7' | 8'",
  ),
});

async function takeOff(): Promise<WorkbookTakeOff> {
  const result = await takeOffWorkbook(workbook, defaultSettings);
  if (!result.ok) throw new Error(result.error.message);
  return result.value;
}

/** What an architect's revision changes in the schedule. */
function revise(): void {
  const type = (row: number, column: number, value: string | number): void =>
    workbook.type({ sheet: "Schedule", row, column }, value);
  type(1, 2, 3);
  type(2, 4, "6'");
  type(2, 5, "7'-6\"");
  type(3, 1, "D-103");
  type(4, 1, "W-1");
  type(4, 3, "bi-parting sliding door");
  type(4, 4, "10'");
  type(4, 5, "8'");
  type(5, 1, "D-105");
  type(5, 4, "5'-1/2\"");
  type(6, 5, "tall");
}

async function changes(withCosts: boolean): Promise<Drawing> {
  const given = (item: string, count: number, size: readonly number[] = []) => ({
    job: "Crib",
    item,
    size: size.map(inches),
    pieces: pieces(count),
  });
  const bid = await readIssue(workbook, "Bid");
  if (!bid.ok) throw new Error(bid.error.message);
  const revision = revisionOf(
    bid.value,
    { name: "now", count: countNow(await takeOff(), defaultSettings) },
    await readAnswers(workbook),
    orderedOf({
      supplied: [given("HN 1/4", 40)],
      orderedForJobs: [given("HN 1/4", 60), given("HINGE", 2), given("FRAME", 3, [36, 84])],
    }),
  );
  return revisionDrawing(revision, { ...defaultSettings, withCosts });
}

test("a revision gives the sheet expected of it, and other engines work out the same", async () => {
  const count = countNow(await takeOff(), defaultSettings);
  await freezeIssue(workbook, { name: "Bid", day: 46_350, who: "AB", note: "" }, count);
  revise();
  await keepAnswer(workbook, { job: "Crib", from: "D-5", to: "D-105", isSame: true });
  const drawing = await changes(true);
  const plain = await changes(false);
  check("changes", [drawing, plain].map(drawingText).join("\n"));
  for (const each of [drawing, plain]) {
    const worked = recalculated(each);
    expect(worked.formulas.length).toBeGreaterThan(20);
    expect(disagreeing(worked)).toEqual([]);
  }
});
