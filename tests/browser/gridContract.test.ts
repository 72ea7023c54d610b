/** The contract of the port on the grid as people see it, in a real browser. */
import { afterAll, beforeAll, expect, test } from "@jest/globals";
import type { Workbook } from "../../src/workbook/workbook";
import { describeWorkbook } from "../workbook/contract";
import type { Rig } from "../workbook/rig";
import { openBrowser, type TestBrowser, type WatchedPage } from "./browser";
import type { PageRig } from "./rig/page";

let browser: TestBrowser | null = null;
let opened: WatchedPage | null = null;

beforeAll(async () => {
  browser = await openBrowser();
  opened = await browser.open("/rig.html");
  await opened.page.waitForFunction(() => "pageRig" in globalThis);
});
afterAll(() => browser?.close());

type Name = keyof PageRig;

/** Calls the page's rig by name. */
function call<N extends Name>(
  name: N,
  ...values: Parameters<PageRig[N]>
): Promise<Awaited<ReturnType<PageRig[N]>>> {
  if (opened === null) throw new Error("The page is not open yet.");
  return opened.page.evaluate(
    ([called, sent]) => {
      const { pageRig } = globalThis as unknown as {
        pageRig: Record<string, (...sent: unknown[]) => unknown>;
      };
      return pageRig[called]?.(...sent) as Awaited<ReturnType<PageRig[N]>>;
    },
    [name, values] as [string, unknown[]],
  );
}

describeWorkbook("embedded in a browser", async (setup): Promise<Rig> => {
  await call("setUp", setup);
  const workbook: Workbook = {
    host: "embedded",
    name: () => Promise.resolve(""),
    sheets: () => call("sheets"),
    activeSheet: () => call("activeSheet"),
    selection: () => call("selection"),
    read: (source) => call("read", source),
    watch: async (onChange) => {
      browser?.site.answer("/rig/change", (body) => {
        onChange(JSON.parse(body) as Parameters<typeof onChange>[0]);
        return "";
      });
      await call("watch");
      return () => call("stopWatching");
    },
    goTo: (place) => call("goTo", place),
    write: (drawings, { signal, onProgress } = {}) => {
      browser?.site.answer("/rig/progress", (body) => {
        onProgress?.(Number(body));
        return signal?.aborted === true ? "abort" : "";
      });
      return call("write", drawings, signal?.aborted === true);
    },
    readSetting: (key) => call("readSetting", key),
    writeSetting: (key, text) => call("writeSetting", key, text),
  };
  // The host's count of calls is asked for in between, when the page is at rest.
  let calls = 0;
  return {
    workbook: {
      ...workbook,
      write: async (...sent) => {
        const outcome = await workbook.write(...sent);
        calls = await call("calls");
        return outcome;
      },
    },
    type: (...sent) => call("type", ...sent),
    rename: (...sent) => call("rename", ...sent),
    protect: (sheet) => call("protect", sheet),
    protectStructure: () => call("protectStructure"),
    replacesInProtected: true,
    look: () => call("look"),
    failAt: (at, onwards = false) => void call("failAt", at, onwards),
    calls: () => calls,
    close: () => Promise.resolve(),
    hearsTyping: true,
  };
});

test.each([
  [70, 18],
  [2, 1],
  [40, 0],
])("whoever goes to row %i, column %i sees it", async (row, column) => {
  await call("setUp", { sheets: [{ name: "Long", cells: { A1: "first", T90: "last" } }] });
  const seen = await call("show", row, column);
  expect(seen?.startRow).toBeLessThanOrEqual(row);
  expect(seen?.endRow).toBeGreaterThanOrEqual(row);
  expect(seen?.startColumn).toBeLessThanOrEqual(column);
  expect(seen?.endColumn).toBeGreaterThanOrEqual(column);
});

test("the page kept its policy, and nothing broke but what was made to", () => {
  const own = opened?.faults().filter((fault) => !fault.includes("Refused call"));
  expect(own).toEqual([]);
});
