import { describe, expect, test } from "@jest/globals";
import fc from "fast-check";
import { strToU8 } from "fflate";
import { parseCsv, writeCsv } from "hucre/csv";
import { readCsv } from "../../../src/adapters/xlsx/readCsv";
import { writeCsv as writeOurCsv } from "../../../src/adapters/xlsx/writeCsv";
import { fileWorkbookOf } from "./opened";

const rowsOf = (text: string): unknown => readCsv(strToU8(text));

describe("a cell of a text file", () => {
  test.each([
    ["84", 84],
    ["-2.5", -2.5],
    ["0.75", 0.75],
    ["0", 0],
    ["123456789012345", 123456789012345],
  ])("%s is a number", (text, number) => {
    expect(rowsOf(text)).toEqual([[number]]);
  });

  test.each([
    "7-0",
    "007",
    "1E5",
    "12.50",
    "1.10",
    "+5",
    "-0",
    ".5",
    "5.",
    " 84",
    "1.200",
    "1234567890123456789",
    "TRUE",
    "=1+1",
    "@x",
    "7/31/2026",
    "Infinity",
    "0x10",
  ])("%s stays text", (text) => {
    expect(rowsOf(text)).toEqual([[text]]);
  });
});

describe("a text file of rows", () => {
  test.each([
    ["commas", "Mark,Width\nD1,84\n"],
    ["semicolons", "Mark;Width\r\nD1;84\r\n"],
    ["tabs", "Mark\tWidth\rD1\t84"],
    ["commas within semicolons", "Mark;Width\nD1;84\n"],
    ["a line that names the separator", "sep=;\nMark;Width\nD1;84"],
    ["quotes", `"Mark","Width"\n"D1",84`],
    ["a byte-order mark", "\ufeffMark,Width\nD1,84"],
  ])("with %s", (_, text) => {
    expect(rowsOf(text)).toEqual([
      ["Mark", "Width"],
      ["D1", 84],
    ]);
  });

  test("takes the separator that splits its rows alike", () => {
    expect(rowsOf("Mark;Width\nD1;213,4 cm\nD2;84,5\nA, B;7")).toEqual([
      ["Mark", "Width"],
      ["D1", "213,4 cm"],
      ["D2", "84,5"],
      ["A, B", 7],
    ]);
  });

  test("is not split by what stands in quotes", () => {
    expect(rowsOf(`a,b,c\nx,",;\t"\ny,",;\t",0,z\n`)).toEqual([
      ["a", "b", "c"],
      ["x", ",;\t"],
      ["y", ",;\t", 0, "z"],
    ]);
  });

  test("leaves inch marks alone, in quotes and out of them", () => {
    expect(rowsOf(`Mark,Width\nD1,7'-0"\nD2,"7'-0"""\nD3,"7' 0"", clear"`)).toEqual([
      ["Mark", "Width"],
      ["D1", `7'-0"`],
      ["D2", `7'-0"`],
      ["D3", `7' 0", clear`],
    ]);
  });

  test("loses nothing behind a quote that is never closed", () => {
    expect(rowsOf(`Mark,Note\nD1,"see plan\nD2,ok`)).toEqual([
      ["Mark", "Note"],
      ["D1", `"see plan`],
      ["D2", "ok"],
    ]);
  });

  test("keeps lines within a quoted cell, gaps and blank rows", () => {
    expect(rowsOf(`a,"one\r\ntwo",\r\n\r\n,,c\r\n`)).toEqual([
      ["a", "one\r\ntwo", null],
      [null],
      [null, null, "c"],
    ]);
  });

  test.each<[encoding: string, bytes: Uint8Array]>([
    ["UTF-8", strToU8("Tür,½")],
    ["UTF-16 with its mark", Uint8Array.from([0xff, 0xfe, ...Buffer.from("Tür,½", "utf16le")])],
    [
      "UTF-16 the other way round",
      Uint8Array.from([0xfe, 0xff, ...Buffer.from("Tür,½", "utf16le").swap16()]),
    ],
    ["UTF-16 without its mark", new Uint8Array(Buffer.from("Tür,½", "utf16le"))],
    ["Windows-1252", new Uint8Array(Buffer.from("Tür,½", "latin1"))],
  ])("in %s", (_, bytes) => {
    expect(readCsv(bytes)).toEqual([["Tür", "½"]]);
  });

  test("reads as another library does, whatever stands in it", () => {
    // A lone cell with nothing in it, and cells that may be numbers, are said differently.
    const cell = fc.stringMatching(/^[a-z ,;"'\n\t-]{0,6}$/).map((text) => `x${text}`);
    fc.assert(
      fc.property(
        fc.array(fc.array(cell, { minLength: 2, maxLength: 4 }), { minLength: 1 }),
        (rows) => {
          const text = `sep=,\n${writeCsv(rows)}`;
          expect(rowsOf(text)).toEqual(parseCsv(writeCsv(rows), { delimiter: "," }));
          expect(rowsOf(text)).toEqual(rows);
        },
      ),
    );
  });

  test("opens as a workbook of one sheet, named after the file", async () => {
    const workbook = fileWorkbookOf(strToU8("Mark,Width\nD1,=1+1\n"), "jobs/Door list.csv");
    expect(await workbook.sheets()).toEqual([
      { name: "Door list", visible: true, mark: null, tables: [] },
    ]);
    expect(await workbook.read({ kind: "sheet", sheet: "Door list" })).toMatchObject({
      value: {
        rows: [
          ["Mark", "Width"],
          ["D1", "=1+1"],
        ],
      },
    });
    const again = fileWorkbookOf(workbook.bytes());
    expect(again.snapshot().sheets).toEqual(workbook.snapshot().sheets);
  });
});

describe("what is written as a text file", () => {
  const cell = fc.oneof(
    fc.constant(null),
    fc.integer(),
    fc.string({ minLength: 1, unit: "grapheme" }).filter((text) => Number.isNaN(Number(text))),
    fc.constantFrom("=1+1", "'=1+1", "-x", "''@x", `7'-0"`, `"`, ",;\t", " a ", "a\nb"),
  );

  test("is read back, cell by cell", () => {
    const rows = fc.array(fc.array(cell, { minLength: 2, maxLength: 5 }), { minLength: 1 });
    fc.assert(
      fc.property(rows, (lines) => {
        // Somewhere a comma must stand between cells, to be told from the other separators.
        const written = [["a", "b", "c", "d", "e", "f"], ...lines];
        expect(readCsv(writeOurCsv(written))).toEqual(written);
      }),
    );
  });

  test("gives a spreadsheet no formula", () => {
    const text = new TextDecoder().decode(writeOurCsv([["=1+1", "+x", "-x", "@x", -5]]));
    expect(text).toBe("'=1+1,'+x,'-x,'@x,-5\r\n");
  });
});
