/** What can be seen to be wrong with the pane by a machine. */
import { source } from "axe-core";
import type axe from "axe-core";
import type { Page } from "playwright-core";

/** What is wrong with what the pane shows: for a screen reader, in contrast, in size. axe must be in the page. */
export async function faultsOf(page: Page): Promise<readonly string[]> {
  return page.evaluate(async () => {
    // What is still fading in has not its contrast yet; what turns for ever is not waited for.
    const soon = new Promise((resolve) => setTimeout(resolve, 400));
    const frames = (count: number): Promise<void> =>
      new Promise((resolve) => {
        requestAnimationFrame(() => resolve(count > 1 ? frames(count - 1) : undefined));
      });
    await frames(2);
    const moving = document.getAnimations().map(({ finished }) => finished.catch(() => undefined));
    await Promise.race([soon, Promise.all(moving)]);
    const pane = document.querySelector(".page-pane");
    if (pane === null) return ["There is no pane."];
    const { axe: checker } = globalThis as unknown as { axe: typeof axe };
    const { violations } = await checker.run(pane);
    const isText = (node: Node): boolean => node.nodeType === 3 && node.textContent?.trim() !== "";
    const small = [...pane.querySelectorAll("*")].filter(
      (each) =>
        [...each.childNodes].some(isText) && parseFloat(getComputedStyle(each).fontSize) < 12,
    );
    const panel = pane.querySelector("[role=tabpanel]:not([hidden])");
    const isWide = panel !== null && panel.scrollWidth > panel.clientWidth;
    return [
      ...violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`)),
      ...small.map((each) => `small: ${each.textContent}`),
      ...(isWide ? ["The view scrolls sideways."] : []),
    ];
  });
}

/** What axe finds wrong with what the page puts around spreadsheet and pane, dialogs included. */
export async function faultsAround(page: Page): Promise<readonly string[]> {
  await page.evaluate(source);
  return page.evaluate(async () => {
    const { axe: checker } = globalThis as unknown as { axe: typeof axe };
    const { violations } = await checker.run({ exclude: [".page-grid", ".page-pane"] });
    // What divides two landmarks is in neither.
    const isDivider = (id: string, html: string): boolean =>
      id === "region" && html.includes('role="separator"');
    return violations.flatMap(({ id, nodes }) =>
      nodes.filter(({ html }) => !isDivider(id, html)).map(({ html }) => `${id}: ${html}`),
    );
  });
}

/** What axe finds wrong with the spreadsheet's own toolbar, formula bar and sheet tabs. */
export async function faultsInGrid(page: Page): Promise<readonly string[]> {
  await page.evaluate(source);
  return page.evaluate(async () => {
    const { axe: checker } = globalThis as unknown as { axe: typeof axe };
    const { violations } = await checker.run(".page-grid");
    return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
  });
}
