import fc from "fast-check";
import { describe, expect, test } from "@jest/globals";
import { openFile } from "../../../src/adapters/xlsx/openFile";
import { snapshotBytes } from "../../../src/adapters/xlsx/snapshotBytes";
import { writeCsv } from "../../../src/adapters/xlsx/writeCsv";
import { memoryWorkbook, type MemoryWorkbook } from "../../../src/adapters/memory/memoryWorkbook";
import {
  importDrawings,
  importedRows,
  isOffered,
  kitBookImport,
  kitBookIn,
} from "../../../src/app/kitbook/importKitBook";
import { readInputs, type Inputs } from "../../../src/app/reading/inputs";
import { kitBookAtHand } from "../../../src/app/kitbook/kitBookAtHand";
import { defaultSettings } from "../../../src/app/settings";
import { setUpDrawings } from "../../../src/app/writing/setUpWorkbook";
import { compareBooks } from "../../../src/core/bookcheck/compareBooks";
import { sectionColumns, type KitBookRows } from "../../../src/core/kitbook/rows";
import { starterKitBook } from "../../../src/core/kitbook/starter/starterKitBook";
import { kitBookDrawings } from "../../../src/tables/kitBookDrawings";
import { kitBookLines } from "../../../src/tables/kitBookLines";
import { drawnWorkbook } from "../../../src/workbook/drawnWorkbook";
import { workbookOf } from "../typedWorkbook";

async function inputsOf(workbook: MemoryWorkbook): Promise<Inputs> {
  const inputs = await readInputs(workbook, defaultSettings);
  if (!inputs.ok) throw new Error(inputs.error.message);
  return inputs.value;
}

/** Takes over what is offered, as a person who presses the button. */
async function importInto(workbook: MemoryWorkbook, other: KitBookRows): Promise<Inputs> {
  const inputs = await inputsOf(workbook);
  const change = kitBookImport(kitBookAtHand(inputs, defaultSettings), other);
  const rows = importedRows(change, (each) => isOffered(each, change));
  const written = await workbook.write(importDrawings(rows, inputs.kitBookEdition));
  if (!written.ok) throw new Error(written.error.message);
  return inputsOf(workbook);
}

const kinds = {
  xlsx: (rows: KitBookRows) => snapshotBytes(drawnWorkbook("other.xlsx", kitBookDrawings(rows))),
  csv: (rows: KitBookRows) => writeCsv(kitBookLines(rows)),
};

/** Through a file of the kind and back. */
async function throughFile(kind: keyof typeof kinds, rows: KitBookRows): Promise<KitBookRows> {
  const opened = openFile(kinds[kind](rows), `other.${kind}`);
  if (!opened.ok) throw new Error(opened.error.message);
  const reading = await kitBookIn(opened.value);
  if (!reading.ok || reading.value === null) throw new Error("No book in the file.");
  expect(reading.value.findings).toEqual([]);
  return reading.value.rows;
}

/** Text of any kind, such as a person or a machine may have typed. */
const text = fc
  .oneof(
    fc.string({ minLength: 1, maxLength: 12, unit: "grapheme" }),
    fc.constantFrom(
      "=width",
      "'=x",
      "-1",
      "@a",
      `7'-0"`,
      `say "no", twice`,
      "007",
      "two\nlines",
      ";",
    ),
  )
  // Characters that no file can hold are refused elsewhere.
  .filter(
    (words) => words.trim() !== "" && !/[\p{Cc}\p{Cs}\ufffe\uffff]/u.test(words.replace("\n", "")),
  );
const row = (columns: readonly string[]) =>
  fc
    .array(fc.option(text), { minLength: columns.length, maxLength: columns.length })
    .map((cells) => ["Door", "name", ...cells.slice(2)])
    .map((cells) =>
      Object.fromEntries(
        columns.map((column, at) => [column, { value: cells[at] ?? null, place: null }]),
      ),
    );
const book = fc.record({
  sizes: fc.array(row(sectionColumns.sizes), { maxLength: 4 }),
  parts: fc.array(row(sectionColumns.parts), { maxLength: 4 }),
  limits: fc.array(row(sectionColumns.limits), { maxLength: 4 }),
  charts: fc.array(row(sectionColumns.charts), { maxLength: 4 }),
}) as unknown as fc.Arbitrary<KitBookRows>;

