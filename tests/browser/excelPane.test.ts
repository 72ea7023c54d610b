/**
 * The pane as it is built for Excel, over Microsoft's own object model in a real browser. Only the
 * workbook behind it is a fake of ours.
 */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { afterAll, afterEach, beforeAll, describe, expect, test } from "@jest/globals";
import type { RigSetup, SeenSheet } from "../workbook/rig";
import { openBrowser, type TestBrowser, type WatchedPage } from "./browser";
import { demoCount, type TypedCells } from "./demoCount";
import { officeAddress, officeScript } from "./office/officeScript";
import type { PageExcel } from "./office/page";

let browser: TestBrowser;
beforeAll(async () => {
  browser = await openBrowser();
});
afterAll(() => browser.close());

let opened: WatchedPage | null = null;
afterEach(async () => {
  const faults = opened?.faults() ?? [];
  await opened?.close();
  opened = null;
  expect(faults).toEqual([]);
});

type Act = (...given: never[]) => unknown;
type Acts = { [Name in keyof PageExcel]: PageExcel[Name] extends Act ? PageExcel[Name] : Act };

type ExcelPane = WatchedPage & {
  /** Asks the workbook behind the pane, or does something to it. */
  readonly excel: <Name extends keyof PageExcel>(
    name: Name,
    ...sent: Parameters<Acts[Name]>
  ) => Promise<Awaited<ReturnType<Acts[Name]>>>;
  /** A person types into cells. */
  readonly type: (typed: TypedCells) => Promise<void>;
};

async function openPane(workbook: RigSetup): Promise<ExcelPane> {
  const watched = await browser.open("/taskpane.html", {
    width: 360,
    height: 800,
    otherHosts: { [officeAddress]: officeScript({ workbook, version: "1.9" }) },
  });
  opened = watched;
  const { page } = watched;
  const excel = ((name: string, ...sent: unknown[]) =>
    page.evaluate(
      ([called, given]) => {
        const { pageExcel } = globalThis as unknown as {
          pageExcel: Record<string, (...given: unknown[]) => unknown>;
        };
        return pageExcel[called]?.(...given);
      },
      [name, sent] as [string, unknown[]],
    )) as ExcelPane["excel"];
  const type: ExcelPane["type"] = async (typed) => {
    for (const [sheet, cells] of Object.entries(typed)) {
      for (const [cell, value] of Object.entries(cells)) await excel("type", sheet, cell, value);
    }
  };
  return { ...watched, excel, type };
}

/** The pane over a new workbook that the demo was put into from the pane itself. */
async function openDemo(): Promise<ExcelPane> {
  const pane = await openPane({ sheets: [{ name: "Sheet1", cells: { A1: "my own words" } }] });
  await pane.page.getByRole("button", { name: "Add the demo" }).click();
  await pane.page.getByRole("tab", { name: "Jobs" }).waitFor();
  return pane;
}

const names = (sheets: readonly SeenSheet[]): readonly string[] => sheets.map(({ name }) => name);
const sheetOf = (sheets: readonly SeenSheet[], name: string): SeenSheet["cells"] =>
  sheets.find((each) => each.name === name)?.cells ?? {};

/** The demo's schedule has a caution and headings above 42 openings; 45 is the first free row. */
const openingTyped = { A: "Tool crib, Alder plant", B: "A-900", C: 2, D: "sliding door" };
const typedInRow = (row: number, cells: Readonly<Record<string, string | number>>) =>
  Object.fromEntries(Object.entries(cells).map(([column, value]) => [`${column}${row}`, value]));

