/** The kit book's view as a person uses it: owning the book, changing a limit in the grid, trying sizes, other books. */
import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";
import axe from "axe-core";
import type { Page } from "playwright-core";
import { openBrowser, type TestBrowser } from "./browser";
import { faultsOf } from "./paneFaults";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const panelOf = (page: Page) => page.locator("[role=tabpanel]:not([hidden])");
const partOf = (page: Page, name: string) => panelOf(page).getByRole("region", { name });
const openPart = async (page: Page, name: string) => {
  await panelOf(page).getByRole("button", { name, exact: true }).click();
  return partOf(page, name);
};

async function openBook(page: Page): Promise<void> {
  await page.getByRole("tab", { name: "Kit book" }).click();
  await panelOf(page).getByRole("heading", { name: "Kit book" }).waitFor();
  await panelOf(page).getByRole("combobox", { name: "Opening type" }).selectOption("Sliding door");
}

const ownIt = async (page: Page): Promise<void> => {
  await panelOf(page)
    .getByRole("button", { name: /^Own it/ })
    .click();
  await panelOf(page).getByText("Counted by the workbook’s own kit book.").waitFor();
};

/** Whoever goes to a cell has the keyboard there. */
async function gridHasKeyboard(page: Page): Promise<void> {
  await page.waitForFunction(() => document.activeElement?.closest(".page-grid"));
}

/** Types over the cell that was gone to. */
async function typeInGrid(page: Page, text: string): Promise<void> {
  await gridHasKeyboard(page);
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

// The journey below is on a wide page.
describe.each([
  [320, true],
  [450, false],
])("the kit book, %s pixels wide, dark: %s", (width, dark) => {
  test("is sound in every part", async () => {
    const { page, picture, faults, close } = await browser.open("/", { width, height: 900, dark });
    const look = async (name: string): Promise<void> => {
      expect({ name, faults: await faultsOf(page) }).toEqual({ name, faults: [] });
      await picture(`book-${width}-${dark ? "dark" : "light"}-${name}`);
    };
    await page.waitForSelector("[role=tab]", { state: "attached" });
    await page.evaluate(axe.source);
    await page.getByRole("button", { name: "Cribsheet", exact: true }).click();
    await openBook(page);
    await look("starter");
    await ownIt(page);
    await look("own");
    const shut = (name: string) => panelOf(page).getByRole("button", { name, exact: true }).click();
    const rows = await openPart(page, "Its rows");
    await rows.getByText("Needed").or(rows.getByText("Quantity")).first().waitFor();
    await look("rows");
    await shut("Its rows");
    const tried = await openPart(page, "Try a size");
    await tried.getByRole("button", { name: "Put a second size beside it" }).click();
    const second = tried.getByRole("group", { name: "Second opening" });
    await second.getByRole("textbox", { name: "Width" }).fill(`5'`);
    await tried.getByText(/something else/).scrollIntoViewIfNeeded();
    await look("try");
    await shut("Try a size");
    const boundaries = await openPart(page, "Boundaries");
    await boundaries.getByText(`Width 5'-0"`).waitFor();
    await look("boundaries");
    await shut("Boundaries");
    const open = await openPart(page, "What it leaves open");
    await open.getByRole("button", { name: /Sizes without a chart entry/ }).click();
    await look("open");
    await shut("What it leaves open");
    const against = await openPart(page, "Against the starter");
    await against.getByText("Every row is as in the starter.").waitFor();
    await look("against");
    await shut("Against the starter");
    await openPart(page, "Other books");
    await page.getByLabel(/Take over rows/).setInputFiles({
      name: "other.csv",
      mimeType: "text/csv",
      buffer: Buffer.from("Type,Bag,Step,Item,Quantity,When\nDutch door,Leaf,1,PANEL,2,\n"),
    });
    await page.getByText(/1 to take over/).scrollIntoViewIfNeeded();
    await look("import");
    expect(faults()).toEqual([]);
    await close();
  }, 180_000);
});

test("a firm owns the book, changes a limit, and takes a book over", async () => {
  const { page, faults, saved, longestTask, picture, close } = await browser.open("/", {
    width: 1280,
    height: 900,
  });
  await openBook(page);
  await ownIt(page);

  // The book as it came, kept as a file.
  const other = await openPart(page, "Other books");
  const file = await saved(() =>
    other.getByRole("button", { name: "Save the book as .csv" }).click(),
  );
  expect(file.name).toBe("Kit book.csv");

  // 5 ft is one panel, a sixteenth more is two.
  const tried = await openPart(page, "Try a size");
  const first = tried.getByRole("group", { name: "Opening to try" });
  await first.getByRole("textbox", { name: "Width" }).fill("5'");
  await tried.getByRole("button", { name: "Put a second size beside it" }).click();
  const second = tried.getByRole("group", { name: "Second opening" });
  await second.getByRole("textbox", { name: "Width" }).fill(`5' 1/16"`);
  const splice = tried.locator("strong", { hasText: "1 SPLICE" });
  await splice.waitFor();
  await longestTask();
  const boundaries = await openPart(page, "Boundaries");
  await boundaries.getByText(`Width 5'-0"`).waitFor();
  console.log(`Boundaries in slices: longest task ${Math.round(await longestTask())} ms`);

  // The limit is changed in the grid, at first with a slip.
  const rows = await openPart(page, "Its rows");
  await rows.getByRole("combobox", { name: "Rows" }).selectOption("sizes");
  const panels = rows.getByRole("listitem").filter({ hasText: /^panels/ });
  await panels.getByRole("button", { name: /Go to/ }).click();
  await gridHasKeyboard(page);
  await page.keyboard.press("ArrowRight");
  await page.keyboard.press("ArrowRight");
  await page.keyboard.type("IF(leaf_widht <= 6', 1, 2)");
  await page.keyboard.press("Enter");
  const wrong = partOf(page, "What is wrong with the rows");
  await wrong.getByText(/Did you mean leaf_width/).waitFor();
  await picture("book-journey-error");
  await wrong
    .getByRole("listitem")
    .filter({ hasText: /Did you mean leaf_width/ })
    .getByRole("button", { name: /Go to/ })
    .click();
  await typeInGrid(page, "IF(leaf_width <= 6', 1, 2)");
  await panelOf(page).getByText("Every row works.").waitFor();
  await splice.waitFor({ state: "detached" });
  await boundaries.getByText(`Width 6'-0"`).waitFor();
  await picture("book-journey-boundary");

  // What the firm has otherwise than the starter; and back by taking the file over.
  const against = await openPart(page, "Against the starter");
  await against.getByText("1 row is not as in the starter.").waitFor();
  await page.getByLabel(/Take over rows/).setInputFiles({
    name: file.name,
    mimeType: "text/csv",
    buffer: Buffer.from(file.bytes),
  });
  await other.getByText("Kit book.csv: 1 row differs, 1 to take over").waitFor();
  await other.getByRole("button", { name: "Take over 1 row" }).click();
  await panelOf(page).getByText("Counted by the workbook’s own kit book, edition 2.").waitFor();
  await against.getByText("Every row is as in the starter.").waitFor();
  await picture("book-journey-imported");
  expect(faults()).toEqual([]);
  await close();
}, 180_000);
