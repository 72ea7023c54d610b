/**
 * Finds out whether the page runs inside Excel. Office.js answers in a moment there; elsewhere it
 * answers with another host, or (with a stale address, or blocked) not at all.
 */

const longestWait = 8000;

/** `"none"` for every other host, for no answer, and for an Office.js that did not load. */
export async function findHost(): Promise<"excel" | "none"> {
  const answer = await Promise.race([askOffice(), after(longestWait)]);
  return answer;
}

async function askOffice(): Promise<"excel" | "none"> {
  if (!(await officeLoaded())) return "none";
  const { host } = await Office.onReady();
  // Office.js knows more hosts than its types do: outside any host it answers null.
  return (host as Office.HostType | null) === Office.HostType.Excel ? "excel" : "none";
}

/** Waits for the script that the page asks for; `false` when it cannot be had. */
function officeLoaded(): Promise<boolean> {
  const isThere = (): boolean => "Office" in globalThis;
  const script = document.getElementById("office");
  if (isThere() || script === null) return Promise.resolve(isThere());
  return new Promise((resolve) => {
    script.addEventListener("load", () => resolve(isThere()));
    script.addEventListener("error", () => resolve(false));
  });
}

const after = (milliseconds: number): Promise<"none"> =>
  new Promise((resolve) => {
    setTimeout(() => resolve("none"), milliseconds);
  });