describe.each(["xlsx", "csv"] as const)("a book through a file: .%s", (kind) => {
  test("exported and imported into an empty workbook it is the same book", async () => {
    const workbook = workbookOf({ Start: [] });
    const { kitBook, kitBookEdition } = await importInto(
      workbook,
      await throughFile(kind, starterKitBook),
    );
    expect([compareBooks(starterKitBook, kitBook), kitBookEdition]).toEqual([[], 1]);
  });

  test("whatever its cells hold", async () => {
    await fc.assert(
      fc.asyncProperty(book, async (rows) => {
        const { kitBook } = await importInto(
          workbookOf({ Start: [] }),
          await throughFile(kind, rows),
        );
        expect(compareBooks(rows, kitBook)).toEqual([]);
      }),
      { numRuns: 40 },
    );
  }, 120_000);

  test("its own book changes nothing", async () => {
    const change = kitBookImport(
      { rows: starterKitBook, isStarter: false },
      await throughFile(kind, starterKitBook),
    );
    expect(change.changes).toEqual([]);
    expect(importedRows(change, () => true)).toEqual(starterKitBook);
  });
});

describe("importing into a workbook that has a book", () => {
  const own = async (): Promise<MemoryWorkbook> => {
    const workbook = workbookOf({ Start: [] });
    await workbook.write(setUpDrawings(new Set(["kitBook"]), []));
    // A row of the firm's own, and a remark of no column.
    const { rows } = workbook.snapshot().sheets.find(({ name }) => name === "Kit book parts") ?? {};
    const end = rows?.length ?? 0;
    for (const [column, value] of ["Gate", "Own bag", 1, "OWN ITEM", null, 2].entries()) {
      workbook.type({ sheet: "Kit book parts", row: end, column }, value);
    }
    workbook.type({ sheet: "Kit book parts", row: 4, column: 14 }, "ask Jo about this one");
    return workbook;
  };
  const other: KitBookRows = {
    ...starterKitBook,
    limits: starterKitBook.limits.slice(1),
    parts: starterKitBook.parts.map((part, at) =>
      at === 0 ? { ...part, quantity: { value: "7", place: null } } : part,
    ),
  };

  test("takes changes over, keeps the firm's own rows, and touches no cell of the old sheets", async () => {
    const workbook = await own();
    const before = workbook.snapshot().sheets;
    const { kitBook, kitBookEdition, findings } = await importInto(workbook, other);
    expect(workbook.snapshot().sheets.slice(0, before.length)).toEqual(before);
    expect(kitBookEdition).toBe(2);
    expect(kitBook.parts[0]?.quantity.value).toBe("7");
    expect(kitBook.parts.at(-1)?.item.value).toBe("OWN ITEM");
    expect(kitBook.limits).toHaveLength(starterKitBook.limits.length);
    expect(findings.filter(({ code }) => code === "kit-book-edition-passed")).toHaveLength(4);
  });

  test("the old book counts again once the new sheets are gone", async () => {
    const workbook = await own();
    const before = (await inputsOf(workbook)).kitBook;
    await importInto(workbook, other);
    for (const { name } of workbook.snapshot().sheets) {
      if (name.endsWith("edition 2")) workbook.remove(name);
    }
    const after = await inputsOf(workbook);
    expect([compareBooks(before, after.kitBook), after.kitBookEdition]).toEqual([[], 1]);
  });

  test("row by row: only what is wanted comes over", async () => {
    const inputs = await inputsOf(await own());
    const change = kitBookImport(kitBookAtHand(inputs, defaultSettings), other);
    expect(change.changes.map(({ section, kind }) => `${section} ${kind}`)).toEqual([
      "parts changed",
      "parts removed",
      "limits removed",
    ]);
    const rows = importedRows(change, ({ section }) => section === "limits");
    expect(rows.limits).toHaveLength(starterKitBook.limits.length - 1);
    expect(rows.parts).toEqual(inputs.kitBook.parts);
  });
});

test("a file without a kit book has none, and neither has a hidden sheet", async () => {
  const schedule = workbookOf({ Schedule: [["Mark", "Width"]] });
  expect(await kitBookIn(schedule)).toEqual({ ok: true, value: null });
  const drawn = drawnWorkbook("other", kitBookDrawings(starterKitBook));
  const hidden = { ...drawn, sheets: drawn.sheets.map((each) => ({ ...each, visible: false })) };
  expect(await kitBookIn(memoryWorkbook(hidden))).toEqual({ ok: true, value: null });
});
