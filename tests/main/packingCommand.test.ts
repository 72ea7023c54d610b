import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";
import { openFile } from "../../src/adapters/xlsx/openFile";
import type { WorkbookSnapshot } from "../../src/workbook/snapshot";
import { commandOf } from "./runCommand";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "cribsheet-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const headings = "Job,Mark,Qty,Type,Width,Height,Post height,Tail post,Floor";
const good = `Alder,A-1,2,sliding door,8',7',7',yes,concrete`;
const bad = `Birch,B-1,1,sliding door,8',wide,7',yes,concrete`;

function schedule(name: string, ...rows: readonly string[]): string {
  const path = join(folder, name);
  writeFileSync(path, [headings, ...rows, ""].join("\n"));
  return path;
}

const run = commandOf("packing");
const packing = (...words: readonly string[]) => run(words);

function written(path: string): WorkbookSnapshot {
  const opened = openFile(readFileSync(path), "packing.xlsx");
  if (!opened.ok) throw new Error(opened.error.message);
  return opened.value.snapshot();
}

describe("npm run packing", () => {
  test("writes packing list, labels and loading list beside the schedule, and says so", () => {
    const out = join(folder, "good.xlsx");
    const { status, stdout, stderr } = packing(schedule("good.csv", good), "--out", out);
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toContain("Alder: 2 packing lists, 14 bags, ");
    expect(stdout).toContain("A hanging door can fall and crush.");
    const { sheets } = written(out);
    expect(sheets.map(({ name }) => name)).toEqual([
      "good",
      "Packing Alder",
      "Labels Alder",
      "Loading Alder",
    ]);
    expect(sheets[1]?.pictures).toHaveLength(2);
  });

  test("takes a grid of labels, some of the kinds, and one job", () => {
    const out = join(folder, "labels.xlsx");
    const { status, stderr } = packing(
      schedule("two.csv", good, bad),
      ...["--out", out, "--only", "labels", "--job", "alder", "--labels", "3 x 10"],
      ...["--paper", "a4", "--label-margins", "12mm,5 mm,0,5mm", "--label-gaps", "0,0"],
    );
    expect([status, stderr]).toEqual([0, ""]);
    const { sheets } = written(out);
    expect(sheets.map(({ name }) => name)).toEqual(["two", "Labels Alder"]);
    expect(sheets[1]?.columnWidths).toHaveLength(5);
    expect(sheets[1]?.print).toMatchObject({ paper: "a4" });
    expect(sheets[1]?.print?.margins?.top).toBeCloseTo(12 / 25.4 + 4 / 72, 9);
  });

  test("an opening that is not counted gives status 1, its mark, and why", () => {
    const out = join(folder, "bad.xlsx");
    const { status, stdout } = packing(schedule("bad.csv", good, bad), "--out", out);
    expect(status).toBe(1);
    expect(stdout).toContain("NOT COMPLETE. Not counted here: B-1.");
    expect(stdout).toMatch(/^STOP bad!F3 B-1: /m);
  });

  test.each<readonly [string, readonly string[], RegExp]>([
    ["no schedule", ["--out", "x.xlsx"], /Name a schedule/],
    ["no file to write", ["SCHEDULE"], /--out/],
    ["a strange kind", ["SCHEDULE", "--out", "x.xlsx", "--only", "bags"], /and not bags/],
    ["a strange grid", ["SCHEDULE", "--out", "x.xlsx", "--labels", "three"], /such as "2 x 5"/],
    ["labels too small", ["SCHEDULE", "--out", "x.xlsx", "--labels", "9 x 9"], /in wide/],
    [
      "a margin that is no length",
      ["SCHEDULE", "--out", "x.xlsx", "--label-margins", "a,b,c,d"],
      /a is not a length/,
    ],
    ["three margins", ["SCHEDULE", "--out", "x.xlsx", "--label-margins", "1,1,1"], /four lengths/],
    [
      "a job that is not there",
      ["SCHEDULE", "--out", "x.xlsx", "--job", "Cedar"],
      /There are: Alder/,
    ],
    ["an option that is not there", ["SCHEDULE", "--colour"], /--colour/],
  ])("%s gives status 2, and nothing is written", (_, words, says) => {
    const path = schedule("wrong.csv", good);
    const out = join(folder, "x.xlsx");
    const given = words.map((word) =>
      word === "SCHEDULE" ? path : word === "x.xlsx" ? out : word,
    );
    const { status, stdout, stderr } = packing(...given);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(says);
    expect(existsSync(out)).toBe(false);
  });
});
