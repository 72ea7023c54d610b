/** The estimator's first journey on the embedded page, with no hand on the mouse. */
import { afterAll, beforeAll, expect, test } from "@jest/globals";
import type { Page } from "playwright-core";
import { openFile } from "../../src/adapters/xlsx/openFile";
import { openBrowser, type SavedFile, type TestBrowser } from "./browser";
import { demoCount } from "./demoCount";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** What has the keyboard, as a screen reader names it. */
const focused = (page: Page): Promise<string> =>
  page.evaluate(() => {
    const at = document.activeElement;
    const named = at?.getAttribute("aria-label") ?? at?.textContent ?? "";
    return `${at?.getAttribute("role") ?? at?.tagName.toLowerCase() ?? ""}: ${named}`;
  });

/** Presses Tab until what has the keyboard is called so. */
async function tabTo(page: Page, wanted: RegExp): Promise<void> {
  const passed: string[] = [];
  for (let press = 0; press < 150; press++) {
    const now = await focused(page);
    if (wanted.test(now)) return;
    passed.push(now);
    await page.keyboard.press("Tab");
  }
  throw new Error(`Tab never came to ${String(wanted)}, only to ${passed.join(" | ")}`);
}

async function press(page: Page, keys: readonly string[]): Promise<void> {
  for (const key of keys) await page.keyboard.press(key);
}

/** From wherever the keyboard is into a view of the pane, by its tab. */
async function toView(page: Page, wanted: RegExp): Promise<void> {
  await press(page, ["F6"]);
  await tabTo(page, /^tab: /);
  for (let presses = 0; presses < 8; presses++) {
    if (wanted.test(await focused(page))) return;
    await page.keyboard.press("ArrowRight");
  }
  throw new Error(`No tab is called ${String(wanted)}`);
}

function sheetsOf({ bytes, name }: SavedFile) {
  const file = openFile(bytes, name);
  if (!file.ok) throw new Error(file.error.message);
  return file.value.snapshot().sheets;
}

/** The demo's schedule has a caution and headings above its openings; this is the first free row. */
const row = 44;
const job = "Tool crib, Alder plant";
const mended = {
  A44: job,
  B44: "A-900",
  C44: 2,
  D44: "sliding door",
  E44: "7'-0\"",
  F44: "7'-0\"",
  G44: "8'",
};

test("from a new opening to a saved file, by keyboard alone", async () => {
  const { page, faults, saved, picture, close } = await browser.open("/", { width: 1280 });
  const status = page.getByRole("status").filter({ hasText: "openings counted" });
  const says = async (of: { counted: number; rows: number }): Promise<void> =>
    status.filter({ hasText: `${of.counted}of ${of.rows} openings counted` }).waitFor();
  const before = await demoCount();
  await page.waitForSelector(".page-grid canvas");
  await says(before);

  // F6 until the spreadsheet has the keyboard, and down to the first free row.
  const isInGrid = (): Promise<boolean> =>
    page.evaluate(() => (document.activeElement?.closest(".page-grid") ?? null) !== null);
  for (let part = 0; part < 3; part += 1) {
    await page.keyboard.press("F6");
    if (await isInGrid()) break;
  }
  await press(
    page,
    Array.from({ length: row - 1 }, () => "ArrowDown"),
  );
  await page.waitForTimeout(500);
  await picture("keyboard, first free row");
  for (const words of Object.values({ ...mended, E44: "seven and a bit" })) {
    await page.keyboard.type(String(words));
    await page.keyboard.press("Tab");
  }
  await page.waitForTimeout(500);
  await picture("keyboard, typed");
  await says({ counted: before.counted, rows: before.rows + 1 });

  // To what is wrong with it, and from there to the cell.
  await toView(page, /To mend/);
  await tabTo(page, new RegExp(`Go to A-900E${row}`));
  await picture("keyboard, finding");
  await press(page, ["Enter", "F6", "F6"]);
  await page.keyboard.type("7'-0\"");
  await page.keyboard.press("Enter");
  const after = await demoCount({ Schedule: mended });
  await says(after);

  // Back past the bar to the pane; why so many trolleys, down to the numbers put in.
  await press(page, ["Shift+F6"]);
  await press(page, ["Shift+F6", "Shift+F6"]);
  await toView(page, /Jobs/);
  await tabTo(page, /button: Tool crib/);
  await page.keyboard.press("Enter");
  await tabTo(page, /button: Trolley.*show why/);
  await page.keyboard.press("Enter");
  await tabTo(page, /button: A-900/);
  await page.keyboard.press("Enter");
  await tabTo(page, /Go to A-900/);
  await picture("keyboard, reasons");

  // The sheets, saved, taken back with one undo, saved again.
  await press(page, ["F6", "F6"]);
  await toView(page, /Sheets/);
  await tabTo(page, /button: Write sheets/);
  await page.keyboard.press("Enter");
  await page.getByText(/sheets written/).waitFor();
  await page.keyboard.press("F6");
  await tabTo(page, /button: Save/);
  const withSheets = sheetsOf(await saved(() => page.keyboard.press("Enter")));
  await press(page, ["F6", "Control+z"]);
  await press(page, ["Shift+F6"]);
  await tabTo(page, /button: Save/);
  const without = sheetsOf(await saved(() => page.keyboard.press("Enter")));
  const ours = (sheets: typeof without) => sheets.filter(({ mark }) => mark !== null);
  const words = ours(withSheets).flatMap(({ rows }) => rows.flat().map((cell) => cell?.value));
  expect(words.some((word) => typeof word === "string" && word.includes("A-900"))).toBe(true);
  expect(ours(without)).toEqual([]);
  expect(without[0]?.rows[row - 1]?.slice(0, 7).map((cell) => cell?.value)).toEqual(
    Object.values(mended),
  );
  expect(faults()).toEqual([]);
  await close();
}, 180_000);
