/** Keeps the open workbook in the browser as it changes, so that a reload loses nothing. */
import type { EmbeddedWorkbook } from "../../adapters/embedded/embeddedWorkbook";
import { openKept, type KeptWorkbook } from "../../adapters/embedded/keeping";
import type { WorkbookSnapshot } from "../../workbook/snapshot";

const name = "cribsheet";
/** In milliseconds. A large workbook takes longer to look at, and is looked at less often. */
const shortestPause = 60;
const longestPause = 2000;
const pausePerLook = 10;

export type Keeping = {
  /** Whether anything changed since the workbook was opened from a file or saved to one. */
  readonly isChanged: () => boolean;
  /** How many changes there were so far. */
  readonly changes: () => number;
  /** What was open after so many `changes`, or else now, is in a file as well; it is kept all the same. */
  readonly savedToFile: (changes?: number) => void;
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

/**
 * Keeps `workbook` a moment after each change. Who leaves before that is asked to wait, and who leaves
 * what was changed and is neither kept nor in a file is asked whether they mean to.
 */
export function keepWhileChanging(
  workbook: EmbeddedWorkbook,
  kept: KeptWorkbook,
  startsChanged: boolean,
  say: (text: string) => void,
): Keeping {
  let changes = 0;
  let inFile = startsChanged ? -1 : 0;
  const isChanged = (): boolean => changes !== inFile;
  let isSafe = true;
  let pause = shortestPause;
  let waiting: ReturnType<typeof setTimeout> | null = null;
  let underWay = 0;
  const stopWaiting = (): void => {
    if (waiting !== null) clearTimeout(waiting);
    waiting = null;
  };
  const keepNow = async (): Promise<void> => {
    stopWaiting();
    underWay += 1;
    try {
      const began = performance.now();
      const snapshot: WorkbookSnapshot = workbook.snapshot();
      const took = performance.now() - began;
      pause = Math.min(longestPause, Math.max(shortestPause, took * pausePerLook));
      await kept.keep(snapshot);
      isSafe = kept !== nowhere;
    } catch {
      isSafe = false;
      say("Not kept in this browser: save your work as a file.");
    } finally {
      underWay -= 1;
    }
  };
  workbook.watchAll((typed) => {
    if (typed) changes += 1;
    // A result that comes in by itself is not worth keeping unless something is kept anyway.
    if (!typed && !isChanged()) return;
    stopWaiting();
    waiting = setTimeout(() => void keepNow(), pause);
  });
  document.addEventListener("visibilitychange", () => {
    if (document.visibilityState === "hidden" && waiting !== null) void keepNow();
  });
  window.addEventListener("beforeunload", (event) => {
    if (waiting === null && underWay === 0 && (isSafe || !isChanged())) return;
    event.preventDefault();
    void keepNow();
  });
  return {
    isChanged,
    changes: () => changes,
    savedToFile: (saved = changes) => {
      inFile = saved;
      void keepNow();
    },
    forget: () => {
      inFile = changes;
      stopWaiting();
      return kept.forget();
    },
  };
}