describe("the pane in Excel", () => {
  test("from a new opening to its hardware sheets", async () => {
    const { page, excel, type, picture } = await openDemo();
    const status = page.getByRole("status").filter({ hasText: "counted" });
    const says = async ({ counted, rows }: { counted: number; rows: number }): Promise<void> =>
      status.filter({ hasText: `${counted}of ${rows} openings counted` }).waitFor();
    const before = await demoCount();
    await says(before);

    const row = await firstFreeRow(excel);
    const wrong = typedInRow(row, { ...openingTyped, E: "seven and a bit", F: "7'-0\"", G: "8'" });
    await type({ Schedule: wrong });
    await says({ counted: before.counted, rows: before.rows + 1 });
    await page.getByRole("tab", { name: "To mend" }).click();
    const finding = page.getByRole("listitem").filter({ hasText: "seven and a bit" });
    expect(await finding.textContent()).toContain("A-900");
    await finding.getByRole("button", { name: `A-900 E${row} on Schedule` }).click();
    await expect(until(async () => (await excel("selection")).area?.column, 4)).resolves.toBe(true);
    expect(await excel("selection")).toMatchObject({ sheet: "Schedule", area: { row: row - 1 } });
    await picture("excel-pane-finding");

    const mended = { Schedule: { ...wrong, [`E${row}`]: "7'-0\"" } };
    await type({ Schedule: { [`E${row}`]: "7'-0\"" } });
    const after = await demoCount(mended);
    expect(after.counted).toBe(before.counted + 1);
    await says(after);
    expect(await finding.count()).toBe(0);

    await page.getByRole("tab", { name: "Jobs" }).click();
    await page.getByText(after.material).waitFor();
    await page.getByRole("button", { name: /^Tool crib/ }).click();
    await page.getByRole("button", { name: /^Trolley.*show why/ }).click();
    await page
      .getByText(/Kit book parts, row \d+/)
      .first()
      .waitFor();
    await page
      .getByRole("button", { name: /^A-900/ })
      .first()
      .click();
    await page.getByRole("button", { name: /Go to A-900/ }).click();
    const selected = async () => JSON.stringify(await excel("selection"));
    await expect(
      until(async () => (await selected()).includes(`"row":${row - 1}`), true),
    ).resolves.toBe(true);
    await picture("excel-pane-reasons");

    const sheetsBefore = await excel("look");
    await page.getByRole("tab", { name: "Sheets" }).click();
    await page.getByRole("button", { name: /^Write sheets/ }).click();
    await page.getByText(/sheets written/).waitFor();
    const written = await excel("look");
    expect(written.slice(0, sheetsBefore.length)).toEqual(sheetsBefore);
    const ours = names(written).slice(sheetsBefore.length);
    expect(Object.keys(await excel("marks")).sort()).toEqual([...ours].sort());
    expect(ours.filter((name) => name.startsWith("cribsheet"))).toEqual([]);
    const cells = ours.flatMap((name) => Object.values(sheetOf(written, name)));
    expect(cells.some((cell) => typeof cell === "string" && cell.includes("A-900"))).toBe(true);
    await picture("excel-pane-written");

    const item = await panelRow(excel);
    await type({ Items: { [item.cell]: item.cost + 10 } });
    const dearer = await demoCount({ ...mended, Items: { [item.cell]: item.cost + 10 } });
    expect(dearer.material).not.toBe(after.material);
    await page.getByRole("tab", { name: "Jobs" }).click();
    await page.getByRole("button", { name: "Tool crib, Alder plant", exact: true }).click();
    await page.getByRole("button", { name: "All jobs", exact: true }).click();
    await page.getByText(dearer.material).waitFor();
  }, 120_000);

  test("a writing that Excel refuses leaves every sheet as it was, and works when tried again", async () => {
    const { page, excel } = await openDemo();
    const before = await excel("look");
    await page.getByRole("tab", { name: "Sheets" }).click();
    const write = page.getByRole("button", { name: /^Write sheets/ });
    for (const request of [2, 3, 4]) {
      await excel("failWith", { request });
      await write.click();
      await page.getByText(/^Excel refused/).waitFor();
      expect(await excel("look")).toEqual(before);
    }
    await excel("failWith", {});
    await write.click();
    await page.getByText(/sheets written/).waitFor();
    expect((await excel("look")).length).toBeGreaterThan(before.length);
  }, 120_000);

  test("packing lists have their pictures, the margins have their chart", async () => {
    const { page, excel } = await openDemo();
    await page.getByRole("tab", { name: "Sheets" }).click();
    await page.getByRole("checkbox", { name: /^Hardware/ }).uncheck();
    await page.getByRole("checkbox", { name: /^Packing lists/ }).check();
    const write = page.getByRole("button", { name: /^Write sheets/ });
    await write.click();
    await page.getByText(/sheets written/).waitFor();
    expect(await page.getByText("did not draw the pictures").count()).toBe(0);
    const packing = await markedAs("packing", excel);
    const { pictures } = await excel("floating", packing);
    expect(pictures.length).toBeGreaterThan(2);
    const images = pictures.map(({ image }) => Buffer.from(image, "base64"));
    for (const [index, image] of images.entries()) {
      expect(image.subarray(1, 4).toString()).toBe("PNG");
      // Three dots to a point, both ways.
      const { width, height, visible, top } = pictures[index]?.looks as Record<string, number>;
      expect(image.readUInt32BE(16)).toBe(Math.ceil(Number(width) * 3));
      expect(image.readUInt32BE(20)).toBe(Math.ceil(Number(height) * 3));
      expect([visible, Number(top) > 0]).toEqual([true, true]);
      expect(image.length).toBeLessThan(150_000);
    }
    writeFileSync(path.join("out/screenshots", "excel-picture.png"), images[0] ?? "");
    const bytes = images.reduce((sum, { length }) => sum + length, 0);
    console.log(`${images.length} pictures, ${Math.round(bytes / images.length / 1000)} KB each`);

    await write.click();
    await page.getByText("renewed").first().waitFor();
    expect((await excel("floating", packing)).pictures).toHaveLength(pictures.length);

    await page.getByRole("tab", { name: "Margins" }).click();
    await page.getByRole("button", { name: "Sheets", exact: true }).click();
    await page.getByRole("button", { name: "Write the margins only" }).click();
    await page.getByText("1 sheet written.").waitFor();
    const margins = await markedAs("margins", excel);
    const { charts } = await excel("floating", margins);
    expect(charts).toEqual([
      [expect.stringMatching(/!F4:F\d+$/), expect.stringMatching(/!G4:G\d+$/)],
    ]);
  }, 120_000);

  test("a cell's function answers by the workbook's own kit book and items", async () => {
    const { excel, type } = await openDemo();
    const opening = ["sliding door", "8'-0\"", "7'-0\"", "7'-0\"", "yes", "concrete"];
    const cost = (): Promise<unknown> => excel("call", "COST", ...opening);
    const first = await cost();
    expect(typeof first).toBe("number");
    const item = await panelRow(excel);
    await type({ Items: { [item.cell]: item.cost + 10 } });
    await expect(until(async () => (await cost()) !== first, true)).resolves.toBe(true);
    expect(await excel("call", "COST", "sliding door", "wide", 84, 84)).toMatchObject({
      code: "#VALUE!",
      message: expect.stringContaining("“wide”"),
    });
  }, 60_000);

  test("the ribbon takes off the sheet in front, without the pane", async () => {
    const { excel, page } = await openDemo();
    await excel("select", "Schedule", "A1");
    await excel("press", "takeOffActiveSheet");
    expect(Object.values(await excel("marks"))).toContain("hardware");
    await page.getByRole("status").filter({ hasText: "Wrote" }).waitFor();
  }, 60_000);
});

