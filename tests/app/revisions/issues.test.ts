import { describe, expect, test } from "@jest/globals";
import { freezeIssue, listIssues, readIssue, removeIssue } from "../../../src/app/revisions/issues";
import { forgetAnswer, keepAnswer, readAnswers } from "../../../src/app/revisions/markAnswers";
import {
  countNow,
  readRevisions,
  revisionDrawing,
  revisionOf,
} from "../../../src/app/revisions/revisions";
import { defaultSettings } from "../../../src/app/settings";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import type { WorkbookTakeOff } from "../../../src/app/reading/workbookTakeOff";
import { finish } from "../../../src/core/base/steps";
import { pieces } from "../../../src/core/base/units";
import { isEmpty } from "../../../src/core/revisions/compareCounts";
import { longestIssue } from "../../../src/core/revisions/issueText";
import type { MemoryWorkbook } from "../../../src/adapters/memory/memoryWorkbook";
import type { Workbook } from "../../../src/workbook/workbook";
import { countWith, opening } from "../../core/revisions/anyCounts";
import { keepAndSend, need, office } from "../orders/orderDesk";
import { scheduleRows, workbookOf } from "../typedWorkbook";

const crib = (): MemoryWorkbook =>
  workbookOf({
    Schedule: scheduleRows(
      "D-1 | 2 | hinged door | 3' | 7' | 8'",
      "D-2 | 1 | sliding door | 8' | 7' | 8'",
    ),
  });

async function taken(workbook: Workbook): Promise<WorkbookTakeOff> {
  const takeOff = await takeOffWorkbook(workbook, defaultSettings);
  if (!takeOff.ok) throw new Error(takeOff.error.message);
  return takeOff.value;
}

const head = (name: string) => ({ name, day: 46_350, who: "AB", note: "" });

async function freeze(workbook: Workbook, name: string) {
  return freezeIssue(workbook, head(name), countNow(await taken(workbook), defaultSettings));
}

async function compared(workbook: Workbook, from: string, to: string) {
  const revision = await readRevisions(workbook, await taken(workbook), defaultSettings, {
    from,
    to,
    today: 46_360,
  });
  if (!revision.ok) throw new Error(revision.error.message);
  return finish(revision.value());
}

/** Cells of the schedule by row and column, from zero. */
const type = (workbook: MemoryWorkbook, row: number, column: number, value: string): void =>
  workbook.type({ sheet: "Schedule", row, column }, value);

describe("issues of a workbook", () => {
  test("are listed with date, who and note, and show on no sheet", async () => {
    const workbook = crib();
    const { sheets } = workbook.snapshot();
    const count = countNow(await taken(workbook), defaultSettings);
    const bid = { name: "  Bid ", day: 46_350, who: "AB", note: "two\nlines" };
    expect(await freezeIssue(workbook, bid, count)).toMatchObject({ ok: true });
    await freezeIssue(workbook, head("Revision B"), count);
    expect(await listIssues(workbook)).toEqual({
      ok: true,
      value: [
        { name: "Bid", day: 46_350, who: "AB", note: "two lines" },
        { name: "Revision B", day: 46_350, who: "AB", note: "" },
      ],
    });
    expect(await readIssue(workbook, "bid")).toMatchObject({ ok: true, value: { count } });
    expect(workbook.snapshot().sheets).toEqual(sheets);
  });

  test("need a name of their own, which is not that of today's count", async () => {
    const workbook = crib();
    await freeze(workbook, "Bid");
    for (const [name, code] of [
      ["  ", "issue-name-missing"],
      ["BID", "issue-name-taken"],
      ["Now", "issue-name-now"],
    ] as const) {
      expect(await freeze(workbook, name)).toMatchObject({ ok: false, error: { code } });
    }
  });

  test("are removed one by one; the others and later ones stay whole", async () => {
    const workbook = crib();
    await freeze(workbook, "Bid");
    await freeze(workbook, "B");
    expect(await removeIssue(workbook, "bid")).toMatchObject({ ok: true, value: { name: "Bid" } });
    expect(await readIssue(workbook, "Bid")).toMatchObject({
      ok: false,
      error: { code: "issue-unknown", message: "There is no issue Bid. There are: B." },
    });
    type(workbook, 1, 4, "4'");
    await freeze(workbook, "Bid");
    expect((await compared(workbook, "B", "Bid")).comparison.openings.changed).toHaveLength(1);
    expect(isEmpty((await compared(workbook, "Bid", "now")).comparison)).toBe(true);
  });

  test("that cannot be read are left as they are", async () => {
    const workbook = crib();
    await freeze(workbook, "Bid");
    await workbook.writeSetting("issues", `[{"version":9}]`);
    const unreadable = { ok: false, error: { code: "issues-unreadable" } };
    expect(await listIssues(workbook)).toMatchObject(unreadable);
    expect(await freeze(workbook, "B")).toMatchObject(unreadable);
    expect(await removeIssue(workbook, "Bid")).toMatchObject(unreadable);
    expect(await workbook.readSetting("issues")).toBe(`[{"version":9}]`);
  });

  test("whose count is damaged say so by name", async () => {
    const workbook = crib();
    await freeze(workbook, "Bid");
    await workbook.writeSetting("issues.1", "{broken");
    expect(await readIssue(workbook, "Bid")).toMatchObject({
      ok: false,
      error: { code: "issue-damaged", message: expect.stringContaining("Bid") },
    });
  });

  test("are refused when they are too large, and nothing is kept", async () => {
    const workbook = crib();
    const openings = Array.from({ length: 25_000 }, (_, index) =>
      opening(`An opening with a mark of some length, ${index}`, { width: index }),
    );
    const count = countWith(openings);
    expect(JSON.stringify(count).length).toBeGreaterThan(longestIssue);
    expect(await freezeIssue(workbook, head("Bid"), count)).toMatchObject({
      ok: false,
      error: { code: "issue-too-large" },
    });
    expect(await listIssues(workbook)).toEqual({ ok: true, value: [] });
  });

  test("that the host refuses to keep are not listed", async () => {
    const workbook = crib();
    const fault = { code: "host-refused", message: "No." } as const;
    const refusing: Workbook = {
      ...workbook,
      writeSetting: () => Promise.resolve({ ok: false, error: fault }),
    };
    expect(await freeze(refusing, "Bid")).toEqual({ ok: false, error: fault });
    expect(await listIssues(workbook)).toEqual({ ok: true, value: [] });
  });
});

