import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { cycleText, sortByDependencies } from "../../../src/core/formulas/dependencies";

/** `"a: b c"` is an item named a that uses b and c. */
function items(...lines: readonly string[]) {
  return lines.map((line) => {
    const [name = "", uses = ""] = line.split(":");
    return { name, uses: uses.split(" ").filter((used) => used !== "") };
  });
}
const named = (list: readonly { readonly name: string }[]) => list.map(({ name }) => name);

describe("the order of dependent values", () => {
  test.each([
    [["a", "b", "c"], "a b c"],
    [["a: b", "b: c", "c"], "c b a"],
    [["a: c", "b", "c"], "c a b"],
    [["a: width height", "b: a a"], "a b"],
    [["d: b c", "b: a", "c: a", "a"], "a b c d"],
  ])("%j is worked out as %s", (lines, order) => {
    const sorted = sortByDependencies(items(...lines));
    expect(named(sorted.order).join(" ")).toBe(order);
    expect(sorted).toMatchObject({ cycles: [], blocked: [] });
  });

  test.each([
    [["a: a"], ["a → a"], "a", ""],
    [["a: b", "b: a"], ["a → b → a"], "a b", ""],
    [["x", "a: b", "b: c x", "c: a", "y: x"], ["a → b → c → a"], "a b c", "x y"],
    [["a: b c", "b: c", "c: a"], ["a → c → a"], "a b c", ""],
    [["a: b", "b: a", "c: d", "d: c"], ["a → b → a", "c → d → c"], "a b c d", ""],
    [["u: a", "v: u", "a: a", "w"], ["a → a"], "a u v", "w"],
  ])("%j has the cycles %j", (lines, cycles, blocked, order) => {
    const sorted = sortByDependencies(items(...lines));
    expect(sorted.cycles.map(cycleText)).toEqual(cycles);
    expect(named(sorted.blocked).join(" ")).toBe(blocked);
    expect(named(sorted.order).join(" ")).toBe(order);
  });

  test("two items of one name both come before whoever uses it", () => {
    const sorted = sortByDependencies(items("u: a", "a: b", "a", "b"));
    expect(named(sorted.order)).toEqual(["b", "a", "a", "u"]);
  });

  test("a chain of a hundred thousand is sorted, and its knot found", () => {
    const count = 100_000;
    const chain = Array.from({ length: count }, (_, at) => ({
      name: `n${at}`,
      uses: [`n${at + 1}`],
    }));
    expect(sortByDependencies(chain).order).toHaveLength(count);
    const knot = [...chain, { name: `n${count}`, uses: ["n0"] }];
    expect(sortByDependencies(knot).cycles[0]).toHaveLength(count + 2);
  });

  test("every item is either after all it uses or blocked, and every cycle is one", () => {
    const name = fc.integer({ min: 0, max: 11 }).map((number) => `n${number}`);
    const item = fc.record({ name, uses: fc.array(name, { maxLength: 3 }) });
    const distinct = fc.uniqueArray(item, { selector: (made) => made.name, maxLength: 12 });
    fc.assert(
      fc.property(distinct, (list) => {
        const { order, cycles, blocked } = sortByDependencies(list);
        expect([...order, ...blocked]).toHaveLength(list.length);
        const here = new Map(list.map((made) => [made.name, made]));
        const done = new Set<string>();
        for (const made of order) {
          for (const used of made.uses) expect(done.has(used) || !here.has(used)).toBe(true);
          done.add(made.name);
        }
        const stuck = new Set(named(blocked));
        for (const made of blocked) expect(made.uses.some((used) => stuck.has(used))).toBe(true);
        for (const path of cycles) {
          expect(path.length).toBeGreaterThan(1);
          expect(path[0]).toBe(path.at(-1));
          path.slice(1).forEach((used, at) => {
            expect(here.get(path[at] ?? "")?.uses).toContain(used);
          });
        }
        expect(blocked.length > 0).toBe(cycles.length > 0);
      }),
    );
  });
});
