import { describe, expect, test } from "@jest/globals";
import { keptBlocks, type KeptBlocks } from "../../../src/app/reading/keptBlocks";
import { onceForSame } from "../../../src/app/reading/onceForSame";
import { workbookOf } from "../typedWorkbook";

async function blocksOf(kept: KeptBlocks) {
  const read = await kept.read();
  if (!read.ok) throw new Error(read.error.message);
  return new Map(read.value.map(({ block }) => [block.sheet, block]));
}

function opened() {
  const workbook = workbookOf({ One: [["a", 1]], Two: [["b"]] });
  const kept = keptBlocks(workbook);
  void workbook.watch(kept.forget);
  return { workbook, kept };
}

describe("blocks that are kept", () => {
  test("are not read again while nothing changes", async () => {
    const { workbook, kept } = opened();
    const before = await blocksOf(kept);
    workbook.failAt(null);
    expect(await blocksOf(kept)).toEqual(before);
    // The list of sheets only.
    expect(workbook.calls()).toBe(1);
  });

  test("are read again on the sheet that changed, and only there", async () => {
    const { workbook, kept } = opened();
    const before = await blocksOf(kept);
    workbook.type({ sheet: "One", row: 0, column: 1 }, 2);
    const after = await blocksOf(kept);
    expect(after.get("One")?.rows).toEqual([["a", 2]]);
    expect(after.get("Two")).toBe(before.get("Two"));
  });

  test("are the same objects where the cells are as before", async () => {
    const { workbook, kept } = opened();
    const before = await blocksOf(kept);
    workbook.type({ sheet: "One", row: 0, column: 1 }, 1);
    expect((await blocksOf(kept)).get("One")).toBe(before.get("One"));
  });

  test("follow sheets that are renamed and removed", async () => {
    const { workbook, kept } = opened();
    await blocksOf(kept);
    workbook.rename("One", "First");
    workbook.remove("Two");
    expect([...(await blocksOf(kept)).keys()]).toEqual(["First"]);
  });

  test("are read once more when a cell changes while they are read", async () => {
    const { workbook, kept } = opened();
    const reading = kept.read();
    workbook.type({ sheet: "Two", row: 0, column: 0 }, "changed");
    await reading;
    expect((await blocksOf(kept)).get("Two")?.rows).toEqual([["changed"]]);
  });

  test("are asked for again after the host refused", async () => {
    const { workbook, kept } = opened();
    workbook.failAt(2);
    expect((await kept.read()).ok).toBe(false);
    workbook.failAt(null);
    expect((await blocksOf(kept)).size).toBe(2);
  });
});

describe("what is made once for the same", () => {
  test.each<readonly [string, readonly unknown[], readonly unknown[], number]>([
    ["the same values", [1, "a"], [1, "a"], 1],
    ["lists of the same", [["a", 1]], [["a", 1]], 1],
    ["another value", [1], [2], 2],
    ["a longer list", [["a"]], [["a", "b"]], 2],
    ["objects that only look alike", [{}], [{}], 2],
  ])("%s", (_, first, second, times) => {
    let made = 0;
    const make = onceForSame((...given: readonly unknown[]) => [given, ++made]);
    make(...first);
    make(...second);
    expect(made).toBe(times);
  });
});
