/** The purchasing agent's way through the Order view, in the page as it is served. */
import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";
import { source as axeSource } from "axe-core";
import type { Page } from "playwright-core";
import { openBrowser, type TestBrowser, type WatchedPage } from "./browser";
import { faultsOf } from "./paneFaults";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

const headings = "Job,Mark,Qty,Type,Width,Height,Post height,Tail post,Floor";
const pier = [headings, `"Dock, pier 3 (invented)",P-1,4,sliding door,6',7',8',yes,concrete`].join(
  "\n",
);

/** Drops a text file on the part of the view that takes files. */
const dropFile = (page: Page, name: string, text: string): Promise<void> =>
  page.evaluate(
    ([fileName, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content ?? ""], fileName ?? ""));
      const zone = document.querySelector("[data-takes-files]");
      for (const kind of ["dragover", "drop"]) {
        const options = { bubbles: true, cancelable: true, dataTransfer: transfer };
        zone?.dispatchEvent(new DragEvent(kind, options));
      }
    },
    [name, text],
  );

async function openOrder(opened: WatchedPage): Promise<Page> {
  const { page } = opened;
  await page.waitForSelector("[role=tab]", { state: "attached" });
  const toPane = page.getByRole("button", { name: "Cribsheet", exact: true });
  if (await toPane.isVisible()) await toPane.click();
  await page.getByRole("tab", { name: "Order", exact: true }).click();
  await page.getByRole("button", { name: /^Work out the order/ }).waitFor();
  return page;
}

/** The keyboard is the spreadsheet's, wherever it was before. */
async function intoGrid(page: Page): Promise<void> {
  const isThere = (): Promise<boolean> =>
    page.evaluate(() => (document.activeElement?.closest(".page-grid") ?? null) !== null);
  for (let press = 0; press < 3 && !(await isThere()); press += 1) await page.keyboard.press("F6");
}

async function workOut(page: Page): Promise<void> {
  await page.locator("button:not([aria-disabled=true])", { hasText: "Work out the order" }).click();
  await page.getByRole("region", { name: "What the order comes to" }).waitFor();
  await page.getByRole("button", { name: /^Work out the order.*again$/ }).waitFor();
}

test("two jobs and a workbook dropped in: ordered, sent, changed, the difference ordered, received", async () => {
  const opened = await browser.open("/");
  const page = await openOrder(opened);
  const press = (name: RegExp | string) => page.getByRole("button", { name }).click();
  await page.getByRole("checkbox", { name: /^Plant cage/ }).uncheck();
  await dropFile(page, "pier.csv", pier);
  await page.getByRole("checkbox", { name: /^Dock, pier 3/ }).waitFor();
  // The page's own way with a dropped file, which opens it, is not taken.
  expect(await page.title()).toContain("Demo");
  await workOut(page);
  const summary = page.getByRole("region", { name: "What the order comes to" });
  expect(await summary.textContent()).toMatch(/Order for 3 jobs.*Saves \$/s);

  await press("Keep as a draft order");
  await page.getByText(/Kept as the draft PO-\d+-0001/).waitFor();
  await press(/^Mark as sent: PO-/);
  await press(/^Mark as sent: PO-/);
  await page.getByText(/is marked as sent/).waitFor();
  await page.getByText(/is for the difference/).waitFor();
  await opened.picture("order-wide-sent");

  // More is needed: an opening that was not counted is mended in the spreadsheet.
  await page.getByRole("tab", { name: /To mend/ }).click();
  await page.getByRole("button", { name: /A-113/ }).first().click();
  await intoGrid(page);
  await page.keyboard.type("7'-0\"");
  await page.keyboard.press("Enter");
  await page.getByRole("tab", { name: "Order", exact: true }).click();
  const changed = page.getByText(/has changed since/);
  await changed.waitFor();
  await page.getByRole("status").filter({ hasText: "31of 40" }).waitFor();
  const before = await summary.textContent();
  await workOut(page);
  await changed.waitFor({ state: "hidden" });
  await opened.picture("order-wide-difference");
  expect(await summary.textContent()).not.toBe(before);
  await press("Keep as a draft order");
  await page.getByText(/Kept as the draft PO-\d+-0002/).waitFor();
  await press(/^Mark as sent: PO-\d+-0002/);
  await press(/^Mark as sent: PO-\d+-0002/);
  await page.getByText(/0002 is marked as sent/).waitFor();
  await press(/^Some has come: PO-\d+-0001/);
  const form = page.getByRole("form", { name: /^What has come of PO-\d+-0001/ });
  await form
    .getByRole("textbox", { name: /^Came of / })
    .first()
    .fill("1 pcs");
  await form
    .getByRole("checkbox", { name: /^No more of / })
    .nth(2)
    .check();
  await form.getByLabel(/^Why the rest/).fill("sold out");
  await opened.picture("order-wide-some-came");
  await form.getByRole("button", { name: /^Take this in/ }).click();
  await page.getByText(/0001 is part received/).waitFor();
  await opened.picture("order-wide-part-received");
  await press(/^Mark as received: PO-\d+-0001/);
  await press(/^Mark as received: PO-\d+-0001/);
  await page.getByText(/0001 is received short/).waitFor();
  await page.getByRole("button", { name: "Stock now", exact: true }).click();
  await page.waitForTimeout(500);
  await opened.picture("order-wide-received");
  expect(opened.faults()).toEqual([]);
  await opened.close();
}, 240_000);

