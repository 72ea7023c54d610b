import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";
import { fileWorkbook } from "../../src/adapters/xlsx/fileWorkbook";
import { openFile } from "../../src/adapters/xlsx/openFile";
import { snapshotParts } from "../../src/adapters/xlsx/snapshotBytes";
import { demoDrawings } from "../../src/app/demo/demoDrawings";
import { drawnWorkbook } from "../../src/workbook/drawnWorkbook";
import { commandOf } from "./runCommand";

let folder = "";
let demo = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "cribsheet-"));
  demo = join(folder, "demo.xlsx");
  const workbook = fileWorkbook(
    snapshotParts(drawnWorkbook("demo.xlsx", demoDrawings())),
    "demo.xlsx",
  );
  writeFileSync(demo, workbook.bytes());
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

function file(name: string, content: string): string {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
}

const run = commandOf("price");
const price = (...words: readonly string[]) => run(words);

const headings = "Job,Mark,Qty,Type,Width,Height,Post height,Tail post,Floor";
const good = "Alder,A-1,2,sliding door,8',7',8',yes,concrete";
const bad = "Alder,A-2,1,sliding door,8',wide,7',yes,concrete";

type Json = {
  readonly complete: boolean;
  readonly jobs: readonly {
    readonly job: string;
    readonly lines: readonly {
      readonly key: string;
      readonly amount: string;
      readonly how: string;
    }[];
    readonly cost: string;
    readonly price: string;
    readonly profit: string;
    readonly markup: string;
    readonly margin: string;
    readonly targetMargin: string;
    readonly hours: number;
    readonly weight: number;
    readonly notPriced: readonly string[];
  }[];
  readonly findings: readonly { readonly code: string; readonly level: string }[];
};

describe("with --json", () => {
  test("a job that is all priced gives one object of decimal strings, and status 0", () => {
    const { status, stdout, stderr } = price(file("good.csv", `${headings}\n${good}\n`), "--json");
    const result = JSON.parse(stdout) as Json;
    expect([status, stderr, result.complete]).toEqual([0, "", true]);
    const [job] = result.jobs;
    for (const amount of [job?.cost, job?.price, job?.profit])
      expect(amount).toMatch(/^\d+\.\d\d$/);
    expect(job?.markup).toMatch(/^0\.\d{6}$/);
    expect(job?.margin).toMatch(/^0\.2[4-9]\d{4}$/);
    expect(job?.targetMargin).toBe("0.24");
    expect([typeof job?.hours, typeof job?.weight]).toEqual(["number", "number"]);
    const cents = (amount: string | undefined) => Math.round(Number(amount) * 100);
    expect(cents(job?.cost) + cents(job?.profit)).toBe(cents(job?.price));
    expect(Number(job?.margin)).toBeCloseTo(cents(job?.profit) / cents(job?.price), 6);
    const line = (key: string) => job?.lines.find((each) => each.key === key)?.amount;
    expect([line("cost"), line("price")]).toEqual([job?.cost, job?.price]);
  });

  test("an opening that is not counted is named, gives a stop and status 1", () => {
    const { status, stdout } = price(file("bad.csv", `${headings}\n${good}\n${bad}\n`), "--json");
    const result = JSON.parse(stdout) as Json;
    expect([status, result.complete]).toEqual([1, false]);
    expect(result.jobs[0]?.notPriced).toEqual(["opening A-2"]);
    expect(result.findings.some(({ level }) => level === "stop")).toBe(true);
  });
});

test("without --json a person reads the roll-up, all margins, findings and the caution", () => {
  const { stdout, status } = price(demo);
  expect(status).toBe(1);
  expect(stdout).toMatch(/Tool crib, Alder plant: [\d.]+ hours/);
  expect(stdout).toContain("Short of target");
  expect(stdout).toContain("NOT IN IT: ");
  expect(stdout).toContain("A hanging door can fall and crush.");
});

test("with --out a copy has a price sheet for each job and one of all, and twice is as once", async () => {
  const out = join(folder, "out.xlsx");
  const names = async (): Promise<readonly string[]> => {
    const opened = openFile(readFileSync(out), "out.xlsx");
    if (!opened.ok) throw new Error(opened.error.message);
    return (await opened.value.sheets()).map(({ name }) => name);
  };
  price(demo, "--out", out);
  const once = await names();
  const persons = demoDrawings().map(({ name }) => name);
  expect(once.slice(0, persons.length)).toEqual(persons);
  expect(once.slice(persons.length)).toEqual([
    expect.stringMatching(/^Price Tool crib/),
    expect.stringMatching(/^Price Stock room/),
    expect.stringMatching(/^Price Plant cage/),
    "Margins",
    "Hanging loads",
    "What-if",
    "Actual against estimate",
  ]);
  price(out, "--out", out);
  expect(await names()).toEqual(once);
});

test("with --quotation a new file has the customer's sheet and nothing else, once", async () => {
  const out = join(folder, "quote.xlsx");
  const wanted = ["--quotation", "tool crib, alder plant", "--out", out];
  // One opening of the job cannot be counted, so the quotation is of the others: status 1.
  expect(price(demo, ...wanted).status).toBe(1);
  const bytes = readFileSync(out);
  const opened = openFile(bytes, "quote.xlsx");
  if (!opened.ok) throw new Error(opened.error.message);
  expect((await opened.value.sheets()).map(({ name }) => name)).toEqual(["Quotation"]);
  const again = price(demo, ...wanted);
  expect([again.status, again.stderr]).toEqual([2, expect.stringContaining("is there already")]);
  expect(readFileSync(out).equals(bytes)).toBe(true);
});

