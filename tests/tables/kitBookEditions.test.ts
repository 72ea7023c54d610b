/** A kit book that takes the place of another stands beside it; only the latest edition counts. */
import { describe, expect, test } from "@jest/globals";
import type { Block, CellValue } from "../../src/core/base/cell";
import { findingCell } from "../../src/core/base/finding";
import { starterKitBook } from "../../src/core/kitbook/starter/starterKitBook";
import { kitBookDrawings } from "../../src/tables/kitBookDrawings";
import { readKitBook } from "../../src/tables/kitBookTable";
import { shownValue } from "../../src/workbook/drawing";

const headings = ["Type", "Bag", "Item", "Quantity"];
const sheet = (name: string, ...rows: readonly (readonly CellValue[])[]): Block => ({
  sheet: name,
  row: 0,
  column: 0,
  rows,
});
const parts = (name: string, title: string, ...items: readonly string[]): Block =>
  sheet(name, [title], headings, ...items.map((item) => ["Door", "Bag", item, 1]));

const itemsIn = (...blocks: readonly Block[]): readonly CellValue[] | undefined =>
  readKitBook(blocks)?.rows.parts.map(({ item }) => item.value);
const codesIn = (...blocks: readonly Block[]): readonly string[] | undefined =>
  readKitBook(blocks)?.findings.map((finding) => `${finding.code} ${findingCell(finding)}`);

const first = parts("Kit book parts", "Kit book parts", "NUT");
const second = parts("Kit book parts, edition 2", "Kit book parts, edition 2", "BOLT");

describe("editions of a kit book", () => {
  test("only the latest is read, whichever sheet comes first, and the others are said", () => {
    for (const blocks of [
      [first, second],
      [second, first],
    ]) {
      expect(itemsIn(...blocks)).toEqual(["BOLT"]);
      expect(readKitBook(blocks)?.edition).toBe(2);
      expect(codesIn(...blocks)).toEqual(["kit-book-edition-passed 'Kit book parts'!A2"]);
    }
    expect(itemsIn(first)).toEqual(["NUT"]);
    expect(readKitBook([first])?.edition).toBe(1);
  });

  test("it is known by its title when its sheet is renamed, and by its sheet when the title is", () => {
    expect(itemsIn(first, { ...second, sheet: "Our doors" })).toEqual(["BOLT"]);
    expect(itemsIn(first, parts("Kit book parts, edition 2", "Parts", "BOLT"))).toEqual(["BOLT"]);
  });

  test("a table has the edition of the title above it", () => {
    const renamed = { ...second, sheet: "Our doors" };
    const table = { ...renamed, row: 1, rows: renamed.rows.slice(1) };
    expect(itemsIn(first, table, renamed)).toEqual(["BOLT"]);
  });

  test("a section that the later edition leaves empty is empty", () => {
    const limits = sheet("Kit book limits", ["Type", "When", "Level"], ["Door", "TRUE", "stop"]);
    const none = sheet("Kit book limits, edition 2", ["Type", "When", "Level"]);
    expect(readKitBook([limits, none, second])?.rows.limits).toEqual([]);
  });

  test("rows on a sheet that names no edition are warned about, not lost in silence", () => {
    const added = sheet("Dutch doors", headings, ["Dutch door", "Bag", "BOLT", 4]);
    const reading = readKitBook([second, added]);
    expect(reading?.findings).toMatchObject([{ code: "kit-book-edition-missing", level: "warn" }]);
    expect(reading?.findings[0]?.message).toContain('"Kit book parts, edition 2"');
    expect(
      itemsIn(second, { ...added, rows: [["Kit book parts, edition 2"], ...added.rows] }),
    ).toEqual(["BOLT", "BOLT"]);
  });

  test("drawn as an edition, a book is read back as that edition", () => {
    const blocks = kitBookDrawings(starterKitBook, 3).map(({ name, rows }) =>
      sheet(
        name,
        ...rows.map(({ cells }) => cells.map((cell) => (cell === null ? null : shownValue(cell)))),
      ),
    );
    const reading = readKitBook(blocks);
    expect([reading?.edition, reading?.findings]).toEqual([3, []]);
    expect(reading?.rows.parts.length).toBe(starterKitBook.parts.length);
  });
});

test("a sheet of parts that was copied is warned about, since both are counted", () => {
  const one = parts("Kit book parts", "Kit book parts", "NUT", "BOLT");
  const copy = { ...one, sheet: "Kit book parts (2)" };
  expect(codesIn(one, copy)).toEqual(["kit-book-copied 'Kit book parts (2)'!A3"]);
  expect(codesIn(one, parts("More parts", "Parts", "NUT", "HINGE"))).toEqual([]);
});
