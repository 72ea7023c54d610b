/** A pane over a workbook in memory, as a person has it before them. */
import { configure, render, screen, waitFor } from "@testing-library/react";
import userEvent from "@testing-library/user-event";
import { MessageChannel } from "node:worker_threads";
import { err, ok } from "../../src/core/base/result";
import { planHere } from "../../src/main/planning/planHere";
import { Pane, type PaneProps } from "../../src/pane/Pane";
import type { Workbook } from "../../src/workbook/workbook";

/** Nothing is laid out here, so nothing changes its size. */
class StillObserver {
  readonly observe = (): void => undefined;
  readonly disconnect = (): void => undefined;
}

// The browser that tests run in has none of its own.
Object.assign(globalThis, { MessageChannel, ResizeObserver: StillObserver });
configure({
  // A busy machine is no fault of the pane.
  asyncUtilTimeout: 20_000,
  // A whole pane in a message hides what is missing.
  getElementError: (message) => new Error(message?.split("\n\n")[0]),
});

/** Files named before a test gives them to the pane: what a page's reader would make of their bytes. */
export const filesToOpen = new Map<string, Workbook>();

/** Orders are worked out on the test's own thread. */
const testDoors: PaneProps["doors"] = {
  openFile: ({ name }) => {
    const workbook = filesToOpen.get(name);
    return Promise.resolve(workbook === undefined ? err("It is no workbook.") : ok(workbook));
  },
  planOrder: planHere,
};

/** The text of the status line, spaces evened. */
export const statusText = (): string =>
  (screen.queryAllByRole("status")[0]?.textContent ?? "").replace(/\s+/g, " ");

/** Renders the pane and waits until it has counted. */
export async function renderPane(
  workbook: Workbook,
  theme: PaneProps["theme"] = "light",
  doors: Partial<PaneProps["doors"]> = {},
): Promise<{ readonly user: ReturnType<typeof userEvent.setup>; readonly unmount: () => void }> {
  // The pane changes by itself, as its workbook does, and not only where a test acts on it.
  Object.assign(globalThis, { IS_REACT_ACT_ENVIRONMENT: false });
  const user = userEvent.setup();
  const { unmount } = render(
    <Pane workbook={workbook} doors={{ ...testDoors, ...doors }} theme={theme} />,
  );
  await waitFor(() => {
    if (screen.queryByRole("tablist") === null && screen.queryAllByRole("heading").length === 0) {
      throw new Error("The pane has not counted yet.");
    }
  });
  return { user, unmount };
}

export const openView = async (
  user: ReturnType<typeof userEvent.setup>,
  name: RegExp,
): Promise<HTMLElement> => {
  await user.click(screen.getByRole("tab", { name }));
  return screen.findByRole("tabpanel", { name });
};

/** @throws Error when there is none. */
export function first(elements: readonly HTMLElement[]): HTMLElement {
  const [element] = elements;
  if (element === undefined) throw new Error("There is none.");
  return element;
}
