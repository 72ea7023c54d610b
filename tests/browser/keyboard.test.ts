/** The estimator's whole way on the embedded page by keyboard alone. */
import { afterAll, beforeAll, expect, test } from "@jest/globals";
import type { Page } from "playwright-core";
import { openFile } from "../../src/adapters/xlsx/openFile";
import type { CellValue } from "../../src/core/base/cell";
import type { WorkbookSnapshot } from "../../src/workbook/snapshot";
import { openBrowser, type TestBrowser } from "./browser";
import { countOf, demoCount, writtenDemo, type DemoCount } from "./demoCount";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

/** What a person has at hand: keys, and eyes for what is said and where the keyboard is. */
function atTheKeyboard(page: Page) {
  const focused = (): Promise<string> =>
    page.evaluate(() => {
      const at = document.activeElement;
      const part = at?.closest(".page-grid, .page-pane, .page-bar, dialog")?.className ?? "nowhere";
      const isSeen = at !== null && at.getBoundingClientRect().bottom <= innerHeight;
      const isView = at?.getAttribute("role") === "tabpanel";
      const name = isView ? "a view" : (at?.getAttribute("aria-label") ?? at?.textContent ?? "");
      return `${part.split(" ")[0]}: ${name}${isSeen ? "" : " (out of sight)"}`;
    });
  const press = async (...keys: readonly string[]): Promise<void> => {
    for (const key of keys) await page.keyboard.press(key);
  };
  return {
    focused,
    press,
    type: (text: string) => page.keyboard.type(text, { delay: 15 }),
    /** Presses `key` until the keyboard is at what `name` names, which must be in sight. */
    reach: async (name: RegExp, key = "Tab"): Promise<void> => {
      const passed: string[] = [];
      for (let presses = 0; presses < 60; presses += 1) {
        const at = await focused();
        if (name.test(at)) {
          expect(at).not.toContain("out of sight");
          return;
        }
        passed.push(at.slice(0, 60));
        await press(key);
      }
      throw new Error(`${key} does not come to ${name}: ${passed.join("\n")}`);
    },
    /** Waits until this cell of the sheet in front is selected and has the keyboard. */
    isAt: async (cell: string): Promise<void> => {
      await page.waitForFunction(
        (wanted) =>
          document.querySelector<HTMLInputElement>("[data-u-comp=defined-name] input")?.value ===
          wanted,
        cell,
      );
      expect(await focused()).toContain("page-grid");
    },
    says: async ({ counted, rows }: DemoCount): Promise<void> =>
      page.getByText(`${counted}of ${rows} openings counted`).first().waitFor(),
  };
}

/** Below the demo's 41 rows, two rows of caution and headings, and none left free. */
const row = 44;
const opening: Readonly<Record<string, string | number>> = {
  A: "Tool crib, Alder plant",
  B: "A-900",
  C: 1,
  D: "sliding door",
  E: "seven and a bit",
  F: "7'-0\"",
  G: "8'-0\"",
  H: "yes",
  I: "9'",
  J: "no",
  K: "concrete",
};
const inRow = (cells: typeof opening) =>
  Object.fromEntries(Object.entries(cells).map(([column, text]) => [`${column}${row}`, text]));
const wrong = { Schedule: inRow(opening) };
const mended = { Schedule: inRow({ ...opening, E: "7'-0\"" }) };

/** The values of a sheet's cells by row, to twelve digits; blank ends left out. */
function valuesOf({ sheets }: WorkbookSnapshot, name: string): readonly (readonly CellValue[])[] {
  const rows = sheets.find((sheet) => sheet.name === name)?.rows ?? [];
  const values = rows.map((cells) =>
    withoutEnd(
      cells.map((cell) => {
        const value = cell?.value ?? null;
        return typeof value === "number" ? Number(value.toPrecision(12)) : value;
      }),
      (value) => value === null,
    ),
  );
  return withoutEnd(values, ({ length }) => length === 0);
}

const withoutEnd = <Entry>(
  entries: readonly Entry[],
  isBlank: (entry: Entry) => boolean,
): readonly Entry[] => entries.slice(0, entries.findLastIndex((entry) => !isBlank(entry)) + 1);

