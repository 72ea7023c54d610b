/**
 * The test browser: opens pages of the site and watches them. A page that asks another host for
 * anything, breaks its content policy or logs an error fails the test that opened it.
 */
import { mkdirSync } from "node:fs";
import { readFile } from "node:fs/promises";
import path from "node:path";
import { chromium, type Browser, type Page } from "playwright-core";
import { openSite, type Site } from "./site";

export type TestBrowser = {
  readonly site: Site;
  readonly open: (address: string, options?: PageOptions) => Promise<WatchedPage>;
  readonly close: () => Promise<void>;
};

export type PageOptions = {
  readonly width?: number;
  readonly height?: number;
  readonly dark?: boolean;
  /**
   * What scripts of other hosts say, by address; `null` is a script that cannot be had. To ask for
   * one of these is no fault. No request leaves this machine.
   */
  readonly otherHosts?: Readonly<Record<string, string | null>>;
  /** A page that shares what the browser keeps with this one, as another tab does. */
  readonly beside?: WatchedPage;
};

export type SavedFile = { readonly name: string; readonly bytes: Uint8Array };

export type WatchedPage = {
  readonly page: Page;
  /** What the page did that it must not, so far. */
  readonly faults: () => readonly string[];
  /** The longest that the page was busy without a pause, in milliseconds, since the last call. */
  readonly longestTask: () => Promise<number>;
  /** Waits for what is saved as a file by `act`. */
  readonly saved: (act: () => Promise<void>) => Promise<SavedFile>;
  /** Saves a picture for people to look at, as out/screenshots/NAME.png. */
  readonly picture: (name: string) => Promise<void>;
  readonly close: () => Promise<void>;
};

/** Starts the browser that `globalSetup` found, and serves the pages that it built. */
export async function openBrowser(): Promise<TestBrowser> {
  const executablePath = process.env["CRIBSHEET_BROWSER"];
  const folder = process.env["CRIBSHEET_SITE"];
  if (executablePath === undefined || folder === undefined) {
    throw new Error("Browser tests run in the jest project that has their global set-up.");
  }
  const site = await openSite(folder);
  const browser = await chromium.launch({ executablePath, args: launchArguments() });
  return {
    site,
    open: (address, options = {}) => openWatched(browser, site, address, options),
    close: async () => {
      await browser.close();
      await site.close();
    },
  };
}

/** A browser run by root or in a container has no sandbox of its own; none talks to its maker. */
function launchArguments(): string[] {
  const isRoot = process.getuid?.() === 0;
  return [
    ...(isRoot || process.env["CI"] !== undefined ? ["--no-sandbox"] : []),
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-default-apps",
    "--disable-dev-shm-usage",
    "--disable-sync",
    "--no-first-run",
    "--no-default-browser-check",
  ];
}

/** Makes the page as slow as a busy machine, by `CRIBSHEET_SLOW` times, to find tests that do not wait. */
async function slowDown(page: Page): Promise<void> {
  const rate = Number(process.env["CRIBSHEET_SLOW"] ?? 1);
  if (rate === 1) return;
  page.setDefaultTimeout(30_000 * rate);
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate });
}

/** Runs in the page before its own scripts. */
function watchInside(): void {
  const tasks: number[] = [];
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) tasks.push(duration);
  }).observe({ entryTypes: ["longtask"] });
  const broken: string[] = [];
  document.addEventListener("securitypolicyviolation", ({ violatedDirective, blockedURI }) => {
    broken.push(`${violatedDirective} ${blockedURI}`);
  });
  Object.assign(globalThis, { testWatch: { tasks, broken } });
}

async function openWatched(
  browser: Browser,
  site: Site,
  address: string,
  { width = 1280, height = 800, dark = false, otherHosts = {}, beside }: PageOptions,
): Promise<WatchedPage> {
  const context =
    beside?.page.context() ??
    (await browser.newContext({
      viewport: { width, height },
      colorScheme: dark ? "dark" : "light",
    }));
  const page = await context.newPage();
  const faults: string[] = [];
  await page.route(
    (url) => url.origin !== site.origin,
    async (route) => {
      const wanted = route.request().url();
      const body = otherHosts[wanted];
      if (body === undefined) faults.push(`asked another host for ${wanted}`);
      if (typeof body === "string") {
        await route.fulfill({ body, contentType: "text/javascript" });
      } else await route.abort();
    },
  );
  page.on("console", (message) => {
    // The browser logs a script that cannot be had; where that is meant to happen it is no fault.
    const isMeant = otherHosts[message.location().url] === null;
    if (message.type() === "error" && !isMeant) faults.push(`logged: ${message.text()}`);
  });
  page.on("pageerror", (fault) => faults.push(`threw: ${fault.message}`));
  await page.addInitScript(watchInside);
  await slowDown(page);
  await page.goto(`${site.origin}${address}`);
  return {
    page,
    faults: () => faults,
    longestTask: () =>
      page.evaluate(async () => {
        // The observer hears of a task a moment after it ended.
        await new Promise((resolve) => setTimeout(resolve, 50));
        const { tasks } = (globalThis as unknown as { testWatch: { tasks: number[] } }).testWatch;
        return Math.max(0, ...tasks.splice(0));
      }),
    saved: async (act) => {
      const [download] = await Promise.all([page.waitForEvent("download"), act()]);
      return { name: download.suggestedFilename(), bytes: await readFile(await download.path()) };
    },
    picture: async (name) => {
      const folder = path.join(process.cwd(), "out/screenshots");
      mkdirSync(folder, { recursive: true });
      await page.screenshot({ path: path.join(folder, `${name}.png`) });
    },
    close: () => (beside === undefined ? context.close() : page.close()),
  };
}
