import { afterAll, afterEach, beforeAll, describe, expect, test } from "@jest/globals";
import { openFile } from "../../src/adapters/xlsx/openFile";
import { snapshotBytes } from "../../src/adapters/xlsx/snapshotBytes";
import type { CellValue } from "../../src/core/base/cell";
import { blankSheet, workbookOf } from "../../src/workbook/blankSheet";
import type { CellSnapshot, WorkbookSnapshot } from "../../src/workbook/snapshot";
import {
  openBrowser,
  type PageOptions,
  type SavedFile,
  type TestBrowser,
  type WatchedPage,
} from "./browser";
import { faultsAround, faultsInGrid } from "./paneFaults";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

let opened: WatchedPage[] = [];
afterEach(async () => {
  const faults = opened.flatMap((each) => each.faults());
  for (const each of opened.reverse()) await each.close();
  opened = [];
  expect(faults).toEqual([]);
});

/** Opens the page, and waits for the spreadsheet in it. */
async function openPage(options: PageOptions = {}, address = "/"): Promise<WatchedPage> {
  const watched = await browser.open(address, options);
  opened.push(watched);
  await gridShows(watched);
  return watched;
}

async function gridShows({ page }: WatchedPage): Promise<void> {
  await page.waitForSelector(".page-grid canvas");
  await page.waitForFunction(
    () => document.querySelector(".page-status")?.textContent !== "Opening…",
  );
  // The first drawing of the cells comes a moment after the canvas.
  await page.waitForTimeout(300);
}

/** A place inside a cell of the first column, in the pixels of the page. */
const cellAt = { column: 70, row: (row: number): number => 140 + (row - 1) * 21 };

/** A person clicks a cell of column A (a row below the frozen ones) and types. */
async function typeInColumnA({ page }: WatchedPage, row: number, text: string): Promise<void> {
  await page.mouse.click(cellAt.column, cellAt.row(row));
  await page.keyboard.type(text);
  await page.keyboard.press("Enter");
}

/** Waits until the browser keeps the workbook with this text in it. */
async function isKept({ page }: WatchedPage, text: string): Promise<void> {
  await page.waitForFunction(
    (wanted) =>
      new Promise<boolean>((resolve) => {
        const request = indexedDB.open("cribsheet");
        request.onsuccess = () => {
          const database = request.result;
          const found = database
            .transaction("workbook", "readonly")
            .objectStore("workbook")
            .get("current");
          found.onsuccess = () => {
            database.close();
            resolve(JSON.stringify(found.result ?? null).includes(wanted));
          };
        };
      }),
    text,
  );
}

const save = (watched: WatchedPage): Promise<SavedFile> =>
  watched.saved(() => watched.page.getByRole("button", { name: "Save .xlsx" }).click());

function snapshotOf({ bytes, name }: SavedFile): WorkbookSnapshot {
  const file = openFile(bytes, name);
  if (!file.ok) throw new Error(file.error.message);
  return file.value.snapshot();
}

const cellOf = (workbook: WorkbookSnapshot, row: number, column: number): CellSnapshot | null =>
  workbook.sheets[0]?.rows[row]?.[column] ?? null;

/** A workbook of one sheet. */
const workbook = (name: string, rows: readonly (readonly CellValue[])[]): WorkbookSnapshot =>
  workbookOf(name, [
    {
      ...blankSheet("Schedule"),
      rows: rows.map((cells) => cells.map((value) => ({ value }))),
    },
  ]);

const asFile = (name: string, content: WorkbookSnapshot | string) => ({
  name,
  mimeType: "application/octet-stream",
  buffer: Buffer.from(typeof content === "string" ? content : snapshotBytes(content)),
});

const choose = ({ page }: WatchedPage, file: ReturnType<typeof asFile>): Promise<void> =>
  page.locator("input[type=file]").setInputFiles(file);

const drop = ({ page }: WatchedPage, name: string): Promise<void> =>
  page.evaluate((fileName) => {
    const data = new DataTransfer();
    data.items.add(new File(["Mark\nD7\n"], fileName));
    const target = document.querySelector(".page-grid canvas");
    for (const type of ["dragenter", "dragover", "drop"]) {
      target?.dispatchEvent(
        new DragEvent(type, { dataTransfer: data, bubbles: true, cancelable: true }),
      );
    }
  }, name);

const status = ({ page }: WatchedPage): Promise<string | null> =>
  page.locator(".page-status").textContent();

