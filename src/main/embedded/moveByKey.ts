/**
 * F6 goes from the spreadsheet to the pane, to the bar, and to the spreadsheet again. Tab cannot: in
 * a spreadsheet it goes to the next cell. Ctrl+S saves, wherever the keyboard is.
 */
import { firstLeft, focusPath } from "../../pane/parts/useKeptFocus";
import type { PageParts } from "./pageParts";

/** Listens on `body`; `focusGrid` gives the keyboard to the cells. */
export function moveByKey(body: HTMLElement, page: PageParts, focusGrid: () => void): void {
  const lastInPane = lastFocusIn(page.pane);
  const intoGrid = (): void => {
    page.showPart("grid");
    focusGrid();
  };
  const intoPane = (): void => {
    page.showPart("pane");
    const first = page.pane.querySelector<HTMLElement>(
      "button:enabled, input:enabled, select:enabled, a[href], [tabindex='0']",
    );
    (lastInPane() ?? first ?? page.pane).focus();
  };
  const intoBar = (): void => page.open.focus();
  body.addEventListener(
    "keydown",
    (event) => {
      const isSave = (event.ctrlKey || event.metaKey) && !event.altKey && event.key === "s";
      if (event.key !== "F6" && !isSave) return;
      event.preventDefault();
      event.stopPropagation();
      if (isSave) {
        page.save.click();
        return;
      }
      const at = document.activeElement;
      const here = [page.grid, page.pane].findIndex((part) => part.contains(at));
      const order = [intoGrid, intoPane, intoBar];
      const next =
        (order.length + (here < 0 ? 2 : here) + (event.shiftKey ? -1 : 1)) % order.length;
      order[next]?.();
    },
    true,
  );
}

/**
 * What had the keyboard last inside `part`; where that is gone, the nearest around it that can have
 * it. So whoever leaves to mend a cell and comes back goes on where they were.
 */
function lastFocusIn(part: HTMLElement): () => HTMLElement | undefined {
  let path: readonly HTMLElement[] = [];
  part.addEventListener("focusin", ({ target }) => {
    path = focusPath(target, part);
  });
  return () => firstLeft(path);
}