describe.each([
  [320, true],
  [450, false],
])("the order, %s pixels wide, dark: %s", (width, dark) => {
  test("is sound, all parts of it open", async () => {
    const opened = await browser.open("/", { width, height: 900, dark });
    const page = await openOrder(opened);
    const name = `order-${width}-${dark ? "dark" : "light"}`;
    await page.evaluate(axeSource);
    await dropFile(page, "copy.csv", pier.replace(/"Dock[^"]*"/, '"Tool crib, Alder plant"'));
    await page.getByRole("radio", { name: /They are two jobs/ }).waitFor();
    expect(await faultsOf(page)).toEqual([]);
    await opened.picture(`${name}-jobs`);
    await page.getByRole("radio", { name: /They are two jobs/ }).check();
    await workOut(page);
    await page.getByRole("region", { name: "What the order comes to" }).scrollIntoViewIfNeeded();
    await opened.picture(`${name}-sum`);
    for (const part of ["Lines", "By supplier", "Cut list", "Now or later"]) {
      const button = page.getByRole("button", { name: new RegExp(`^${part}`) });
      await button.click();
      if (part === "Lines") await page.getByText("CB 1/4 x 1/2", { exact: true }).click();
      await button.evaluate((each) => each.scrollIntoView());
      expect({ part, faults: await faultsOf(page) }).toEqual({ part, faults: [] });
      await opened.picture(`${name}-${part.toLowerCase().replaceAll(" ", "-")}`);
      await button.click();
    }
    const press = (label: RegExp | string) => page.getByRole("button", { name: label }).click();
    await press("Keep as a draft order");
    await page.getByText(/Kept as the draft PO-/).waitFor();
    await press(/^Mark as sent: PO-/);
    await press(/^Mark as sent: PO-/);
    await page.getByText(/is marked as sent/).waitFor();
    await press(/^Some has come: PO-/);
    const form = page.getByRole("form", { name: /^What has come of PO-/ });
    await form
      .getByRole("textbox", { name: /^Came of / })
      .first()
      .fill("9999");
    await form
      .getByRole("checkbox", { name: /^No more of / })
      .nth(1)
      .check();
    expect(await faultsOf(page)).toEqual([]);
    await form.scrollIntoViewIfNeeded();
    await opened.picture(`${name}-some-came`);
    await form.getByLabel(/^Why the rest/).fill("sold out");
    await form.getByRole("button", { name: /^Take this in/ }).click();
    await form.getByText(/More came than is to come/).waitFor();
    expect(await faultsOf(page)).toEqual([]);
    await form.getByText(/More came than is to come/).scrollIntoViewIfNeeded();
    await opened.picture(`${name}-more-came`);
    expect(opened.faults()).toEqual([]);
    await opened.close();
  }, 120_000);
});

/** Sliding leaves of two hundred widths: each wants its own track and guide lengths. */
const manyRows = (widths: number, each: number): string =>
  [
    headings,
    ...Array.from(
      { length: widths },
      (_, at) =>
        `Long wall (invented),W-${at},${each},sliding door,"${30 + at * 0.5}""",84,96,yes,concrete`,
    ),
  ].join("\n");

test("200 lengths and 5,000 pieces are planned while the page answers, and stopped at any time", async () => {
  const opened = await browser.open("/");
  const page = await openOrder(opened);
  await dropFile(page, "long.csv", manyRows(200, 25));
  await page.getByRole("checkbox", { name: /^Long wall/ }).waitFor();
  await page.waitForTimeout(500);
  await opened.longestTask();
  const began = Date.now();
  await page.locator("button:not([aria-disabled=true])", { hasText: "Work out the order" }).click();
  await page.getByText(/^Cutting/).waitFor();
  await opened.picture("order-wide-cutting");
  await page.getByRole("button", { name: /^Stop and take the best so far/ }).click();
  await page.getByRole("region", { name: "What the order comes to" }).waitFor();
  const stopped = Date.now() - began;
  await page.getByRole("button", { name: /^Work out the order.*again$/ }).waitFor();
  const whileStopped = await opened.longestTask();
  await page.getByLabel("Longest search of the cuts").selectOption("5");
  const again = Date.now();
  await workOut(page);
  const worked = Date.now() - again;
  await page.getByRole("button", { name: /^Cut list/ }).click();
  const words = await page.getByText(/no plan (has|costs)/).allTextContents();
  console.log(
    `200 lengths: longest task ${Math.round(whileStopped)} ms until stopped (${stopped} ms), ` +
      `${Math.round(await opened.longestTask())} ms until worked out (${worked} ms). ${words.join(" ")}`,
  );
  expect(opened.faults()).toEqual([]);
  await opened.close();
}, 240_000);

test("where the solver is not to be had there is a plan all the same, with its gap", async () => {
  const opened = await browser.open("/");
  let refused = 0;
  await opened.page.route(/\.wasm$/, async (route) => {
    refused += 1;
    await route.abort();
  });
  const page = await openOrder(opened);
  await workOut(page);
  await page.getByRole("button", { name: /^Cut list/ }).click();
  await page
    .getByText(/no plan (has|costs)/)
    .first()
    .waitFor();
  expect(refused).toBeGreaterThan(0);
  await opened.close();
}, 120_000);