describe("the embedded page", () => {
  test.each<[string, PageOptions]>([
    ["wide, light", { width: 1280 }],
    ["wide, dark", { width: 1280, dark: true }],
    ["450 wide", { width: 450 }],
    ["320 wide", { width: 320 }],
  ])("shows a spreadsheet and a pane: %s", async (name, options) => {
    const watched = await openPage(options);
    const { page, picture } = watched;
    await picture(`embedded page, ${name}`);
    const wide = (options.width ?? 0) > 800;
    expect(await page.locator(".page-grid").isVisible()).toBe(true);
    expect(await page.locator(".page-pane").isVisible()).toBe(wide);
    if (wide) return;
    await page.getByRole("button", { name: "Cribsheet" }).click();
    expect(await page.locator(".page-grid").isVisible()).toBe(false);
    expect(await page.locator(".page-pane").isVisible()).toBe(true);
    await page.getByRole("button", { name: "Spreadsheet" }).click();
    await page.waitForTimeout(300);
    await picture(`embedded page, ${name}, back in the spreadsheet`);
  });

  test("the pane is as wide as the person makes it, between 320 and 480", async () => {
    const { page } = await openPage();
    const width = async (): Promise<number | undefined> =>
      (await page.locator(".page-pane").boundingBox())?.width;
    const divider = page.getByRole("separator", { name: "Width of the pane" });
    await divider.focus();
    for (let press = 0; press < 12; press++) await page.keyboard.press("ArrowLeft");
    expect(await width()).toBe(480);
    for (let press = 0; press < 12; press++) await page.keyboard.press("ArrowRight");
    expect(await width()).toBe(320);
    const line = await divider.boundingBox();
    await page.mouse.move((line?.x ?? 0) + 2, 400);
    await page.mouse.down();
    await page.mouse.move((line?.x ?? 0) - 58, 400);
    await page.mouse.up();
    expect(await width()).toBeGreaterThan(360);
    const chosen = await width();
    await page.reload();
    await page.waitForSelector(".page-pane");
    expect(await width()).toBe(chosen);
  });

  test("F6 goes through its parts, so that no mouse is needed", async () => {
    const { page } = await openPage();
    await page.getByRole("button", { name: "Open file…" }).focus();
    const part = (): Promise<string> =>
      page.evaluate(() => {
        const at = document.activeElement;
        return at?.closest(".page-pane, .page-bar, .page-grid")?.className ?? "elsewhere";
      });
    const parts: string[] = [];
    for (let press = 0; press < 4; press++) {
      await page.keyboard.press("F6");
      parts.push(await part());
    }
    expect(parts.map((name) => name.split(" ")[0])).toEqual([
      "page-grid",
      "page-pane",
      "page-bar",
      "page-grid",
    ]);
    await page.keyboard.press("Shift+F6");
    expect(await part()).toContain("page-bar");
  });
});

test.each<[string, PageOptions]>([
  ["1280 wide, light", { width: 1280 }],
  ["320 wide, dark", { width: 320, dark: true }],
])("what is around spreadsheet and pane can be read and named: %s", async (_, options) => {
  const { page } = await openPage(options);
  expect(await faultsAround(page)).toEqual([]);
  for (const name of ["Keys", "Start over"]) {
    const opener = page.getByRole("button", { name, exact: true });
    await opener.focus();
    await page.keyboard.press("Enter");
    await page.getByRole("dialog").waitFor();
    expect(await faultsAround(page)).toEqual([]);
    await page.keyboard.press("Escape");
    expect(await opener.evaluate((each) => each === document.activeElement)).toBe(true);
  }
});

test.each<[string, PageOptions]>([
  ["1280 wide, light", { width: 1280 }],
  ["320 wide, dark", { width: 320, dark: true }],
])("the spreadsheet's own controls have names and roles: %s", async (_, options) => {
  const { page } = await openPage(options);
  expect(await faultsInGrid(page)).toEqual([]);
  const bold = page.getByRole("button", { name: "Bold", exact: true });
  if (options.width === 1280) expect(await bold.isVisible()).toBe(true);
});

