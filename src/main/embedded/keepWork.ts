/** Keeps the open workbook in the browser as it changes, so that a reload loses nothing. */
import type { EmbeddedWorkbook } from "../../adapters/embedded/embeddedWorkbook";
import { openKept, type KeptWorkbook } from "../../adapters/embedded/keeping";
import type { WorkbookSnapshot } from "../../workbook/snapshot";

const name = "cribsheet";
const pauseBeforeKeeping = 800;

export type Keeping = {
  /** Whether anything changed since the workbook was opened from a file or saved to one. */
  readonly isChanged: () => boolean;
  /** What is open is now in a file as well; it is kept all the same. */
  readonly savedToFile: () => void;
  /** What is open is as good as new: nothing is kept until it changes. */
  readonly forget: () => Promise<void>;
};

const nowhere: KeptWorkbook = {
  read: () => Promise.resolve(null),
  keep: () => Promise.resolve(),
  forget: () => Promise.resolve(),
};

/** What is kept in this browser, or a place that keeps nothing where `warn` is told why. */
export async function openKeptWorkbook(warn: (text: string) => void): Promise<KeptWorkbook> {
  if (!(await isOnlyPage())) {
    warn(
      "This page is open in another tab or window. What you do here is not kept when you leave; save it as a file, or close this one and go on there.",
    );
    return nowhere;
  }
  try {
    return await openKept(name);
  } catch {
    warn(
      "This browser keeps nothing for this page, perhaps because the window is private. Save your work as a file before you leave.",
    );
    return nowhere;
  }
}

/** Two pages would overwrite each other's work. The first one holds a lock as long as it is open. */
const isOnlyPage = (): Promise<boolean> =>
  new Promise((resolve) => {
    if (!("locks" in navigator)) {
      resolve(true);
      return;
    }
    void navigator.locks.request(name, { ifAvailable: true }, (lock) => {
      resolve(lock !== null);
      return lock === null ? undefined : new Promise<never>(() => undefined);
    });
  });

/** Keeps `workbook` a moment after each change, and at once when the page is left. */
export function keepWhileChanging(
  workbook: EmbeddedWorkbook,
  kept: KeptWorkbook,
  startsChanged: boolean,
  say: (text: string) => void,
): Keeping {
  let changed = startsChanged;
  let waiting: ReturnType<typeof setTimeout> | null = null;
  const stopWaiting = (): void => {
    if (waiting !== null) clearTimeout(waiting);
    waiting = null;
  };
  const keepNow = (): void => {
    stopWaiting();
    const snapshot: WorkbookSnapshot = workbook.snapshot();
    kept.keep(snapshot).catch(() => {
      say("Not kept in this browser: save your work as a file.");
    });
  };
  workbook.watchAll((typed) => {
    changed ||= typed;
    // A result that comes in by itself is not worth keeping unless something is kept anyway.
    if (!typed && !changed) return;
    stopWaiting();
    waiting = setTimeout(keepNow, pauseBeforeKeeping);
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden" && waiting !== null) keepNow();
  });
  window.addEventListener("pagehide", () => {
    if (waiting !== null) keepNow();
  });
  return {
    isChanged: () => changed,
    savedToFile: () => {
      changed = false;
      keepNow();
    },
    forget: () => {
      changed = false;
      stopWaiting();
      return kept.forget();
    },
  };
}
