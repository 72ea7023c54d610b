import { describe, expect, test } from "@jest/globals";
import { strToU8, zipSync } from "fflate";
import fc from "fast-check";
import { fileWorkbookOf } from "./opened";
import { openFile } from "../../../src/adapters/xlsx/openFile";
import { editPart } from "./personTypes";
import { richFile } from "./richFile";

const codeOf = (bytes: Uint8Array, name = "Job.xlsx"): string => {
  const file = openFile(bytes, name);
  return file.ok ? "opened" : file.error.code;
};
const utf16 = (text: string): number[] => [...Buffer.from(text, "utf16le")];
const oldContainer = (inside: string): Uint8Array =>
  Uint8Array.from([0xd0, 0xcf, 0x11, 0xe0, 0xa1, 0xb1, 0x1a, 0xe1, ...utf16(inside)]);

describe("a file that is no workbook", () => {
  test.each<[what: string, bytes: Uint8Array, name: string, code: string]>([
    ["nothing at all", new Uint8Array(), "Job.xlsx", "file-empty"],
    ["a text file of nothing", strToU8("\r\n,,\r\n"), "Job.csv", "file-empty"],
    [
      "a program",
      Uint8Array.from([0x7f, 0x45, 0x4c, 0x46, 2, 1, 1, 0]),
      "Job.csv",
      "file-not-a-workbook",
    ],
    ["text under a workbook's name", strToU8("Mark,Width"), "Job.xlsx", "file-not-a-workbook"],
    ["a web page", strToU8("<!DOCTYPE html><table>"), "Job.csv", "file-not-a-workbook"],
    ["a web page as .xls", strToU8("<html><table>"), "Job.xls", "file-not-a-workbook"],
    ["a password", oldContainer("EncryptedPackage"), "Job.xlsx", "file-has-password"],
    ["Excel before 2007", oldContainer("Workbook"), "Job.xls", "file-of-old-kind"],
    [
      "a zip of something else",
      zipSync({ "a.txt": strToU8("a") }),
      "Job.xlsx",
      "file-not-a-workbook",
    ],
    [
      "an OpenDocument sheet",
      zipSync({ "content.xml": strToU8("<a/>") }),
      "Job.xlsx",
      "file-not-a-workbook",
    ],
    [
      "a text document",
      zipSync({ "[Content_Types].xml": strToU8("<Types/>"), "word/document.xml": strToU8("<a/>") }),
      "Job.xlsx",
      "file-not-a-workbook",
    ],
    [
      "a workbook without its main part",
      zipSync({ "[Content_Types].xml": strToU8("<Types/>"), "xl/styles.xml": strToU8("<a/>") }),
      "Job.xlsx",
      "file-damaged",
    ],
  ])("is told in words: %s", (_, bytes, name, code) => {
    const file = openFile(bytes, name);
    expect(file).toMatchObject({ ok: false, error: { code } });
    if (!file.ok) expect(file.error.message).toMatch(/^[A-Z].*\. [A-Z].*\.$/);
  });

  test("that would unzip to far too much is refused before it is unzipped", () => {
    const bomb = zipSync({ "xl/workbook.xml": new Uint8Array(200_000) });
    // The size that the file claims, in its list of what is in it.
    const claimed = bomb.slice();
    const view = new DataView(claimed.buffer);
    for (let at = 0; at + 4 < claimed.length; at++) {
      if (view.getUint32(at, true) === 0x02014b50) view.setUint32(at + 24, 0x7fff_ffff, true);
    }
    expect(codeOf(claimed)).toBe("file-too-large");
  });

  test("says so when any of its parts is cut short", async () => {
    const rich = await richFile();
    const half = (text: string): string => text.slice(0, text.length / 2);
    for (const path of [
      "xl/workbook.xml",
      "xl/worksheets/sheet1.xml",
      "xl/styles.xml",
      "xl/sharedStrings.xml",
      "xl/_rels/workbook.xml.rels",
      "xl/tables/table1.xml",
    ]) {
      expect([path, codeOf(editPart(rich, path, half))]).toEqual([path, "file-damaged"]);
    }
  });

  test("says so wherever it is cut off", async () => {
    const rich = await richFile();
    for (let at = 1; at < 20; at++) {
      const cut = rich.slice(0, Math.floor((rich.length * at) / 20));
      expect(codeOf(cut)).toBe("file-damaged");
    }
  });

  test("never throws, whatever the bytes are", async () => {
    const rich = await richFile();
    const change = fc.record({ at: fc.nat(rich.length - 1), byte: fc.nat(255) });
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 8 }), (changes) => {
        const bytes = rich.slice();
        for (const { at, byte } of changes) bytes[at] = byte;
        expect([
          "opened",
          "file-damaged",
          "file-too-large",
          "file-not-a-workbook",
          "file-without-sheets",
          "file-of-old-kind",
        ]).toContain(codeOf(bytes));
      }),
      { numRuns: 300 },
    );
    fc.assert(
      fc.property(
        fc.uint8Array({ maxLength: 300 }),
        fc.constantFrom("a.csv", "a.xlsx", "a"),
        (bytes, name) => {
          openFile(bytes, name);
        },
      ),
    );
  });
});

