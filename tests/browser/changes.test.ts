/** A revision as a person meets it: freeze, edit in the grid, compare, confirm a mark, write the sheet. */
import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";
import axe from "axe-core";
import { openFile } from "../../src/adapters/xlsx/openFile";
import { snapshotBytes } from "../../src/adapters/xlsx/snapshotBytes";
import { freezeIssue } from "../../src/app/revisions/issues";
import { countNow } from "../../src/app/revisions/revisions";
import { defaultSettings } from "../../src/app/settings";
import { cellText } from "../../src/core/base/cell";
import { takeOffWorkbook } from "../../src/app/reading/takeOffWorkbook";
import type { WorkbookSnapshot } from "../../src/workbook/snapshot";
import { demoWorkbook, snapshotOf } from "../app/typedWorkbook";
import { openBrowser, type TestBrowser, type WatchedPage } from "./browser";
import { faultsOf } from "./paneFaults";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

async function openWorkbook({ page }: WatchedPage, workbook: WorkbookSnapshot): Promise<void> {
  await page.waitForSelector("[role=tab]", { state: "attached" });
  await page.setInputFiles("input[type=file]", {
    name: workbook.name,
    mimeType: "application/octet-stream",
    buffer: Buffer.from(snapshotBytes(workbook)),
  });
  await page.getByText(`Opened ${workbook.name}.`).waitFor();
}

/** Widths stand in the first column, marks in the second, so that a person's clicks find them. */
const job = snapshotOf({
  Schedule: [
    ["Width", "Mark", "Job", "Qty", "Type", "Height", "Post height"],
    ["3'", "D-1", "Crib", 1, "hinged door", "7'", "8'"],
    ["3'-6\"", "D-2", "Crib", 2, "hinged door", "7'", "8'"],
    ["8'", "D-3", "Crib", 1, "sliding door", "7'", "8'"],
  ],
});

test("a revision is frozen, typed, compared, confirmed and written", async () => {
  const watched = await browser.open("/", { width: 1280, height: 900 });
  const { page, faults, picture, saved, close } = watched;
  /** Types in the grid, `right` columns from the first. */
  const typeAt = async (row: number, right: number, text: string): Promise<void> => {
    await page.mouse.click(70, 140 + (row - 1) * 21);
    // The grid takes the keyboard a moment after the click.
    await page.waitForTimeout(500);
    for (let press = 0; press < right; press += 1) await page.keyboard.press("ArrowRight");
    await page.keyboard.type(text);
    await page.keyboard.press("Enter");
  };
  await openWorkbook(watched, job);
  await page.getByRole("tab", { name: "Changes" }).click();
  await page.getByText(/No count is frozen in this workbook yet/).waitFor();
  await picture("changes-wide-none");
  await page.getByRole("textbox", { name: "Name" }).fill("Bid");
  await page.getByRole("textbox", { name: "Who" }).fill("AB");
  await page.getByRole("textbox", { name: "Note" }).fill("as sent out");
  await page.getByRole("button", { name: "Freeze this count" }).click();
  await page.getByText("Bid is frozen and kept in this workbook.").waitFor();
  await page.getByText("No opening differs; no hardware differs.").waitFor();
  await typeAt(2, 0, "4'");
  await page.getByText(/^1 opening changed; /).waitFor();
  await picture("changes-wide-changed");
  await page.getByText(`Width: 3'-0" is now 4'-0"`).waitFor();
  await typeAt(4, 1, "D-103");
  await page.getByText(/^1 opening changed, 1 perhaps under another mark; /).waitFor();
  await picture("changes-wide-guess");
  await page.getByRole("button", { name: "Yes D-103 was D-3" }).click();
  await page.getByText(/^1 opening changed, 1 under another mark; /).waitFor();
  await page.getByRole("button", { name: "Write the sheet of changes" }).click();
  await page.getByText("1 sheet written.").waitFor();
  await page.getByRole("button", { name: "Changes Bid to now", exact: true }).click();
  await page.waitForTimeout(600);
  await picture("changes-wide-written");
  const file = await saved(() => page.getByRole("button", { name: "Save .xlsx" }).click());
  const opened = openFile(file.bytes, file.name);
  if (!opened.ok) throw new Error(opened.error.message);
  const { sheets, settings } = opened.value.snapshot();
  expect(sheets.map(({ name }) => name)).toEqual(["Schedule", "Changes Bid to now"]);
  expect(JSON.parse(settings["issues"] ?? "")).toMatchObject([{ name: "Bid", who: "AB" }]);
  expect(settings["markAnswers"]).toContain("D-103");
  expect(faults()).toEqual([]);
  await close();
}, 120_000);

/** The demo with an issue kept in it, and a revision typed since. */
async function revisedDemo(): Promise<WorkbookSnapshot> {
  const workbook = await demoWorkbook();
  const takeOff = await takeOffWorkbook(workbook, defaultSettings);
  if (!takeOff.ok) throw new Error(takeOff.error.message);
  const head = { name: "Bid", day: 46_350, who: "AB", note: "as sent out" };
  const frozen = await freezeIssue(workbook, head, countNow(takeOff.value, defaultSettings));
  if (!frozen.ok) throw new Error(frozen.error.message);
  const cells = workbook.snapshot().sheets.find(({ name }) => name === "Schedule")?.rows ?? [];
  const typed: Readonly<Record<string, readonly (readonly [number, string])[]>> = {
    "A-101": [[1, "A-201"]],
    "A-102": [[4, "6'-2 1/2\""]],
    "A-111": [[5, "7'-6\""]],
    "A-108": [
      [1, "C-1"],
      [3, "sliding door"],
      [4, "9'"],
    ],
    "B-01": [[2, "7"]],
  };
  for (const [row, line] of cells.entries()) {
    for (const [column, text] of typed[cellText(line[1]?.value ?? null)] ?? []) {
      workbook.type({ sheet: "Schedule", row, column }, text);
    }
  }
  return { ...workbook.snapshot(), name: "demo.xlsx" };
}

describe.each([
  [320, true],
  [450, false],
])("the view of changes, %s pixels wide, dark: %s", (width, dark) => {
  test("is sound, empty and full", async () => {
    const watched = await browser.open("/", { width, height: 800, dark });
    const { page, picture, faults, close } = watched;
    const look = async (name: string): Promise<void> => {
      expect({ name, faults: await faultsOf(page) }).toEqual({ name, faults: [] });
      await picture(`changes-${width}-${dark ? "dark" : "light"}-${name}`);
    };
    await openWorkbook(watched, job);
    await page.getByRole("button", { name: "Cribsheet", exact: true }).click();
    await page.evaluate(axe.source);
    await page.getByRole("tab", { name: "Changes" }).click();
    await page.getByText(/No count is frozen in this workbook yet/).waitFor();
    await look("none");
    await openWorkbook(watched, await revisedDemo());
    await page.getByRole("tab", { name: "Changes" }).click();
    await page.getByText(/perhaps under another mark/).waitFor();
    await look("openings");
    await page.getByRole("button", { name: /Stock room.*pcs/ }).click();
    await page.getByRole("table").first().scrollIntoViewIfNeeded();
    await look("hardware");
    await page.getByRole("button", { name: "Remove Bid" }).click();
    await page.getByRole("button", { name: "Yes, remove" }).scrollIntoViewIfNeeded();
    await look("remove");
    expect(faults()).toEqual([]);
    await close();
  }, 120_000);
});
