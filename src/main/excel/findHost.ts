/**
 * Finds out whether the page runs inside Excel. Office.js answers in a moment there; elsewhere it
 * answers with another host, or (with a stale address, or blocked) not at all.
 */

/** Milliseconds. */
const longestWait = 8000;

/**
 * `"none"` for every other host, for no answer, and for an Office.js that did not load. `atOffice` is
 * called when Office.js is there and before it is ready: Excel may call what it registers at once.
 */
export async function findHost({
  patience = longestWait,
  atOffice = () => undefined,
}: {
  readonly patience?: number;
  readonly atOffice?: () => void;
} = {}): Promise<"excel" | "none"> {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const silence = new Promise<"none">((resolve) => {
    timer = setTimeout(() => resolve("none"), patience);
  });
  try {
    return await Promise.race([askOffice(atOffice), silence]);
  } finally {
    clearTimeout(timer);
  }
}

async function askOffice(atOffice: () => void): Promise<"excel" | "none"> {
  if (!(await officeLoaded())) return "none";
  try {
    holdFunctions();
    atOffice();
    const { host } = await Office.onReady();
    // Office.js knows more hosts than its types do: outside any host it answers null.
    return (host as Office.HostType | null) === Office.HostType.Excel ? "excel" : "none";
  } catch {
    // Half-loaded or in a host it does not know: no place for the pane either.
    return "none";
  }
}

/**
 * Excel calls worksheet functions as soon as Office is ready, and ours are registered a moment later,
 * by a file that is only then asked for. A call in between would show #N/A until Excel calculates
 * again, so Office.js is told to wait for the first registration.
 * (Source: Microsoft's page on troubleshooting custom functions, for #N/A; Office.js itself for the
 * rest, which its types leave out.)
 */
function holdFunctions(): void {
  if (!("CustomFunctions" in globalThis)) return;
  (CustomFunctions as { readonly delayInitialization?: () => void }).delayInitialization?.();
}

/** Waits for the script that the page asks for; `false` when it cannot be had. */
function officeLoaded(): Promise<boolean> {
  const isThere = (): boolean => "Office" in globalThis;
  const script = document.getElementById("office");
  // Once the page is complete every script of it has come, or failed before anyone listened.
  if (isThere() || script === null || document.readyState === "complete") {
    return Promise.resolve(isThere());
  }
  return new Promise((resolve) => {
    const answer = (): void => resolve(isThere());
    script.addEventListener("load", answer);
    script.addEventListener("error", answer);
    window.addEventListener("load", answer);
  });
}