/** The name of the first sheet of ours of that kind. */
async function markedAs(wanted: string, excel: ExcelPane["excel"]): Promise<string> {
  const marks = Object.entries(await excel("marks"));
  return marks.find(([, kind]) => kind === wanted)?.[0] ?? "";
}

async function firstFreeRow(excel: ExcelPane["excel"]): Promise<number> {
  const cells = sheetOf(await excel("look"), "Schedule");
  const marks = Object.keys(cells).flatMap((cell) => (/^B(\d+)$/.exec(cell) ?? []).slice(1));
  return Math.max(...marks.map(Number)) + 1;
}

/** Where the panel's unit cost stands on the items sheet, and what it is. */
async function panelRow(excel: ExcelPane["excel"]): Promise<{ cell: string; cost: number }> {
  const cells = sheetOf(await excel("look"), "Items");
  const [code = ""] = Object.entries(cells).find(([, value]) => value === "PANEL") ?? [];
  const cell = code.replace("A", "E");
  return { cell, cost: Number(cells[cell]) };
}

/** Whether `look` comes to be `wanted` within some seconds. */
async function until<Value>(look: () => Promise<Value>, wanted: Value): Promise<boolean> {
  for (let tries = 0; tries < 60; tries++) {
    if ((await look()) === wanted) return true;
    await new Promise((resolve) => setTimeout(resolve, 200));
  }
  return false;
}