test("Tab goes from the bar over the toolbar to the cells, and stops at nothing out of sight", async () => {
  const { page } = await openPage();
  const at = (): Promise<{ name: string; isSeen: boolean }> =>
    page.evaluate(() => {
      const here = document.activeElement ?? document.body;
      const { left, right, top, bottom } = here.getBoundingClientRect();
      const name = here.getAttribute("aria-label") ?? here.textContent;
      // Of the cells, the selection is what is seen.
      const isCells = name === "Cells" && here.closest(".page-grid") !== null;
      const isInside = left >= 0 && top >= 0 && right <= innerWidth && bottom <= innerHeight;
      return { name, isSeen: here === document.body || isCells || isInside };
    });
  const walk = async (key: string, last: string): Promise<readonly string[]> => {
    const names: string[] = [];
    for (let presses = 0; presses < 40; presses += 1) {
      await page.keyboard.press(key);
      const { name, isSeen } = await at();
      expect({ name, isSeen }).toEqual({ name, isSeen: true });
      names.push(name);
      if (name === last) break;
    }
    return names;
  };
  await page.getByRole("button", { name: "Keys" }).focus();
  const forwards = await walk("Tab", "Cells");
  expect(forwards).toEqual(expect.arrayContaining(["Bold", "Text color", "Selected cells"]));
  expect(forwards.at(-1)).toBe("Cells");
  // The other way, from what divides spreadsheet and pane.
  await page.getByRole("separator").focus();
  expect(await walk("Shift+Tab", "Cells")).toEqual(expect.arrayContaining(["Schedule"]));
  // Past the end of the pane comes the browser, and then the top of the page.
  await page.getByRole("button", { name: /Good to know/ }).focus();
  await page.keyboard.press("Tab");
  expect((await at()).isSeen).toBe(true);
  const part = await page.evaluate(
    () =>
      document.activeElement?.closest(".page-bar")?.className ?? document.activeElement?.tagName,
  );
  expect(["page-bar", "BODY"]).toContain(part);
}, 60_000);

test("on a narrow page a cell that the pane goes to comes into sight", async () => {
  const { page, picture } = await openPage({ width: 450 });
  await page.getByRole("button", { name: "Cribsheet", exact: true }).click();
  await page.getByRole("tab", { name: "To mend" }).click();
  await page.getByRole("button", { name: /^Go to A-113/ }).click();
  await page.locator(".page-pane").waitFor({ state: "hidden" });
  expect(await page.locator(".page-grid").isVisible()).toBe(true);
  const isInGrid = await page.evaluate(
    () => document.activeElement?.closest(".page-grid") !== null,
  );
  expect(isInGrid).toBe(true);
  await picture("embedded page, 450 wide, at the cell of a finding");
  await page.getByRole("button", { name: "Cribsheet", exact: true }).click();
  const tab = page.getByRole("tab", { name: "To mend" });
  expect(await tab.getAttribute("aria-selected")).toBe("true");
}, 60_000);

