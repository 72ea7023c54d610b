import { execFileSync } from "node:child_process";
import path from "node:path";
import { describe, expect, test } from "@jest/globals";

/** What a small build finds wrong; its first load is between 5 and 9 kB, its late chunk as large again. */
function faults(most: number, forbidden: string, enforced = "enforced"): string[] {
  const script = path.join(__dirname, "smallBuild.mjs");
  const told = execFileSync(process.execPath, [script, String(most), forbidden, enforced], {
    encoding: "utf8",
    stdio: ["ignore", "pipe", "ignore"],
  });
  return JSON.parse(told) as string[];
}

describe("the budget of the first load", () => {
  test("passes a page that keeps it: what is loaded later does not count", () => {
    expect(faults(9_000, "nothing-like-this")).toEqual([]);
  });

  test("counts the chunk that the page asks for before anything shows", () => {
    const [fault, ...others] = faults(5_000, "nothing-like-this");
    expect(fault).toMatch(/^page: \d\.\d kB at first load, of 5\.0 kB allowed\. The largest: /);
    expect(fault).toContain("soon.js");
    expect(others).toEqual([]);
  });

  test("names a module that the page must not load at first", () => {
    expect(faults(9_000, "first\\.js")).toEqual([
      expect.stringMatching(/^page must not load .*first\.js at first\.$/),
    ]);
    expect(faults(9_000, "late\\.js")).toEqual([]);
  });

  test("only tells where it is not enforced", () => {
    expect(faults(10, "first\\.js", "told")).toEqual([]);
  });
});
