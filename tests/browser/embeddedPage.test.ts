import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";
import { openBrowser, type TestBrowser } from "./browser";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

describe("the embedded page", () => {
  test.each([
    ["light", 1280, false],
    ["dark", 1280, true],
    ["narrow", 450, false],
  ])("opens with a spreadsheet and a pane: %s", async (name, width, dark) => {
    const { page, picture, faults, close } = await browser.open("/", { width, dark });
    await page.waitForSelector("canvas");
    await page.waitForTimeout(1500);
    await picture(`embedded-${name}`);
    expect(faults()).toEqual([]);
    await close();
  });
});
