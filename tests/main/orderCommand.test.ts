import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";
import { openFile } from "../../src/adapters/xlsx/openFile";
import { snapshotBytes } from "../../src/adapters/xlsx/snapshotBytes";
import { demoPurchasing } from "../../src/app/demo/demoPurchasing";
import { starterKitBook } from "../../src/core/kitbook/starter/starterKitBook";
import { kitBookDrawings } from "../../src/tables/kitBookDrawings";
import type { Drawing } from "../../src/workbook/drawing";
import { drawnWorkbook } from "../../src/workbook/drawnWorkbook";
import { scheduleSheet } from "../../src/sheets/scheduleSheet";
import { doorOf, headings } from "../app/orders/orderFiles";
import { commandOf } from "./runCommand";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "cribsheet-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** A workbook with one job, and the demo's purchasing sheets where it is the office's own. */
function workbook(
  name: string,
  job: string,
  isOffice: boolean,
  more: readonly Drawing[] = [],
  settings: Readonly<Record<string, string>> = {},
): string {
  const path = join(folder, name);
  const schedule = scheduleSheet({
    name: "Schedule",
    notice: null,
    headings,
    rows: doorOf(job).slice(1),
    types: ["sliding door"],
    spareRows: 0,
  });
  const sheets = [schedule, ...(isOffice ? demoPurchasing() : []), ...more];
  writeFileSync(path, snapshotBytes({ ...drawnWorkbook(name, sheets), settings }));
  return path;
}

const runOrder = commandOf("order");
const order = (...words: readonly string[]) => runOrder(words);