test("from a new opening to the saved workbook without a mouse", async () => {
  const { page, faults, picture, saved, close } = await browser.open("/");
  const { focused, press, type, reach, isAt, says } = atTheKeyboard(page);
  const before = await demoCount();
  await says(before);

  // A new opening below the last one, whose width is none, has a finding.
  await isAt("A1:N1");
  await press("ArrowDown", "ArrowRight", "Control+ArrowDown", "ArrowDown", "Home");
  await isAt(`A${row}`);
  for (const text of Object.values(opening)) {
    await type(String(text));
    await press("Tab");
  }
  const doubtful = await demoCount(wrong);
  expect(doubtful).toMatchObject({ counted: before.counted, rows: before.rows + 1 });
  await says(doubtful);
  const finding = page.getByRole("listitem").filter({ hasText: "seven and a bit" });
  await finding.waitFor();

  // It leads to the cell; what is typed there mends it.
  await press("F6");
  await reach(/page-pane: To mend/);
  await reach(new RegExp(`: Go to A-900E${row}`));
  await press("Enter");
  await isAt(`E${row}`);
  await picture("keyboard-at the cell of a finding");
  await type("7'-0\"");
  await press("Enter");
  const after = await demoCount(mended);
  expect(after.counted).toBe(before.counted + 1);
  await says(after);
  expect(await finding.count()).toBe(0);

  // The reasons of a quantity, and from them to the opening's row.
  await press("F6");
  await reach(/page-pane: To mend/, "Shift+Tab");
  await press("ArrowRight");
  await page.getByText(after.material).waitFor();
  await reach(/page-pane: Tool crib/);
  await press("Enter");
  await page.getByRole("heading", { name: "Tool crib, Alder plant" }).waitFor();
  await reach(/: Search the lines/);
  await type("trolley");
  await reach(/page-pane: Trolley/);
  await press("Enter");
  await page
    .getByText(/Kit book parts, row \d+/)
    .first()
    .waitFor();
  await reach(/page-pane: A-900/);
  await press("Enter");
  await reach(/: Go to A-900/);
  await picture("keyboard-reasons");
  await press("Enter");
  await isAt(`A${row}`);

  // Sheets, and the way to one of them.
  await press("F6");
  await reach(/page-pane: Jobs/, "Shift+Tab");
  await press("ArrowRight");
  await page.getByRole("button", { name: /^Write sheets/ }).waitFor();
  await reach(/page-pane: Write sheets/);
  await press("Enter");
  await page.getByText(/sheets written/).waitFor();
  await reach(/page-pane: Hardware Tool crib/);
  await press("Enter");
  await isAt("A1");
  await page.waitForTimeout(300);
  await picture("keyboard-a written sheet");

  // A unit cost in the items sheet, from the reasons that the Jobs view still shows.
  await press("F6");
  await reach(/page-pane: Sheets/, "Shift+Tab");
  await press("ArrowLeft");
  await reach(/: Go to E\d+ on Items/);
  const cell = / (E\d+) on /.exec(await focused())?.[1] ?? "";
  await press("Enter");
  await isAt(cell);
  await type("100");
  await press("Enter");
  await press("F6");
  await press("Escape");
  await page.getByRole("searchbox", { name: "Search the lines" }).waitFor();
  await press("Escape");
  const dearer = await demoCount({ ...mended, Items: { [cell]: 100 } });
  expect(dearer.material).not.toBe(after.material);
  await page.getByText(dearer.material).waitFor();
  await picture("keyboard-a dearer item");

  // Taken back, and saved.
  await press("Shift+F6", "Control+z");
  await page.getByText(after.material).waitFor();
  await press("Shift+F6");
  await reach(/page-bar: Save .xlsx/);
  const file = await saved(() => press("Enter"));
  const read = openFile(file.bytes, file.name);
  if (!read.ok) throw new Error(read.error.message);
  expect(await countOf(read.value)).toEqual(after);
  const [inFile, byTheCore] = [read.value.snapshot(), await writtenDemo(mended)];
  const names = byTheCore.sheets.map(({ name }) => name);
  expect(inFile.sheets.map(({ name }) => name)).toEqual(names);
  for (const name of names) {
    expect({ name, values: valuesOf(inFile, name) }).toEqual({
      name,
      values: valuesOf(byTheCore, name),
    });
  }
  expect(faults()).toEqual([]);
  await close();
}, 120_000);

test("adds a sheet and shows the cells larger by keys", async () => {
  const { page, faults, close } = await browser.open("/");
  const { press, isAt } = atTheKeyboard(page);
  const zoomIs = (words: string) =>
    page.locator("footer").getByText(words, { exact: true }).waitFor();
  await isAt("A1:N1");
  await press("Control+Equal");
  await zoomIs("120%");
  await press("Control+Minus", "Control+Minus");
  await zoomIs("80%");
  await press("Control+0");
  await zoomIs("100%");

  const sheets = page.locator("footer [role=tab]");
  const before = await sheets.count();
  await press("Shift+F11");
  await sheets.nth(before).waitFor({ state: "attached" });
  await isAt("A1");
  expect(await sheets.count()).toBe(before + 1);
  expect(faults()).toEqual([]);
  await close();
}, 60_000);
