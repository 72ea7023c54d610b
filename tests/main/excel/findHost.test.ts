/** @jest-environment jsdom */
import { afterEach, beforeEach, describe, expect, test } from "@jest/globals";
import { findHost } from "../../../src/main/excel/findHost";

/** Puts Office on the page, as the script does; `host` is what it answers, or that it never does. */
function office(host: string | null): void {
  const onReady = (): Promise<unknown> => {
    if (host === "never") return new Promise(() => undefined);
    if (host === "fails") return Promise.reject(new Error("half-loaded"));
    return Promise.resolve({ host, platform: null });
  };
  Object.assign(globalThis, { Office: { onReady, HostType: { Excel: "Excel" } } });
}

/** The page as it comes: the script is still on its way. */
const loading = (): HTMLScriptElement => {
  Object.defineProperty(document, "readyState", { value: "interactive", configurable: true });
  const script = document.createElement("script");
  script.id = "office";
  document.head.append(script);
  return script;
};

beforeEach(() => {
  document.head.replaceChildren();
});
afterEach(() => {
  Reflect.deleteProperty(globalThis, "Office");
  Reflect.deleteProperty(document, "readyState");
});

describe("findHost", () => {
  test.each([
    ["Excel", "excel"],
    ["Word", "none"],
    [null, "none"],
    ["fails", "none"],
  ])("Office that answers %s is %s", async (host, expected) => {
    office(host);
    expect(await findHost()).toBe(expected);
  });

  test("worksheet functions are held back and commands registered before Office is ready", async () => {
    const happened: string[] = [];
    Object.assign(globalThis, {
      Office: {
        onReady: () => {
          happened.push("ready");
          return Promise.resolve({ host: "Excel" });
        },
        HostType: { Excel: "Excel" },
      },
      CustomFunctions: { delayInitialization: () => happened.push("held back") },
    });
    await findHost({ atOffice: () => happened.push("registered") });
    Reflect.deleteProperty(globalThis, "CustomFunctions");
    expect(happened).toEqual(["held back", "registered", "ready"]);
  });

  test("Office that never answers is given up", async () => {
    office("never");
    expect(await findHost({ patience: 30 })).toBe("none");
  });

  test("waits for the script", async () => {
    const script = loading();
    const found = findHost();
    office("Excel");
    script.dispatchEvent(new Event("load"));
    expect(await found).toBe("excel");
  });

  test("a script that is blocked is not waited for", async () => {
    const script = loading();
    const found = findHost({ patience: 60_000 });
    script.dispatchEvent(new Event("error"));
    expect(await found).toBe("none");
  });

  test("nor one that was blocked before anyone listened", async () => {
    loading();
    const found = findHost({ patience: 60_000 });
    window.dispatchEvent(new Event("load"));
    expect(await found).toBe("none");
    Object.defineProperty(document, "readyState", { value: "complete", configurable: true });
    expect(await findHost({ patience: 60_000 })).toBe("none");
  });
});
