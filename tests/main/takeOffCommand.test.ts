import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";
import { openFile } from "../../src/adapters/xlsx/openFile";
import { commandOf } from "./runCommand";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "cribsheet-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function file(name: string, content: string): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const run = commandOf("takeOff");
const takeOff = (...words: readonly string[]) => run(words);

const headings = "Job,Mark,Qty,Type,Width,Height,Post height,Tail post,Floor";
const good = `Alder,A-1,2,sliding door,8',7',7',yes,concrete`;
const bad = `Alder,A-2,1,sliding door,8',wide,7',yes,concrete`;

type Json = {
  readonly complete: boolean;
  readonly jobs: readonly {
    readonly job: string;
    readonly openings: number;
    readonly lines: readonly {
      readonly item: string;
      readonly size: string | null;
      readonly description: string;
      readonly unit: string;
      readonly quantity: number;
      readonly reasons: readonly {
        readonly mark: string;
        readonly bag: string;
        readonly quantity: number;
        readonly because: string;
      }[];
    }[];
    readonly material: { readonly total: string | null; readonly unpriced: readonly string[] };
  }[];
  readonly findings: readonly {
    readonly code: string;
    readonly level: string;
    readonly cell: string;
    readonly found: string;
    readonly message: string;
  }[];
};

describe("with --json", () => {
  test("a schedule that is all counted gives exactly one object, and status 0", () => {
    const { status, stdout, stderr } = takeOff(
      file("good.csv", `${headings}\n${good}\n`),
      "--json",
    );
    const result = JSON.parse(stdout) as Json;
    expect([status, stderr, result.complete]).toEqual([0, "", true]);
    const [job] = result.jobs;
    expect(job).toMatchObject({ job: "Alder", openings: 1 });
    const panel = job?.lines.find((line) => line.item === "PANEL");
    expect(panel).toMatchObject({ size: "48 x 84", unit: "each", quantity: 4 });
    expect(panel?.reasons).toEqual([
      { mark: "A-1", bag: "Leaf", quantity: 4, because: expect.stringContaining("panels = 2") },
    ]);
    expect(job?.material.total).toMatch(/^\d+\.\d\d$/);
  });

  test("a row that is not counted gives status 1 and a stop with its cell", () => {
    const { status, stdout } = takeOff(file("bad.csv", `${headings}\n${good}\n${bad}\n`), "--json");
    const result = JSON.parse(stdout) as Json;
    expect([status, result.complete]).toEqual([1, false]);
    expect(result.findings.find((finding) => finding.level === "stop")).toMatchObject({
      code: "length-not-understood",
      cell: "bad!F3",
      found: "wide",
    });
  });

  test("sizes follow the unit of the schedule", () => {
    const rows = `${headings}\nAlder,A-1,1,sliding door,2438,2134,2134,yes,concrete\n`;
    const { stdout } = takeOff(file("mm.csv", rows), "--unit", "mm", "--json");
    const lines = (JSON.parse(stdout) as Json).jobs[0]?.lines ?? [];
    expect(lines.find((line) => line.item === "PANEL")?.size).toBe("1219 x 2134");
    expect(lines.map((line) => line.item)).toContain("PLATE 7-7");
    const text = takeOff(file("mm.csv", rows), "--unit", "mm").stdout;
    expect(text).toMatch(/Weight: [\d,]+\.\d kg/);
  });
});

describe("unusable input gives status 2 and says why on stderr, with nothing on stdout", () => {
  test.each<readonly [string, readonly string[] | (() => readonly string[]), string]>([
    ["no file", ["nowhere.csv"], "no such file"],
    ["no words at all", [], "Name a schedule"],
    ["an option that nobody knows", ["x.csv", "--bogus"], "--bogus"],
    ["a unit that nobody knows", ["x.csv", "--unit", "cubits"], "cubits"],
    ["an empty file", () => [file("empty.csv", "")], "empty"],
    ["a file with no schedule", () => [file("none.csv", "a,b\n1,2\n")], "No opening was found"],
    [
      "a picture that is called a workbook",
      () => [file("p.xlsx", "\u0089PNG\r\n")],
      "not a workbook",
    ],
    [
      "a kit book that is none",
      () => [file("g.csv", `${headings}\n${good}\n`), "--kit-book", file("k.csv", "a,b\n")],
      "no kit book",
    ],
  ])("%s", (_what, words, said) => {
    const { status, stdout, stderr } = takeOff(...(typeof words === "function" ? words() : words));
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(said);
  });
});

describe("with --out", () => {
  test("the workbook keeps the schedule and has our sheets, twice run as once", async () => {
    const schedule = file("out.csv", `${headings}\n${good}\n${bad}\n`);
    const out = join(folder, "out.xlsx");
    const names = async (): Promise<readonly string[]> => {
      const opened = openFile(readFileSync(out), "out.xlsx");
      if (!opened.ok) throw new Error(opened.error.message);
      return (await opened.value.sheets()).map((sheet) => sheet.name);
    };
    takeOff(schedule, "--out", out);
    const once = await names();
    takeOff(schedule, "--out", out);
    expect(once).toEqual(["out", "Hardware Alder", "Reasons", "Findings"]);
    expect(await names()).toEqual(once);
  });

  test("a file there that is no workbook is left as it was", () => {
    const out = file("notes.xlsx", "my notes");
    const { status, stderr } = takeOff(file("g2.csv", `${headings}\n${good}\n`), "--out", out);
    expect([status, stderr]).toEqual([2, expect.stringContaining("not a workbook")]);
    expect(readFileSync(out, "utf8")).toBe("my notes");
  });
});

test("without --json a person reads lines, findings and the caution", () => {
  const { stdout } = takeOff(file("text.csv", `${headings}\n${good}\n${bad}\n`));
  expect(stdout).toContain("Alder: 1 of 2 openings counted");
  expect(stdout).toContain("NOT COUNTED: A-2");
  expect(stdout).toContain("STOP text!F3 A-2");
  expect(stdout).toContain("A hanging door can fall and crush.");
});

test("a sheet that is named and not there is told, and no other is counted in its place", () => {
  const run = takeOff(file("named.csv", `${headings}\n${good}`), "--sheet", "Doors");
  expect(run).toMatchObject({ status: 2, stdout: "" });
  expect(run.stderr).toContain("named.csv: there is no sheet Doors. There are: named.");
});