type Json = {
  readonly complete: boolean;
  readonly lines: readonly {
    readonly item: string;
    readonly size: string | null;
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
    readonly item: string;
    readonly bars: readonly {
      readonly stock: number;
      readonly count: number;
      readonly pieces: readonly number[];
      readonly offcut: number;
    }[];
    readonly cost: string;
    readonly lowerBound: string;
    readonly proven: boolean;
  }[];
  readonly charges: readonly {
    readonly goods: string;
    readonly madeUp: string;
    readonly freight: string;
  }[];
  readonly total: string;
  readonly savedAgainstJobByJob: string | null;
  readonly number: string | null;
  readonly findings: readonly { readonly code: string; readonly found: string }[];
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

const codes = ({ findings }: Json): readonly string[] => findings.map(({ code }) => code);
const parsed = (run: { readonly stdout: string }): Json => JSON.parse(run.stdout) as Json;
const sheetsOf = async (path: string): Promise<readonly string[]> => {
  const opened = openFile(readFileSync(path), "a.xlsx");
  return opened.ok ? (await opened.value.sheets()).map(({ name }) => name) : [];
};

test("an order is kept, sent and received in a file, and a later need is the difference", async () => {
  const path = workbook("kept.xlsx", "Dock", true);
  const untouched = readFileSync(path);
  const day = ["--today", "2026-11-02"];
  const nowhere = order(path, ...day, "--keep");
  expect([nowhere.status, nowhere.stdout]).toEqual([2, ""]);
  expect(nowhere.stderr).toContain("--out");

  const copy = join(folder, "copy.xlsx");
  const kept = parsed(order(path, ...day, "--keep", "--json", "--out", copy));
  expect(kept.number).toBe("PO-2026-0001");
  expect(readFileSync(path).equals(untouched)).toBe(true);
  expect(await sheetsOf(copy)).toEqual(
    expect.arrayContaining(["PO-2026-0001 Fernhill Steel", "Order book", "Stock movements"]),
  );

  expect(order("receive", "PO-2026-0001", copy, "--out", copy).stderr).toContain("draft");
  const sent = order("send", "PO-2026-0001", copy, "--out", copy, "--who", "KB", ...day);
  expect(sent.stdout).toContain("PO-2026-0001 is sent");
  const again = order(copy, ...day, "--json");
  expect(parsed(again).total).toBe("0.00");
  expect(parsed(again).lines.every(({ buy }) => buy === 0)).toBe(true);

  const received = order("receive", "PO-2026-0001", copy, "--out", copy, "--who", "MJ");
  expect(received.status).toBe(0);
  const list = JSON.parse(order("list", copy, "--json").stdout) as {
    readonly orders: readonly Readonly<Record<string, unknown>>[];
    readonly freeOnHand: readonly { readonly pieces: number }[];
    readonly findings: readonly unknown[];
  };
  expect(list.orders).toEqual([
    expect.objectContaining({ number: "PO-2026-0001", state: "received", total: kept.total }),
  ]);
  expect(list.freeOnHand.length).toBeGreaterThan(0);
  expect(list.findings).toEqual([]);

  // Another job's workbook beside it: what the order left over is used for it.
  const other = workbook("other.xlsx", "Yard", false);
  const second = parsed(order(copy, other, ...day, "--json"));
  expect(second.lines.some(({ onHand, need }) => onHand > 0 && need > 0)).toBe(true);
  expect(Number(second.total)).toBeGreaterThan(0);
}, 120_000);

test("an order is received line by line, closed short with a reason, and confirmed where more came", () => {
  const path = workbook("partly.xlsx", "Dock", true);
  const copy = join(folder, "partly-kept.xlsx");
  const day = ["--today", "2026-11-02"];
  order(path, ...day, "--keep", "--out", copy);
  order("send", "PO-2026-0001", copy, "--out", copy, ...day);
  const listed = () =>
    JSON.parse(order("list", copy, "--json").stdout) as {
      readonly orders: readonly {
        readonly state: string;
        readonly lines: readonly {
          readonly line: number;
          readonly item: string;
          readonly ordered: number;
          readonly packSize: number;
          readonly toCome: number;
          readonly willNotCome: number;
          readonly beyond: number;
        }[];
      }[];
    };
  const lines = () => listed().orders[0]?.lines ?? [];
  const receive = (...words: readonly string[]) =>
    order("receive", "PO-2026-0001", copy, "--out", copy, ...day, ...words);
  const [one, other] = lines();
  if (one === undefined || other === undefined) throw new Error("no lines");
  expect(order("list", copy).stdout).toMatch(/To come/);

  const part = receive("--line", `${one.line}=${one.ordered}pcs`, "--who", "MJ");
  expect(part.stdout).toContain("PO-2026-0001 is part received");
  expect(lines()[0]).toMatchObject({ toCome: 0 });
  const again = receive("--line", `${one.line}=1 pcs`);
  expect([again.status, again.stdout]).toEqual([2, ""]);
  expect(again.stderr).toContain("--more");
  expect(receive("--line", `${one.line}=1 pcs`, "--more").status).toBe(0);
  expect(lines()[0]).toMatchObject({ beyond: 1 });

  expect(receive("--line", "NO SUCH=1").stderr).toContain("has no line");
  expect(receive("--line", `${other.line}=some`).stderr).toContain("no number of packs");
  expect(receive("--close", "all").stderr).toContain("--why");
  expect(receive("--close", "all", "--why", "sold out").stdout).toContain("received short");
  expect(lines().every(({ toCome }) => toCome === 0)).toBe(true);
  expect(lines()[1]).toMatchObject({ willNotCome: other.ordered });
  const needed = parsed(order(copy, ...day, "--json"));
  expect(Number(needed.total)).toBeGreaterThan(0);
}, 300_000);

test("an order in two parts: what goes out now, and what can wait, and never one thing in both", () => {
  const path = workbook("parts.xlsx", "Tool crib, Alder plant", true);
  const words = [path, "--today", "2026-11-02", "--next-order", "2027-01-12", "--json"];
  const [now, later] = ["--now", "--can-wait"].map((part) => parsed(order(...words, part)));
  const bought = (json: Json | undefined): readonly string[] =>
    (json?.lines ?? []).filter(({ packs }) => packs.length > 0).map(({ item }) => item);
  expect(bought(now).filter((item) => bought(later).includes(item))).toEqual([]);
  expect(bought(now).length * bought(later).length).toBeGreaterThan(0);
}, 120_000);

test("kit books that differ are a stop until the person decides", () => {
  const parts = starterKitBook.parts.map((row) =>
    row.item.value === "TROLLEY" ? { ...row, quantity: { value: "7", place: null } } : row,
  );
  const paths = [
    workbook("own.xlsx", "Dock", true),
    workbook("book.xlsx", "Yard", false, kitBookDrawings({ ...starterKitBook, parts })),
  ];
  const words = [...paths, "--today", "2026-11-02", "--json"];
  const unsaid = order(...words);
  expect(unsaid.status).toBe(1);
  expect(codes(parsed(unsaid))).toContain("kit-books-differ");
  const trolleys = (json: Json): number | undefined =>
    json.lines.find(({ item }) => item === "TROLLEY")?.need;
  const each = parsed(order(...words, "--kit-book", "each"));
  const first = parsed(order(...words, "--kit-book", paths[1] ?? ""));
  for (const json of [each, first]) expect(codes(json)).not.toContain("kit-books-differ");
  expect(trolleys(first)).toBeGreaterThan(trolleys(each) ?? 0);
}, 120_000);

test("in millimetres, every length of the JSON is in millimetres", () => {
  const settings = { settings: JSON.stringify({ unit: "mm", lengths: "millimetres" }) };
  const path = workbook("metric.xlsx", "Dock", true, [], settings);
  const run = order(path, "--today", "2026-11-02", "--json");
  const { lines, cutPlan } = parsed(run);
  expect(cutPlan.length).toBeGreaterThan(0);
  for (const { item, bars } of cutPlan) {
    const cut = lines.filter((line) => line.item === item).map(({ size }) => Number(size));
    for (const { stock, pieces, offcut } of bars) {
      expect(stock).toBeGreaterThan(1000);
      for (const piece of pieces) expect(cut.some((size) => Math.abs(size - piece) < 1)).toBe(true);
      // What is left is the bar less its pieces, its cuts and its trimmed ends.
      const left = stock - pieces.reduce((sum, piece) => sum + piece, 0) - offcut;
      expect(left).toBeGreaterThanOrEqual(0);
      expect(left).toBeLessThan(20 + 4 * pieces.length);
    }
  }
}, 60_000);

describe("the solver", () => {
  const preload = (name: string, text: string): string => {
    const path = join(folder, name);
    writeFileSync(path, text);
    return path;
  };
  const refusals = [
    [
      "may not run WebAssembly",
      () =>
        `--require ${preload(
          "blocked.cjs",
          // The runner's own small modules may run; the solver's large one may not.
          `const { instantiate, compile, Module } = WebAssembly;
           const check = (source) => {
             if (source.byteLength > 500000) throw new Error("blocked by policy");
             return source;
           };
           WebAssembly.instantiate = async (source, ...more) => instantiate(check(source), ...more);
           WebAssembly.compile = async (source, ...more) => compile(check(source), ...more);
           WebAssembly.Module = class extends Module {
             constructor(source, ...more) { super(check(source), ...more); }
           };`,
        )}`,
    ],
    [
      "is not installed",
      () =>
        `--import ${preload(
          "absent.mjs",
          `import Module, { register } from "node:module";
           const gone = (name) => { throw new Error("Cannot find module " + name); };
           const resolve = Module._resolveFilename;
           Module._resolveFilename = (name, ...more) =>
             name === "highs" ? gone(name) : resolve(name, ...more);
           register("data:text/javascript," + encodeURIComponent(
             'export const resolve = (name, about, next) => {' +
             ' if (name === "highs") throw new Error("Cannot find module highs");' +
             ' return next(name, about); };'));`,
        )}`,
    ],
  ] as const;
  test.each(refusals)(
    "%s, and the plan is valid all the same",
    (_, options) => {
      const path = workbook("solver.xlsx", "Dock", true);
      const words = [path, "--today", "2026-11-02", "--json"];
      const [withIt, without] = [
        parsed(order(...words)),
        parsed(runOrder(words, { NODE_OPTIONS: options() })),
      ];
      const pieces = ({ cutPlan }: Json): readonly (readonly number[])[] =>
        cutPlan.map(({ bars }) =>
          bars
            .flatMap((bar) => Array.from({ length: bar.count }, () => bar.pieces))
            .flat()
            .sort((a, b) => a - b),
        );
      expect(without.complete).toBe(true);
      expect(pieces(without)).toEqual(pieces(withIt));
      for (const { cost, lowerBound, proven } of without.cutPlan) {
        expect(centsOf(cost)).toBeGreaterThanOrEqual(centsOf(lowerBound));
        if (proven) expect(cost).toBe(lowerBound);
      }
      expect(centsOf(without.total)).toBeGreaterThanOrEqual(centsOf(withIt.total));
    },
    60_000,
  );
});