describe("what an owner asks", () => {
  type Owner = {
    readonly whatIf: readonly {
      readonly cost: string;
      readonly price: string;
      readonly priceThatKeepsTarget: string;
      readonly discountThatKeepsTarget: string;
      readonly swings: readonly { readonly swing: number }[];
    }[];
    readonly simulation: readonly { readonly belowTarget: number; readonly mean: number }[];
    readonly actuals: { readonly suggestions: readonly { readonly cell: string }[] };
    readonly jobs: readonly {
      readonly alternates: readonly { readonly name: string; readonly addsPrice: string }[];
      readonly loads: readonly { readonly mark: string; readonly leafWeight: number }[];
    }[];
  };
  const asked = ["--json", "--what-if", "hours=10 %, material:Track=-5, wages=5 %", "--actuals"];

  test("comes with --json beside the prices, the same for the same seed", () => {
    const first = price(demo, ...asked, "--simulate", "7", "--draws", "2000");
    const { whatIf, simulation, actuals, jobs } = JSON.parse(first.stdout) as Owner;
    const cents = (amount: string | undefined) => Math.round(Number(amount) * 100);
    for (const row of whatIf) {
      expect(cents(row.price) - cents(row.discountThatKeepsTarget)).toBe(
        cents(row.priceThatKeepsTarget),
      );
      const swings = row.swings.map(({ swing }) => swing);
      expect(swings).toEqual([...swings].sort((one, other) => other - one));
    }
    expect(simulation).toHaveLength(3);
    for (const { belowTarget } of simulation) {
      expect(belowTarget).toBeGreaterThan(0);
      expect(belowTarget).toBeLessThan(1);
    }
    expect(actuals.suggestions.map(({ cell }) => cell)).toContain("Items!G10");
    expect(jobs[0]?.alternates.map(({ name }) => name)).toEqual([
      "Spring closer on each sliding door",
      "A-104 at 5 feet, one panel",
      "Floor guides by others",
    ]);
    expect(jobs[0]?.loads.find(({ mark }) => mark === "A-101")?.leafWeight).toBeCloseTo(115.452, 3);
  });

  test("is text without --json", () => {
    const { stdout } = price(demo, "--what-if", "discount=3", "--simulate", "1", "--actuals");
    expect(stdout).toContain("Discount that keeps it");
    expect(stdout).toMatch(/below the target of 24 %: [\d.]+ % of them/);
    expect(stdout).toMatch(/SUGGESTED \d+: spares of HN 1\/4 \(Items!G10\)/);
    expect(stdout).toContain("licensed engineer");
  });

  test("a sheet of actuals is added for a job, and another beside it the next time", async () => {
    const out = join(folder, "done.xlsx");
    price(demo, "--actuals-for", "plant cage, cedar works", "--out", out);
    price(out, "--actuals-for", "plant cage, cedar works", "--out", out);
    const opened = openFile(readFileSync(out), "done.xlsx");
    if (!opened.ok) throw new Error(opened.error.message);
    const names = (await opened.value.sheets()).map(({ name }) => name);
    expect(names.filter((name) => name.startsWith("Actuals"))).toHaveLength(3);
  });
});

describe("unusable input gives status 2 and says why on stderr, with nothing on stdout", () => {
  test.each<readonly [string, () => readonly string[], string]>([
    ["no words at all", () => [], "Name one workbook"],
    ["two workbooks", () => [demo, demo], "Name one workbook"],
    ["no file", () => ["nowhere.xlsx"], "no such file"],
    ["a quotation without a file", () => [demo, "--quotation", "North"], "--out"],
    [
      "a quotation of no job",
      () => [demo, "--quotation", "North", "--out", join(folder, "north.xlsx")],
      "There is no job North",
    ],
    ["a change of nothing known", () => [demo, "--what-if", "luck=5"], "--what-if knows"],
    ["a change that is no percentage", () => [demo, "--what-if", "hours=some"], "percentage"],
    ["a seed that is none", () => [demo, "--simulate", "soon"], "whole number as its seed"],
    ["a suggestion without a file", () => [demo, "--accept", "1"], "--out"],
    ["a suggestion that is no number", () => [demo, "--accept", "all"], "such as 1,3"],
    ["no draws", () => [demo, "--simulate", "1", "--draws", "0"], "--draws"],
    ["actuals for a job without a file", () => [demo, "--actuals-for", "North"], "--out"],
    [
      "actuals for no job",
      () => [demo, "--actuals-for", "North", "--out", join(folder, "north.xlsx")],
      "There is no job North",
    ],
    ["an option that nobody knows", () => [demo, "--bogus"], "--bogus"],
    ["a file with no schedule", () => [file("none.csv", "a,b\n1,2\n")], "No opening was found"],
    [
      "a folder to write to that is not there",
      () => [demo, "--out", join(folder, "no", "x.xlsx")],
      "could not be written",
    ],
  ])("%s", (_what, words, said) => {
    const { status, stdout, stderr } = price(...words());
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain(said);
  });
});
