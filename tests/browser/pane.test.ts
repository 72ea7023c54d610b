import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";
import axe from "axe-core";
import { openBrowser, type TestBrowser } from "./browser";
import { chooseManyJobs } from "./manyJobs";
import { faultsOf } from "./paneFaults";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe.each([
  [320, true],
  [450, false],
])("the pane, %s pixels wide, dark: %s", (width, dark) => {
  test("is sound in every view", async () => {
    const opened = await browser.open("/", { width, height: 800, dark });
    const { page, picture, faults, close } = opened;
    const look = async (name: string): Promise<void> => {
      expect({ name, faults: await faultsOf(page) }).toEqual({ name, faults: [] });
      await picture(`pane-${width}-${dark ? "dark" : "light"}-${name}`);
    };
    await page.waitForSelector("[role=tab]", { state: "attached" });
    await page.getByRole("button", { name: "Cribsheet", exact: true }).click();
    await page.evaluate(axe.source);
    await page.getByRole("button", { name: /Good to know/ }).click();
    await look("mend");
    await page.getByRole("tab", { name: "Jobs" }).click();
    await look("jobs");
    await page.getByRole("button", { name: /Stock room/ }).click();
    await look("lines");
    await page
      .getByRole("button", { name: /^Panel, .*show why/ })
      .first()
      .click();
    const closed = page.locator("[role=tabpanel]:not([hidden]) li button[aria-expanded=false]");
    for (let depth = 0; depth < 4; depth += 1) await closed.first().click();
    await look("reasons");
    await page.getByRole("tab", { name: "Sheets" }).click();
    await look("sheets");
    await page.getByRole("button", { name: /^Write sheets/ }).click();
    await page.getByText(/sheets written/).waitFor();
    await look("written");
    for (const name of ["Order", "Margins", "Changes", "Kit book"]) {
      await page.getByRole("tab", { name, exact: true }).click();
      await page.locator("[role=tabpanel]:not([hidden]) button").first().waitFor();
      await look(name.toLowerCase());
    }
    await page.getByRole("tab", { name: "Set-up" }).click();
    for (const part of ["Kit book", "Items and costs", "Lengths and money"]) {
      await page.getByRole("button", { name: part, exact: true }).click();
    }
    await look("set-up");
    expect(faults()).toEqual([]);
    await close();
  }, 120_000);
});

test("ten thousand openings are counted while the page answers", async () => {
  const { page, faults, longestTask, close } = await browser.open("/");
  await page.getByRole("tab", { name: "Jobs" }).waitFor();
  await chooseManyJobs(page, 10, 1_000);
  // The grid takes the file in as one task; from here on it is the pane's work.
  await longestTask();
  await page.getByRole("status").filter({ hasText: "10,000" }).waitFor();
  console.log(`Counting 10,000 openings: longest task ${Math.round(await longestTask())} ms`);
  expect(faults()).toEqual([]);
  await close();
}, 120_000);
