import {
  copyFileSync,
  existsSync,
  mkdtempSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "@jest/globals";
import { openFile } from "../../src/adapters/xlsx/openFile";
import { snapshotBytes } from "../../src/adapters/xlsx/snapshotBytes";
import { scheduleRows, snapshotOf } from "../app/typedWorkbook";
import { commandOf } from "./runCommand";

let folder = "";
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), "cribsheet-"));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const headings = "Mark,Qty,Type,Width,Height,Post height";

function schedule(name: string, ...rows: readonly string[]): string {
  const path = join(folder, name);
  writeFileSync(path, [headings, ...rows, ""].join("\n"));
  return path;
}

function workbook(name: string, ...rows: readonly string[]): string {
  const path = join(folder, name);
  writeFileSync(path, snapshotBytes(snapshotOf({ Schedule: scheduleRows(...rows) })));
  return path;
}

const run = commandOf("compare");
const compare = (...words: readonly string[]) => run(words);

const sheetNames = (path: string): readonly string[] => {
  const opened = openFile(readFileSync(path), path);
  if (!opened.ok) throw new Error(opened.error.message);
  return opened.value.snapshot().sheets.map(({ name }) => name);
};

describe("npm run compare", () => {
  test("tells two schedules apart, in words and as JSON", () => {
    const older = schedule("bid.csv", "D1,1,hinged door,3',7',8'", "D2,1,hinged door,3',7',8'");
    const newer = schedule("rev.csv", "D1,1,hinged door,4',7',8'", "D3,1,hinged door,3',7',8'");
    const { status, stdout, stderr } = compare(older, newer);
    expect([status, stderr]).toEqual([0, ""]);
    expect(stdout).toContain(`In ${older} the job was called bid: it is taken to be the same.`);
    expect(stdout).toContain("1 opening changed, 1 perhaps under another mark");
    expect(stdout).toContain(`CHANGED rev D1\n    Width: 3'-0" is now 4'-0"`);
    expect(stdout).toMatch(/TO CONFIRM \(\d+ % alike\) rev D3 \(was D2\)/);
    expect(stdout).toMatch(/All: 0 pieces, \$\d+\.\d\d/);
    expect(stdout).toContain("A hanging door can fall and crush.");
    const json = compare(older, newer, "--json", "--same", "rev:D2=D3");
    expect(JSON.parse(json.stdout)).toMatchObject({
      complete: { from: true, to: true },
      openings: {
        changed: [{ mark: "D1", changes: [{ field: "width", from: 36, to: 48 }] }],
        renamed: [{ was: "D2", mark: "D3", changes: [] }],
        toConfirm: [],
      },
    });
  });

  test("freezes in the workbook, lists, compares with now, writes the sheet, removes", () => {
    const book = workbook("job.xlsx", "D-1 | 2 | hinged door | 3' | 7' | 8'");
    const frozen = compare(book, "--freeze", "Bid", "--who", "AB", "--date", "2026-11-25");
    expect(frozen).toMatchObject({ status: 0, stdout: `Bid is frozen in ${book}.\n` });
    expect(compare(book, "--list").stdout).toBe("2026-11-25 Bid, AB\n");
    expect(compare(book, "--issue", "bid").stdout).toContain(
      "Bid to now: no opening differs; no hardware differs\n",
    );
    const out = join(folder, "changes.xlsx");
    const before = readFileSync(book);
    expect(compare(book, "--issue", "Bid", "--out", out).status).toBe(0);
    expect(sheetNames(out)).toEqual(["Schedule", "Changes Bid to now"]);
    expect(readFileSync(book).equals(before)).toBe(true);
    const copy = join(folder, "copy.xlsx");
    copyFileSync(book, copy);
    expect(compare(copy, "--remove", "Bid")).toMatchObject({ status: 0 });
    expect(compare(copy, "--list").stdout).toBe("No count was frozen in this workbook.\n");
    expect(JSON.parse(compare(book, "--list", "--json").stdout)).toEqual({
      issues: [{ name: "Bid", date: "2026-11-25", who: "AB", note: "" }],
    });
  });

  test("an opening that is not counted gives status 1, and says which side", () => {
    const older = schedule("a.csv", "D1,1,hinged door,3',7',8'");
    const newer = schedule("b.csv", "D1,1,hinged door,wide,7',8'");
    const { status, stdout } = compare(older, newer);
    expect(status).toBe(1);
    expect(stdout).toContain(`NOT COMPLETE. Something is not counted (${newer}),`);
    expect(stdout).toContain("Row can be read: yes is now no");
  });

  test.each<readonly [string, readonly string[], RegExp]>([
    ["no file", [], /Name two files/],
    ["one file alone", ["BOOK"], /Name two files/],
    ["an issue that is not there", ["BOOK", "--issue", "Bid"], /none was frozen/],
    ["two doings", ["BOOK", "--issue", "Bid", "--list"], /Choose one/],
    ["a freezing by nobody", ["BOOK", "--freeze", "Bid"], /--who/],
    ["a date that is none", ["BOOK", "--freeze", "B", "--who", "A", "--date", "soon"], /--date/],
    ["a name that means today", ["BOOK", "--freeze", "now", "--who", "A"], /another name/],
    ["a strange unit", ["BOOK", "BOOK", "--unit", "ft"], /in or mm/],
    ["a strange pair", ["BOOK", "BOOK", "--same", "D1"], /such as/],
    ["marks that are not there", ["BOOK", "BOOK", "--same", "Crib:D-1=D-9"], /fits nothing/],
    ["an option that is not there", ["BOOK", "--colour"], /--colour/],
    ["a file that is not there", ["nowhere.xlsx", "BOOK"], /no such file/],
  ])("%s gives status 2, and nothing is written", (_, words, says) => {
    const book = workbook("wrong.xlsx", "D-1 | 2 | hinged door | 3' | 7' | 8'");
    const before = readFileSync(book);
    const out = join(folder, "x.xlsx");
    const given = words.map((word) => (word === "BOOK" ? book : word));
    const { status, stdout, stderr } = compare(...given, "--out", out);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(says);
    expect(existsSync(out)).toBe(false);
    expect(readFileSync(book).equals(before)).toBe(true);
  });
});

test("a count of a .csv is not frozen over it, nor a workbook written over any .csv", () => {
  const path = schedule("own.csv", "D1,1,hinged door,3',7',8'");
  const before = readFileSync(path, "utf8");
  for (const words of [
    [path, "--freeze", "Bid", "--who", "AB"],
    [path, path, "--out", path],
  ]) {
    const { status, stdout, stderr } = compare(...words);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toContain("own.csv: nothing is written, since a workbook is an .xlsx.");
    expect(readFileSync(path, "utf8")).toBe(before);
  }
});