describe("a worksheet", () => {
  const read = async (sheetData: string): Promise<unknown> => {
    const bytes = editPart(await richFile(), "xl/worksheets/sheet3.xml", (text) =>
      text.replace(/<sheetData>[\s\S]*<\/sheetData>/, `<sheetData>${sheetData}</sheetData>`),
    );
    const block = await fileWorkbookOf(bytes).read({ kind: "sheet", sheet: "Secret" });
    return block.ok ? block.value.rows : block.error;
  };

  test.each<[what: string, cell: string, value: unknown]>([
    [
      "rich text without its reading aid",
      `<c r="A1" t="inlineStr"><is><r><t>7'</t></r><r><t xml:space="preserve"> 0"</t></r><rPh sb="0" eb="1"><t>x</t></rPh></is></c>`,
      `7' 0"`,
    ],
    ["a formula's text", `<c r="A1" t="str"><f>A2&amp;"x"</f><v>a x</v></c>`, "a x"],
    ["a formula's blank text", `<c r="A1" t="str"><f>""</f><v></v></c>`, ""],
    ["an error", `<c r="A1" t="e"><v>#REF!</v></c>`, { kind: "error", error: "#REF!" }],
    [
      "a date in words of the standard",
      `<c r="A1" t="d"><v>2026-07-31</v></c>`,
      { kind: "date", serial: 46_234 },
    ],
    [
      "a character that XML cannot hold",
      `<c r="A1" t="inlineStr"><is><t>a_x0007_b_x005F_x0041_</t></is></c>`,
      "a\u0007b_x0041_",
    ],
    [
      "entities and CDATA",
      `<c r="A1" t="inlineStr"><is><t>&lt;&#65;&#x42;&apos;<![CDATA[<&]]></t></is></c>`,
      "<AB'<&",
    ],
    [
      "an entity that XML does not have",
      `<c r="A1" t="inlineStr"><is><t>&constructor;</t></is></c>`,
      "&constructor;",
    ],
    ["a cell that does not say where it is", `<c><v>1</v></c>`, 1],
  ])("reads %s", async (_, cell, value) => {
    expect(await read(`<row>${cell}</row>`)).toEqual([[value]]);
  });

  test("reads rows and cells that do not say where they are after the one before", async () => {
    expect(
      await read(
        `<row r="2"><c r="B2"><v>1</v></c><c><v>2</v></c></row><row><c><v>3</v></c></row>`,
      ),
    ).toEqual([[], [null, 1, 2], [3]]);
  });

  test("with cells so far apart that all the gaps could not be held is damaged", async () => {
    const last = Array.from({ length: 2000 }, () => `<row><c r="XFD1"><v>1</v></c></row>`);
    await expect(read(last.join(""))).rejects.toThrow("damaged");
  });

  test.each(["XFE1", "A1048577", "A0", "1A", ""])("with a cell %j is damaged", async (name) => {
    await expect(read(`<row><c r="${name}"><v>1</v></c></row>`)).rejects.toThrow("damaged");
  });

  test("that declares entities is damaged, so that nothing can swell", async () => {
    const bytes = editPart(await richFile(), "xl/worksheets/sheet3.xml", (text) =>
      text.replace("<worksheet", `<!DOCTYPE x [<!ENTITY a "aaaa">]><worksheet`),
    );
    expect(codeOf(bytes)).toBe("file-damaged");
  });

  test("writes out formulas that a file keeps once for many cells", async () => {
    const bytes = editPart(await richFile(), "xl/worksheets/sheet3.xml", (text) =>
      text.replace(
        /<sheetData>[\s\S]*<\/sheetData>/,
        `<sheetData><row r="1"><c r="A1"><f t="shared" ref="A1:A3" si="0">$B1*C$1+LOG10(D1)+SUM(2:2)&amp;"A1"&amp;'A1'!A1</f><v>0</v></c></row><row r="3"><c r="B3"><f t="shared" si="0"/><v>0</v></c></row></sheetData>`,
      ),
    );
    const sheet = fileWorkbookOf(bytes).snapshot().sheets[2];
    expect(sheet?.rows[2]?.[1]?.formula).toBe(`=$B3*D$1+LOG10(E3)+SUM(4:4)&"A1"&'A1'!B3`);
  });
});
