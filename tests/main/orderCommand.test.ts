/** The command as a person runs it: real processes, real files, exit statuses. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "@jest/globals";
import { openFile } from "../../src/adapters/xlsx/openFile";
import { snapshotBytes } from "../../src/adapters/xlsx/snapshotBytes";
import { demoPurchasing } from "../../src/app/demo/demoPurchasing";
import { drawnWorkbook } from "../../src/workbook/drawnWorkbook";
import { scheduleSheet } from "../../src/sheets/scheduleSheet";
import { doorOf, headings } from "../app/orderFiles";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "cribsheet-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A workbook with one job, and the demo's purchasing sheets where it is the office's own. */
function workbook(name: string, job: string, isOffice: boolean): string {
  const path = join(folder, name);
  const schedule = scheduleSheet({
    name: "Schedule",
    notice: null,
    headings,
    rows: doorOf(job).slice(1),
    types: ["sliding door"],
    spareRows: 0,
  });
  const sheets = [schedule, ...(isOffice ? demoPurchasing() : [])];
  writeFileSync(path, snapshotBytes(drawnWorkbook(name, sheets)));
  return path;
}

function order(...words: readonly string[]) {
  const tsx = join("node_modules", "tsx", "dist", "cli.mjs");
  const entry = join("src", "main", "commandLine", "order.ts");
  return spawnSync(process.execPath, [tsx, entry, ...words], { encoding: "utf8" });
}

type Json = {
  readonly complete: boolean;
  readonly lines: readonly {
    readonly need: number;
    readonly spares: number;
    readonly onHand: number;
    readonly buy: number;
    readonly packs: readonly {
      readonly price: string;
      readonly count: number;
      readonly cost: string;
    }[];
    readonly shares: readonly { readonly job: string | null; readonly cost: string }[];
  }[];
  readonly cutPlan: readonly {
    readonly bars: readonly { readonly stock: number; readonly pieces: readonly number[] }[];
  }[];
  readonly charges: readonly {
    readonly goods: string;
    readonly madeUp: string;
    readonly freight: string;
  }[];
  readonly total: string;
  readonly savedAgainstJobByJob: string | null;
};

const centsOf = (amount: string): number => Math.round(Number(amount) * 100);
const sumOf = (amounts: readonly string[]): number =>
  amounts.reduce((sum, amount) => sum + centsOf(amount), 0);

test("two workbooks, one order: it adds up, and its sheets are written once", async () => {
  const [a, b] = [workbook("a.xlsx", "Dock", true), workbook("b.xlsx", "Yard", false)];
  const out = join(folder, "out.xlsx");
  const run = order(a, b, "--json", "--today", "2026-11-02", "--out", out);
  const json = JSON.parse(run.stdout) as Json;
  expect(run.status).toBe(0);
  expect(json.complete).toBe(true);
  for (const { need, spares, onHand, buy, packs, shares } of json.lines) {
    expect(need + spares - onHand).toBe(buy);
    expect(sumOf(shares.map(({ cost }) => cost))).toBe(sumOf(packs.map(({ cost }) => cost)));
    for (const { price, count, cost } of packs) expect(centsOf(price) * count).toBe(centsOf(cost));
  }
  for (const { stock, pieces } of json.cutPlan.flatMap(({ bars }) => bars)) {
    expect(pieces.reduce((sum, piece) => sum + piece, 0)).toBeLessThanOrEqual(stock);
  }
  expect(json.total).toMatch(/^\d+\.\d\d$/);
  const charged = json.charges.flatMap(({ goods, madeUp, freight }) => [goods, madeUp, freight]);
  expect(sumOf(charged)).toBe(centsOf(json.total));
  expect(centsOf(json.savedAgainstJobByJob ?? "")).toBeGreaterThan(0);

  const names = async (): Promise<readonly string[]> => {
    const opened = openFile(readFileSync(out), "out.xlsx");
    return opened.ok ? (await opened.value.sheets()).map(({ name }) => name) : [];
  };
  const once = await names();
  expect(once).toEqual(expect.arrayContaining(["Order Fernhill Steel", "Cut list"]));
  order(out, b, "--today", "2026-11-02", "--out", out);
  expect(await names()).toEqual(once);
}, 60_000);

test("what cannot be ordered gives status 1, and what cannot be read status 2 with nothing printed", () => {
  const lonely = workbook("lonely.xlsx", "Pier", false);
  const incomplete = order(lonely, "--json");
  expect(incomplete.status).toBe(1);
  expect((JSON.parse(incomplete.stdout) as Json).complete).toBe(false);
  for (const words of [[join(folder, "none.xlsx")], [], [lonely, "--jobs", "Quay"]]) {
    const run = order(...words);
    expect(run.status).toBe(2);
    expect(run.stdout).toBe("");
    expect(run.stderr).not.toBe("");
  }
}, 60_000);
