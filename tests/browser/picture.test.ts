/** The picture of an opening as a person uses it: pointer, keys, a narrow pane, light and dark. */
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

async function openPicture(page: Page): Promise<void> {
  await page.waitForSelector("[role=tab]", { state: "attached" });
  await page.getByRole("button", { name: "Cribsheet", exact: true }).click();
  await page.getByRole("tab", { name: "Jobs" }).click();
  await page.getByRole("button", { name: /Stock room/ }).click();
  await page.getByRole("button", { name: /^Pictures by opening/ }).click();
  await page
    .getByRole("button", { name: /Bi-parting.*show its picture/ })
    .first()
    .click();
  await page.waitForSelector("[role=listbox] [role=option]");
}

const litPlaces = (page: Page): Promise<number> =>
  page.locator("[role=option][aria-selected=true]").count();

/** Words of the drawing that do not fit into the pane. */
const wordsBeyond = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const panel = document.querySelector("[role=tabpanel]:not([hidden])");
    if (panel === null) return ["There is no view."];
    const edge = panel.getBoundingClientRect();
    const svg = panel.querySelector("svg[viewBox]:has([role=listbox])");
    return [...(svg?.querySelectorAll("text") ?? [])]
      .filter((each) => {
        const { left, right } = each.getBoundingClientRect();
        return left < edge.left || right > edge.right;
      })
      .map((each) => `beyond the edge: ${each.textContent}`);
  });

describe.each([
  [320, 800, true],
  [450, 1000, false],
])("an opening's picture, %s by %s pixels, dark: %s", (width, height, dark) => {
  test("and its list light each other, by pointer and by keys", async () => {
    const { page, picture, faults, close } = await browser.open("/", { width, height, dark });
    const look = async (name: string): Promise<void> => {
      const found = [...(await faultsOf(page)), ...(await wordsBeyond(page))];
      expect({ name, faults: found }).toEqual({ name, faults: [] });
      await picture(`picture-${width}-${dark ? "dark" : "light"}-${name}`);
    };
    await page.evaluate(axe.source);
    await openPicture(page);
    await page.mouse.move(5, 5);
    await look("opening");

    const trolleys = page.getByRole("button", { name: /TROLLEY/ }).first();
    await trolleys.hover();
    expect(await litPlaces(page)).toBeGreaterThan(1);
    await look("line");

    const place = page.getByRole("option", { name: /^strike 1/ });
    await place.scrollIntoViewIfNeeded();
    const box = await place.locator("rect").first().boundingBox();
    if (box === null) throw new Error("The strike is not drawn");
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    await expectLit(page, /^strike 1/);
    await page.mouse.move(5, 5);
    expect(await litPlaces(page)).toBe(0);

    await page.locator("[role=option][tabindex='0']").focus();
    await page.keyboard.press("End");
    await page.keyboard.press("ArrowLeft");
    expect(await litPlaces(page)).toBe(1);
    await look("place");
    await page.keyboard.press("Escape");
    const focused = page.locator("li > button[aria-pressed]:focus");
    expect(await focused.count()).toBe(1);

    // What has the focus is never under the picture, which stays above the list.
    const hidden = await page.evaluate(() => {
      const figure = document.querySelector("figure");
      const [, ...lines] = document.querySelectorAll<HTMLElement>("li > button[aria-pressed]");
      const under = [lines.at(-1), ...lines.reverse()].filter((line) => {
        line?.focus();
        const top = line?.getBoundingClientRect().top ?? 0;
        const isStuck = figure !== null && getComputedStyle(figure).position === "sticky";
        return isStuck && top < figure.getBoundingClientRect().bottom - 1;
      });
      return under.map((line) => line?.textContent);
    });
    expect(hidden).toEqual([]);

    expect(faults()).toEqual([]);
    await close();
  }, 120_000);
});

async function expectLit(page: Page, name: RegExp): Promise<void> {
  const lit = page.locator("[role=option][aria-selected=true]");
  expect(await lit.count()).toBe(1);
  expect(await lit.getAttribute("aria-label")).toMatch(name);
}
