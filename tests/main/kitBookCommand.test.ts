import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, jest, test } from "@jest/globals";
import { openFile } from "../../src/adapters/xlsx/openFile";
import { commandOf } from "./runCommand";

jest.setTimeout(60_000);

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

const run = commandOf("kitBook");
const kitBook = (...words: readonly string[]) => run(words);

const door =
  "type=sliding door, width=8', height=7', post height=7', tail post=yes, floor=concrete";
const partHeadings = "Type,Bag,Step,Item,Quantity,When";

describe("the command kitbook", () => {
  test("checks the starter: every row works, and what it leaves open is told", () => {
    const { status, stdout } = kitBook("check", "starter");
    expect(status).toBe(0);
    expect(stdout).toMatch(/CB 1\/4 x 1\/2 may stand only 1.7 threads/);
    expect(stdout).toMatch(/no entry for Post height 11'-0" by Height 7'-0"/);
    expect(stdout).toMatch(/Every row works/);
  });

  test("names the row of a book that does not work, and its cell", () => {
    const path = file("bad.csv", `${partHeadings}\nDoor,Bag,1,NUT,widht,\n`);
    const { status, stdout } = kitBook("check", path);
    expect(status).toBe(1);
    expect(stdout).toMatch(/E2/);
    expect(stdout).toMatch(/Did you mean width/);
  });

  test("tells the boundaries of a width", () => {
    const { status, stdout } = kitBook(
      "boundaries",
      "starter",
      "--field",
      "width",
      "--opening",
      door,
    );
    expect(status).toBe(0);
    expect(stdout).toMatch(/Width 5'-0" \(60 in\): up to and including it, and above/);
    expect(stdout).toMatch(/CLAMP PANEL: 0 > 6/);
    expect(stdout).toMatch(/there is no other/);
  });

  test("tries an opening, and compares two", () => {
    const tried = kitBook("try", "starter", "--opening", door);
    expect(tried.status).toBe(0);
    expect(tried.stdout).toMatch(/CLAMP PANEL: 6 CLAMP PANEL/);
    const narrow = door.replace("8'", "5'");
    const compared = kitBook("try", "starter", "--opening", door, "--and", narrow);
    expect(compared.stdout).toMatch(/SPLICE: 1 SPLICE \(8'-0"\) > not needed/);
  });

  test("exports a book, which then does not differ from the one it came from", () => {
    const out = join(folder, "book.xlsx");
    expect(kitBook("export", "starter", "--out", out).status).toBe(0);
    const { status, stdout } = kitBook("diff", out);
    expect([status, stdout.trim()]).toEqual([0, "The books say the same."]);
    const other = file("other.csv", `${partHeadings}\nDoor,Bag,1,NUT,2,\n`);
    expect(kitBook("diff", out, other).stdout).toMatch(/added parts row 1, Door, Bag: NUT/);
  });

  test("shows what an import would change, and writes only when told to", () => {
    const own = file("own.csv", `${partHeadings}\nDoor,Bag,1,NUT,2,\nDoor,Bag,1,OWN,1,\n`);
    const other = file("new.csv", `${partHeadings}\nDoor,Bag,1,NUT,3,\nGate,Bag,1,BOLT,1,\n`);
    const out = join(folder, "imported.xlsx");
    const shown = kitBook("import", own, "--from", other);
    expect(shown.status).toBe(0);
    expect(shown.stdout).toMatch(/1\. changed parts row 1, Door, Bag: NUT\n {4}quantity: 2 > 3/);
    expect(shown.stdout).toMatch(/removed parts row 2, Door, Bag: OWN \(left\)/);
    expect(shown.stdout).toMatch(/2 of 3 changes are taken over\. Nothing is written yet/);
    const done = kitBook("import", own, "--from", other, "--yes", "--out", out);
    expect(done.stdout).toMatch(/as edition 2 of its kit book/);
    // The firm's own row is kept: only that one is not in the other book.
    const { stdout } = kitBook("diff", out, other, "--json");
    expect(JSON.parse(stdout)).toMatchObject({
      changes: [{ kind: "removed", what: "Door, Bag: OWN" }],
    });
    expect(kitBook("import", own, "--from", other, "--take", "9").stderr).toMatch(/1 to 3/);
  });

  test("exports a .csv that says the same as the book", () => {
    const out = join(folder, "book.csv");
    expect(kitBook("export", "starter", "--out", out).status).toBe(0);
    expect(kitBook("diff", out).stdout.trim()).toBe("The books say the same.");
  });

  test("gives boundaries as JSON and as a sheet of a copy", () => {
    const out = join(folder, "boundaries.xlsx");
    const words = ["starter", "--field", "width", "--opening", door, "--out", out, "--json"];
    const { stdout } = kitBook("boundaries", ...words);
    expect(JSON.parse(stdout)).toMatchObject({ field: "width", isProven: true });
    expect(stdout).toMatch(/"value": 60,\s+"goesWith": "below"/);
    const opened = openFile(readFileSync(out), "boundaries.xlsx");
    const names = opened.ok ? opened.value.snapshot().sheets.map(({ name }) => name) : [];
    expect(names).toContain("Boundaries Width Sliding door");
  });

  test("gives a check and a trial as JSON", () => {
    const path = file(
      "bad too.csv",
      `${partHeadings}\nDoor,Bag,1,NUT,widht,\nDoor,Bag,1,BOLT,2,\n`,
    );
    const checked = JSON.parse(kitBook("check", path, "--json").stdout) as { complete: boolean };
    expect(checked).toMatchObject({ complete: false });
    const tried = kitBook("try", path, "--opening", "type=door, width=3', height=7'", "--json");
    expect(tried.status).toBe(1);
    expect(JSON.parse(tried.stdout)).toMatchObject({
      isCounted: false,
      parts: [{ item: "BOLT", does: "counts", each: 2 }],
      broken: [{ section: "parts", row: 1 }],
    });
  });

  test.each([
    ["no command", [], /Use: npm run/],
    ["no such file", ["check", "nowhere.xlsx"], /nowhere.xlsx/],
    [
      "a field that is none",
      ["boundaries", "starter", "--field", "colour", "--opening", door],
      /names no field/,
    ],
    ["an opening that is none", ["try", "starter", "--opening", "widht=8'"], /Did you mean Width/],
  ])("refuses %s with a reason", (_what, words, reason) => {
    const { status, stdout, stderr } = kitBook(...words);
    expect([status, stdout]).toEqual([2, ""]);
    expect(stderr).toMatch(reason);
  });
});