test("the selected cell says why a function of ours has no answer", async () => {
  const watched = await openPage();
  const { page, picture } = watched;
  const reason = page.locator(".page-reason");
  await choose(watched, asFile("Job.xlsx", workbook("Job.xlsx", [["Mark"], [84]])));
  await expect(until(() => status(watched), "Opened Job.xlsx.")).resolves.toBe(true);
  await typeInColumnA(watched, 6, '=CRIB.INCHES("seven")');
  await page.keyboard.press("ArrowUp");
  await reason.filter({ hasText: /#VALUE! .*seven/ }).waitFor();
  await picture("embedded page, reason of an error");
  await page.keyboard.press("ArrowUp");
  await reason.waitFor({ state: "hidden" });
}, 60_000);

describe("work on the embedded page", () => {
  test("what is typed is saved, with formulas and our functions worked out", async () => {
    const watched = await openPage();
    await choose(watched, asFile("Job.xlsx", workbook("Job.xlsx", [["Mark"], [84]])));
    await expect(until(() => status(watched), "Opened Job.xlsx.")).resolves.toBe(true);
    await typeInColumnA(watched, 3, "=A2*2");
    await typeInColumnA(watched, 4, '=CRIB.INCHES("7\'-0 1/2""")');
    await typeInColumnA(watched, 5, "7-0");
    await typeInColumnA(watched, 6, "7'");
    await typeInColumnA(watched, 7, "7'6");
    await typeInColumnA(watched, 8, "mistake");
    await watched.page.keyboard.press("Control+z");
    const file = await save(watched);
    expect(file.name).toBe("Job.xlsx");
    const saved = snapshotOf(file);
    expect(cellOf(saved, 2, 0)).toMatchObject({ formula: "=A2*2", value: 168 });
    expect(cellOf(saved, 3, 0)).toMatchObject({
      formula: '=CRIB.INCHES("7\'-0 1/2""")',
      value: 84.5,
    });
    expect(cellOf(saved, 4, 0)?.value).toBe("7-0");
    expect(cellOf(saved, 5, 0)?.value).toBe("7'");
    expect(cellOf(saved, 6, 0)?.value).toBe("7'6");
    expect(cellOf(saved, 7, 0)?.value ?? null).toBeNull();
  });

  test("no letter is lost in a row that runs beyond wide columns and out of sight", async () => {
    const watched = await openPage();
    const texts = Array.from({ length: 14 }, (_, column) => `7-0 ${column}`);
    const wide = { ...blankSheet("Wide"), columnWidths: [20, 12, 64], frozenColumns: 1 };
    await choose(watched, asFile("Wide.xlsx", workbookOf("Wide.xlsx", [wide])));
    await expect(until(() => status(watched), "Opened Wide.xlsx.")).resolves.toBe(true);
    await watched.page.mouse.click(cellAt.column, cellAt.row(4));
    for (const text of texts) {
      await watched.page.keyboard.type(text);
      await watched.page.keyboard.press("Tab");
    }
    await watched.picture("embedded page, after a row beyond wide columns");
    const saved = snapshotOf(await save(watched));
    expect(texts.map((_, column) => cellOf(saved, 3, column)?.value)).toEqual(texts);
  });

  test("no letter is lost in a cell that is wider than the screen", async () => {
    const watched = await openPage({ width: 320 });
    const rows = Array.from({ length: 12 }, () => [{ value: "Note", style: 0 }]);
    const wide = { ...blankSheet("Wide"), rows, columnWidths: [120] };
    const centred: WorkbookSnapshot = {
      ...workbookOf("Wide.xlsx", [wide]),
      styles: [{ align: "center" }],
    };
    await choose(watched, asFile("Wide.xlsx", centred));
    await expect(until(() => status(watched), "Opened Wide.xlsx.")).resolves.toBe(true);
    await typeInColumnA(watched, 6, "7-0 by the stair");
    const saved = snapshotOf(await save(watched));
    const texts = new Set(rows.map((_, row) => cellOf(saved, row, 0)?.value));
    expect(texts).toEqual(new Set(["Note", "7-0 by the stair"]));
  });

  test("what is typed or pasted as text stays as it was", async () => {
    const watched = await openPage();
    const { page } = watched;
    await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
    await choose(watched, asFile("Job.xlsx", workbook("Job.xlsx", [["Mark"], ["A-1"]])));
    await expect(until(() => status(watched), "Opened Job.xlsx.")).resolves.toBe(true);
    await typeInColumnA(watched, 3, "0B1");
    const block = `\tA-2\t7'\r\n\t<4'>\ta &amp; b\r\n`;
    await page.evaluate((text) => navigator.clipboard.writeText(text), block);
    await page.mouse.click(cellAt.column, cellAt.row(5));
    await page.keyboard.press("Control+v");
    await typeInColumnA(watched, 8, "after");
    const saved = snapshotOf(await save(watched));
    const values = [2, 4, 5, 7].map((row) =>
      [0, 1, 2].map((column) => cellOf(saved, row, column)?.value ?? null),
    );
    expect(values).toEqual([
      ["0B1", null, null],
      [null, "A-2", "7'"],
      [null, "<4'>", "a &amp; b"],
      ["after", null, null],
    ]);
  });

  test("what is typed in the formula bar goes into the cell", async () => {
    const watched = await openPage();
    const { page } = watched;
    await choose(watched, asFile("Job.xlsx", workbook("Job.xlsx", [["Mark"], ["A-1"]])));
    await expect(until(() => status(watched), "Opened Job.xlsx.")).resolves.toBe(true);
    await page.mouse.click(cellAt.column, cellAt.row(2));
    const bar = await page.locator("[data-u-comp=formula-bar] canvas").boundingBox();
    // Behind the text, where the caret is then.
    await page.mouse.click((bar?.x ?? 0) + 300, (bar?.y ?? 0) + 14);
    await page.waitForTimeout(200);
    await page.keyboard.type("23");
    await page.keyboard.press("Enter");
    await typeInColumnA(watched, 4, "in the cell");
    const saved = snapshotOf(await save(watched));
    expect(cellOf(saved, 1, 0)?.value).toBe("A-123");
    expect(cellOf(saved, 3, 0)?.value).toBe("in the cell");
  });

  test("a reload loses nothing, and starting over asks first", async () => {
    const watched = await openPage();
    const { page } = watched;
    await typeInColumnA(watched, 4, "typed by hand");
    await isKept(watched, "typed by hand");
    await page.reload();
    await gridShows(watched);
    expect(await status(watched)).toBe("Your work from last time.");
    expect(cellOf(snapshotOf(await save(watched)), 3, 0)?.value).toBe("typed by hand");

    await page.getByRole("button", { name: "Start over" }).click();
    await page.getByRole("button", { name: "Keep my work" }).click();
    expect(cellOf(snapshotOf(await save(watched)), 3, 0)?.value).toBe("typed by hand");
    await page.getByRole("button", { name: "Start over" }).click();
    await page.getByRole("button", { name: "Start with the demo" }).click();
    await expect(until(() => status(watched), "Started over.")).resolves.toBe(true);
    expect(cellOf(snapshotOf(await save(watched)), 3, 0)?.value).not.toBe("typed by hand");
  });

  test("starting over empty offers the first sheets, after a reload too", async () => {
    const watched = await openPage({ width: 450 });
    const { page, picture } = watched;
    await page.getByRole("button", { name: "Start over" }).click();
    await picture("embedded page, 450 wide, starting over");
    await page.getByRole("button", { name: "Start empty" }).click();
    await expect(until(() => status(watched), "Started over.")).resolves.toBe(true);
    await isKept(watched, '"Sheet1"');
    await page.reload();
    await gridShows(watched);
    await page.getByRole("button", { name: "Cribsheet", exact: true }).click();
    await page.getByRole("heading", { name: "No schedule of openings here yet" }).waitFor();
    await picture("embedded page, 450 wide, empty");
    expect(snapshotOf(await save(watched)).sheets.map(({ name }) => name)).toEqual(["Sheet1"]);
  });

  test("whoever leaves before the work is kept is asked to wait, and after it is not", async () => {
    const watched = await openPage();
    const { page } = watched;
    /** Whether the browser would ask before it leaves the page. */
    const asks = (): Promise<boolean> =>
      page.evaluate(() => !window.dispatchEvent(new Event("beforeunload", { cancelable: true })));
    expect(await asks()).toBe(false);
    const letKeep = await page.evaluateHandle(() => {
      type Put = (
        this: IDBObjectStore,
        value: unknown,
        key?: IDBValidKey,
      ) => IDBRequest<IDBValidKey>;
      const put = Reflect.get(IDBObjectStore.prototype, "put") as Put;
      const held: (() => void)[] = [];
      // A disk that does not answer: the page's own promise waits for a request that nobody made.
      IDBObjectStore.prototype.put = function (value, key) {
        const { name, transaction } = this;
        const { db } = transaction;
        const waiting = {} as IDBRequest<IDBValidKey>;
        held.push(() => {
          const request = db.transaction(name, "readwrite").objectStore(name);
          put.call(request, value, key).onsuccess = (event) => {
            waiting.onsuccess?.(event);
          };
        });
        return waiting;
      };
      return () => {
        IDBObjectStore.prototype.put = put;
        for (const each of held) each();
      };
    });
    await typeInColumnA(watched, 4, "in a hurry");
    expect(await asks()).toBe(true);
    await letKeep.evaluate((release) => release());
    await isKept(watched, "in a hurry");
    await expect(until(async () => String(await asks()), "false")).resolves.toBe(true);
    await page.reload();
    await gridShows(watched);
    expect(cellOf(snapshotOf(await save(watched)), 3, 0)?.value).toBe("in a hurry");
  });

  test("another file asks before it takes the place of changed work", async () => {
    const watched = await openPage();
    const { page } = watched;
    await typeInColumnA(watched, 4, "mine");
    await choose(watched, asFile("Other.csv", "Mark,Width\nD1,7'-0\n"));
    await page.getByRole("button", { name: "Keep what is open" }).click();
    expect(cellOf(snapshotOf(await save(watched)), 3, 0)?.value).toBe("mine");
    await typeInColumnA(watched, 5, "mine too");
    await choose(watched, asFile("Other.csv", "Mark,Width\nD1,7'-0\n"));
    await page.getByRole("dialog").getByRole("button", { name: "Open", exact: true }).click();
    await expect(until(() => status(watched), "Opened Other.csv.")).resolves.toBe(true);
    const file = await save(watched);
    expect(file.name).toBe("Other.xlsx");
    expect(cellOf(snapshotOf(file), 1, 1)?.value).toBe("7'-0");
  });

  test("a file that is none of ours is refused in plain words, and nothing is lost", async () => {
    const watched = await openPage();
    await typeInColumnA(watched, 4, "mine");
    await choose(watched, asFile("Broken.xlsx", "not a workbook at all"));
    const alert = watched.page.getByRole("alert");
    await alert.waitFor();
    expect(await alert.textContent()).toContain("Broken.xlsx was not opened.");
    await alert.getByRole("button", { name: "Close" }).click();
    expect(await alert.isVisible()).toBe(false);
    expect(cellOf(snapshotOf(await save(watched)), 3, 0)?.value).toBe("mine");
  });

  test("a file may be dropped on the spreadsheet", async () => {
    const watched = await openPage();
    await drop(watched, "Dropped.csv");
    await expect(until(() => status(watched), "Opened Dropped.csv.")).resolves.toBe(true);
    expect(cellOf(snapshotOf(await save(watched)), 1, 0)?.value).toBe("D7");
  });

  test("a file that is dropped while a cell is half typed takes nothing away unasked", async () => {
    const watched = await openPage();
    const { page } = watched;
    await page.mouse.click(cellAt.column, cellAt.row(4));
    await page.keyboard.type("half typed");
    await drop(watched, "Dropped.csv");
    await page.getByRole("button", { name: "Keep what is open" }).click();
    expect(cellOf(snapshotOf(await save(watched)), 3, 0)?.value).toBe("half typed");
  });

  test("a second tab says that it keeps nothing", async () => {
    const first = await openPage();
    const second = await openPage({ beside: first });
    expect(await second.page.getByRole("alert").textContent()).toContain("another tab");
    expect(await first.page.getByRole("alert").isVisible()).toBe(false);
  });

  test("a schedule of 10,000 rows opens, is typed into and saved", async () => {
    const watched = await openPage();
    const rows = Array.from({ length: 10_000 }, (_, row) => [
      "Job A",
      `D${row}`,
      1,
      "sliding door",
      "8'-0\"",
      84,
    ]);
    await watched.longestTask();
    const heading = ["Job", "Mark", "Qty", "Type", "Width", "Height"];
    await choose(watched, asFile("Long.xlsx", workbook("Long.xlsx", [heading, ...rows])));
    await expect(until(() => status(watched), "Opened Long.xlsx.")).resolves.toBe(true);
    const opening = await watched.longestTask();
    await typeInColumnA(watched, 4, "typed");
    const typing = await watched.longestTask();
    const saved = snapshotOf(await save(watched));
    const saving = await watched.longestTask();
    console.log(
      `10,000 rows, longest task: opening ${opening} ms, typing ${typing} ms, saving ${saving} ms`,
    );
    expect(cellOf(saved, 3, 0)?.value).toBe("typed");
    expect(cellOf(saved, 10_000, 1)?.value).toBe("D9999");
  }, 120_000);
});

const officeAddress = "https://appsforoffice.microsoft.com/lib/1/hosted/office.js";

describe("the Excel page becomes the embedded page", () => {
  test.each<[string, string | null]>([
    ["when Office.js cannot be had", null],
    ["when Office.js answers that it is in no host", officeSaying("null")],
    ["when it is in another program than Excel", officeSaying(`"Word"`)],
    ["when the script holds nothing", ""],
  ])("%s", async (_, script) => {
    const watched = await openPage({ otherHosts: { [officeAddress]: script } }, "/taskpane.html");
    expect(cellOf(snapshotOf(await save(watched)), 1, 0)?.value).toBe("Job");
  });
});

function officeSaying(host: string): string {
  return `globalThis.Office = { HostType: { Excel: "Excel" }, onReady: () => Promise.resolve({ host: ${host} }) };`;
}

/** Whether `look` comes to be `wanted` within some seconds. */
async function until(look: () => Promise<string | null>, wanted: string): Promise<boolean> {
  for (let tries = 0; tries < 100; tries++) {
    if ((await look()) === wanted) return true;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  return false;
}