describe("an issue compared", () => {
  test("with now says which size was what, and what that needs", async () => {
    const workbook = crib();
    await freeze(workbook, "Bid");
    type(workbook, 1, 4, "4'");
    const { from, to, comparison } = await compared(workbook, "BID", "now");
    expect([from, to]).toEqual(["Bid", "now"]);
    const [door] = comparison.openings.changed;
    expect(door?.from.mark).toBe("D-1");
    expect(door?.changes).toMatchObject([{ field: { name: "width" }, from: 36, to: 48 }]);
    expect(comparison.hardware.lines.length).toBeGreaterThan(0);
    // The other way round each difference is its opposite.
    const back = (await compared(workbook, "now", "Bid")).comparison;
    expect(back.hardware.total.cost).toBe(0 - (comparison.hardware.total.cost ?? 0));
  });

  test("keeps in mind what is ordered for its jobs: what is right is not told", async () => {
    const workbook = crib();
    const count = countNow(await taken(workbook), defaultSettings);
    const [first, second] = count.lines;
    if (first === undefined || second === undefined) throw new Error("Two lines are needed.");
    const ordered = [first, second, { ...second, job: "Of another workbook" }].map(
      ({ job, item, size, quantity, spares }, index) => ({
        job,
        item,
        size,
        ordered: pieces(quantity + spares + index),
        come: pieces(0),
      }),
    );
    const side = { name: "Bid", count };
    expect(revisionOf(side, side, [], ordered)).toMatchObject({
      ordered: [{ job: "Crib", item: second.item, tooMany: 1 }],
      isOrderedKnown: true,
    });
    expect(revisionOf(side, side, [], null)).toMatchObject({ ordered: [], isOrderedKnown: false });
  });

  test("reads what is ordered from the workbook's own order book", async () => {
    const workbook = office();
    await keepAndSend(workbook);
    await freeze(workbook, "Bid");
    need(workbook, 1);
    const { ordered, isOrderedKnown } = await compared(workbook, "Bid", "now");
    expect(isOrderedKnown).toBe(true);
    const trolleys = ordered.find(({ item }) => item === "TROLLEY");
    expect(trolleys).toMatchObject({ job: "Dock", stillToOrder: 0 });
    expect(trolleys?.tooMany).toBe((trolleys?.ordered ?? 0) - (trolleys?.needed ?? 0));
    expect(trolleys?.tooMany).toBeGreaterThan(0);
    await workbook.writeSetting("orderBook", "{broken");
    expect(await compared(workbook, "Bid", "now")).toMatchObject({
      ordered: [],
      isOrderedKnown: false,
    });
  });

  test("asks about a mark that looks renamed, and remembers what a person says", async () => {
    const workbook = crib();
    await freeze(workbook, "Bid");
    type(workbook, 1, 1, "D-101");
    const openings = async () => (await compared(workbook, "Bid", "now")).comparison.openings;
    expect((await openings()).guesses).toMatchObject([
      { from: { mark: "D-1" }, to: { mark: "D-101" } },
    ]);
    const pair = { job: "Crib", from: "D-1", to: "D-101" };
    await keepAnswer(workbook, { ...pair, isSame: true });
    expect(await openings()).toMatchObject({ guesses: [], renamed: [{ to: { mark: "D-101" } }] });
    await keepAnswer(workbook, { job: "CRIB", from: "d-101", to: "D-1", isSame: false });
    expect(await readAnswers(workbook)).toHaveLength(1);
    expect(await openings()).toMatchObject({ guesses: [], renamed: [], refused: [pair] });
    await forgetAnswer(workbook, pair);
    expect((await openings()).guesses).toHaveLength(1);
  });

  test("is a sheet that takes the place of the one before", async () => {
    const workbook = crib();
    await freeze(workbook, "Bid");
    for (const was of ["new", "replaced"]) {
      type(workbook, 1, 4, was === "new" ? "4'" : "5'");
      const drawing = revisionDrawing(await compared(workbook, "Bid", "now"), defaultSettings);
      const written = await workbook.write([drawing]);
      expect(written.ok && written.value).toMatchObject([{ name: "Changes Bid to now", was }]);
    }
    // The sheet is no schedule: nothing more is counted for it.
    expect((await taken(workbook)).inputs.schedules).toHaveLength(1);
  });
});
