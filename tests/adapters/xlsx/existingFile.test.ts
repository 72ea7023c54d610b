import { beforeAll, describe, expect, test } from "@jest/globals";
import { unzipSync, zipSync } from "fflate";
import type { Drawing } from "../../../src/workbook/drawing";
import { drawing } from "../../workbook/drawings";
import { brokenLaws } from "./fileLaws";
import { fileWorkbookOf } from "./opened";
import { editPart, partOf, pathOfSheet, typeInto } from "./personTypes";
import { richFile } from "./richFile";

const hardware = drawing(
  "Hardware",
  { kind: "hardware", subject: "A" },
  [
    [{ kind: "text", text: "Hardware", look: "title", span: 2, note: "Counted by us" }],
    ["Item", "Quantity", "Cost"],
    ["HN 1/4", 19, "=ROUND(B3*0.05,2)"],
    ["CB 1/4", 14, "=ROUND(B4*0.25,2)"],
  ],
  {
    frozenRows: 2,
    columnWidths: [20, 10, 12],
    tables: [{ name: "Lines", headingRow: 1, lastRow: 3, firstColumn: 0, lastColumn: 2 }],
    choices: [{ column: 0, firstRow: 2, lastRow: 3, list: ["HN 1/4", "CB"], othersToo: false }],
    print: {
      orientation: "landscape",
      titleRows: { first: 1, last: 1 },
      fitToOnePageWide: true,
      breaksBefore: [3],
      header: "Job A & B\t\tHardware",
      footer: "\t{page} of {pages}",
    },
  },
);
const shorter: Drawing = { ...hardware, rows: hardware.rows.slice(0, 3), tables: [], choices: [] };

async function withSheets(bytes: Uint8Array, ...drawings: readonly Drawing[]): Promise<Uint8Array> {
  const workbook = fileWorkbookOf(bytes);
  const outcome = await workbook.write(drawings);
  if (!outcome.ok) throw new Error(outcome.error.message);
  return workbook.bytes();
}

describe("writing into a workbook that is full of other things", () => {
  let before: Uint8Array;
  let after: Uint8Array;
  beforeAll(async () => {
    before = await richFile();
    after = await withSheets(before, hardware);
  });

  test("leaves every part that is not ours byte for byte", () => {
    const [old, now] = [unzipSync(before), unzipSync(after)];
    const changed = Object.keys(old).filter(
      (path) => Buffer.compare(old[path] ?? new Uint8Array(), now[path] ?? new Uint8Array()) !== 0,
    );
    expect(changed.sort()).toEqual([
      "[Content_Types].xml",
      "xl/_rels/workbook.xml.rels",
      "xl/calcChain.xml",
      "xl/styles.xml",
      "xl/workbook.xml",
    ]);
    expect(now["xl/calcChain.xml"]).toBeUndefined();
    const added = Object.keys(now).filter((path) => !(path in old));
    expect(added.sort()).toEqual([
      "xl/comments2.xml",
      "xl/drawings/vmlDrawing2.vml",
      "xl/tables/table2.xml",
      "xl/worksheets/_rels/sheet4.xml.rels",
      "xl/worksheets/sheet4.xml",
    ]);
  });

  test("keeps the styles that are there under their numbers", () => {
    const styles = (bytes: Uint8Array): string[] =>
      [
        ...(/<cellXfs[^>]*>([\s\S]*)<\/cellXfs>/
          .exec(partOf(bytes, "xl/styles.xml"))?.[1]
          ?.matchAll(/<xf\s[\s\S]*?(?:\/>|<\/xf>)/g) ?? []),
      ].map(([xf]) => xf);
    expect(styles(after).slice(0, styles(before).length)).toEqual(styles(before));
  });

  test("makes a file that breaks no law, and again, and with the old sheet kept", async () => {
    expect(brokenLaws(before).filter((law) => !law.includes("calculation"))).toEqual([]);
    expect(brokenLaws(after)).toEqual([]);
    const again = await withSheets(after, shorter);
    expect(brokenLaws(again)).toEqual([]);
    const kept = await withSheets(typeInto(after, "Hardware", "B3", 20), hardware, shorterReasons);
    expect(brokenLaws(kept)).toEqual([]);
    expect(await fileWorkbookOf(kept).sheets()).toMatchObject([
      { name: "Schedule", tables: ["Doors"] },
      { name: "Plan" },
      { name: "Secret", visible: false },
      { name: "Hardware", tables: ["Lines"], mark: { kind: "hardware" } },
      { name: "Hardware (kept)", tables: ["Lines_kept"], mark: null },
      { name: "Reasons" },
    ]);
  });

  test("does not grow with each run", async () => {
    const twice = await withSheets(await withSheets(after, shorter), hardware);
    const paths = (bytes: Uint8Array): string[] => Object.keys(unzipSync(bytes)).sort();
    expect(paths(twice)).toEqual(paths(after));
    expect(partOf(twice, "xl/styles.xml")).toBe(partOf(after, "xl/styles.xml"));
    expect(partOf(twice, "xl/workbook.xml").length).toBe(partOf(after, "xl/workbook.xml").length);
  });

  test("works everything out afresh on opening, since formulas elsewhere may point at ours", () => {
    expect(partOf(after, "xl/workbook.xml")).toMatch(/<calcPr [^>]*fullCalcOnLoad="1"/);
  });

  test("says what a snapshot has no room for", () => {
    expect(fileWorkbookOf(before).snapshot().leftOut).toEqual([
      "charts or pictures on “Plan”",
      "conditional format on “Plan”",
      "macros",
    ]);
  });
});

const shorterReasons = drawing("Reasons", { kind: "reasons", subject: "A" }, [["Because"]]);

describe("a sheet of ours that a person added to", () => {
  test("keeps its chart in place when it is replaced", async () => {
    const rich = await richFile();
    const ours = await withSheets(rich, hardware);
    const path = pathOfSheet(ours, "Hardware");
    const chart = Object.keys(unzipSync(ours)).find((each) => /drawing\d+\.xml$/.test(each)) ?? "";
    const rels = path.replace("worksheets/", "worksheets/_rels/") + ".rels";
    const linked = editPart(ours, rels, (text) =>
      text.replace(
        "</Relationships>",
        `<Relationship Id="rId77" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/drawing" Target="/${chart}"/></Relationships>`,
      ),
    );
    const charted = editPart(linked, path, (text) =>
      text.replace("<legacyDrawing", `<drawing r:id="rId77"/><legacyDrawing`),
    );
    const after = await withSheets(charted, shorter);
    expect(partOf(after, pathOfSheet(after, "Hardware"))).toContain(`<drawing r:id="rId77"/>`);
    expect(brokenLaws(after)).toEqual([]);
  });

  test("is set aside when a person wrote a note on it", async () => {
    const ours = await withSheets(await richFile(), hardware);
    const noted = editPart(ours, "xl/comments2.xml", (text) =>
      text
        .replace("</author>", "</author><author>Foreman</author>")
        .replace(
          "</commentList>",
          `<comment ref="B3" authorId="1"><text><t>Check this</t></text></comment></commentList>`,
        ),
    );
    const workbook = fileWorkbookOf(noted);
    expect(await workbook.write([hardware])).toMatchObject({
      value: [{ name: "Hardware", keptAs: "Hardware (kept)" }],
    });
    const kept = workbook.snapshot().sheets.find(({ name }) => name === "Hardware (kept)");
    expect(kept?.rows[2]?.[1]?.note).toBe("Check this");
  });

  test("goes aside with its own table, names and print titles, and we are shown if it was", async () => {
    const ours = await withSheets(await richFile(), hardware);
    const named = editPart(ours, "xl/workbook.xml", (text) =>
      text
        .replace(/activeTab="\d+"/, `activeTab="3"`)
        .replace(
          "</definedNames>",
          `<definedName name="Mine" localSheetId="3">Hardware!$B$3</definedName></definedNames>`,
        ),
    );
    const shown = editPart(named, pathOfSheet(named, "Hardware"), (text) =>
      text.replace("<sheetView ", `<sheetView tabSelected="1" `),
    );
    const typed = typeInto(shown, "Hardware", "E3", {
      formula: "=SUM(Lines[Quantity])",
      result: 33,
    });
    const after = await withSheets(typed, hardware);
    const workbook = partOf(after, "xl/workbook.xml");
    expect(workbook).toContain(`<definedName name="Mine" localSheetId="3">Hardware!$B$3<`);
    expect(workbook).toContain(`<definedName name="Mine" localSheetId="4">'Hardware (kept)'!$B$3<`);
    expect(workbook).toContain(`localSheetId="4">'Hardware (kept)'!$2:$2<`);
    expect(workbook).toContain(`localSheetId="3">Hardware!$2:$2<`);
    expect(partOf(after, pathOfSheet(after, "Hardware (kept)"))).toContain(
      "<f>SUM(Lines_kept[Quantity])</f>",
    );
    expect(partOf(after, pathOfSheet(after, "Hardware"))).toContain(`tabSelected="1"`);
    expect(brokenLaws(after)).toEqual([]);
  });
});

describe("drop-downs", () => {
  const long = Array.from({ length: 40 }, (_, index) => `item, number ${index}`);
  const longer = [...long, "one more"];
  const choosing = (name: string, list: readonly string[]): Drawing =>
    drawing(name, { kind: name, subject: "" }, [["Item"]], {
      choices: [{ column: 0, firstRow: 1, lastRow: 9, list, othersToo: false }],
    });
  const listsOf = (bytes: Uint8Array, sheet: string): unknown =>
    fileWorkbookOf(bytes)
      .snapshot()
      .sheets.find(({ name }) => name === sheet)
      ?.choices.map(({ list }) => list);

  test("keep their long lists on one hidden sheet, whichever act wrote them", async () => {
    const first = await withSheets(await richFile(), choosing("One", long));
    const second = await withSheets(first, choosing("Two", longer));
    const third = await withSheets(second, choosing("One", long), choosing("Two", longer));
    for (const bytes of [second, third]) {
      expect(listsOf(bytes, "One")).toEqual([long]);
      expect(listsOf(bytes, "Two")).toEqual([longer]);
      expect(brokenLaws(bytes)).toEqual([]);
      const hidden = /<sheet name="Cribsheet lists"[^>]*state="veryHidden"/g;
      expect(partOf(bytes, "xl/workbook.xml").match(hidden)).toHaveLength(1);
    }
  });

  test("of a person have their lists in cells, or worked out", async () => {
    const bytes = editPart(await richFile(), "xl/worksheets/sheet1.xml", (text) =>
      text.replace(
        /<dataValidations[\s\S]*<\/dataValidations>/,
        `<dataValidations count="2"><dataValidation type="list" sqref="D1 E2:F3"><formula1>Plan!$A$2:$A$3</formula1></dataValidation><dataValidation type="list" sqref="G1"><formula1>INDIRECT("A1")</formula1></dataValidation></dataValidations>`,
      ),
    );
    expect(listsOf(bytes, "Schedule")).toEqual([
      ["Jan", "Feb"],
      ["Jan", "Feb"],
      ["Jan", "Feb"],
    ]);
    expect(fileWorkbookOf(bytes).snapshot().leftOut).toContain(
      "drop-downs whose lists are worked out",
    );
  });
});

describe("a workbook unlike ours", () => {
  test("whose parts have prefixes is read and written", async () => {
    const ours = await withSheets(await richFile(), hardware);
    const prefixed = ["xl/workbook.xml", "xl/styles.xml", "[Content_Types].xml"].reduce(
      (bytes, path) =>
        editPart(bytes, path, (text) =>
          text.replace(/<(\/?)(?=[A-Za-z])/g, "<$1x:").replace(/xmlns="/, `xmlns:x="`),
        ),
      ours,
    );
    const workbook = fileWorkbookOf(prefixed);
    expect((await workbook.sheets()).map(({ name }) => name)).toContain("Hardware");
    expect(await workbook.write([shorter])).toMatchObject({ value: [{ was: "replaced" }] });
    expect(
      fileWorkbookOf(workbook.bytes())
        .snapshot()
        .sheets.map(({ name }) => name),
    ).toEqual(workbook.snapshot().sheets.map(({ name }) => name));
  });

  test("that counts days from 1904 shows the dates that were written", async () => {
    const bytes = editPart(await richFile(), "xl/workbook.xml", (text) =>
      /<workbookPr[^>]*\/>/.test(text)
        ? text.replace("<workbookPr", `<workbookPr date1904="1"`)
        : text.replace("<bookViews", `<workbookPr date1904="1"/><bookViews`),
    );
    const workbook = fileWorkbookOf(bytes);
    const day = { kind: "date", serial: 46_210 } as const;
    const dated = drawing("Dated", null, [
      [{ kind: "date", date: day, look: "body", format: "date" }],
    ]);
    await workbook.write([dated]);
    expect(await workbook.read({ kind: "sheet", sheet: "Dated" })).toMatchObject({
      value: { rows: [[day]] },
    });
    expect(partOf(workbook.bytes(), pathOfSheet(workbook.bytes(), "Dated"))).toContain(
      `<v>${46_210 - 1462}</v>`,
    );
  });

  test("in the strict variant is read, and refused in words when it is to be written", async () => {
    const strict = editPart(await richFile(), "xl/workbook.xml", (text) =>
      text.replace(
        "http://schemas.openxmlformats.org/spreadsheetml/2006/main",
        "http://purl.oclc.org/ooxml/spreadsheetml/main",
      ),
    );
    const workbook = fileWorkbookOf(strict);
    expect(await workbook.write([hardware])).toMatchObject({
      error: { code: "host-refused", message: expect.stringContaining("Strict") },
    });
  });

  test("has its table's own name in use: ours gets another", async () => {
    const workbook = fileWorkbookOf(await richFile());
    await workbook.write([
      { ...hardware, tables: hardware.tables.map((table) => ({ ...table, name: "widths" })) },
    ]);
    expect((await workbook.sheets()).map(({ tables }) => tables)).toEqual([
      ["Doors"],
      [],
      [],
      ["widths_2"],
    ]);
  });
});

describe("writing into a workbook with a damaged part that reading does without", () => {
  test("is refused in words, and the file stays as it is", async () => {
    const files = unzipSync(await richFile());
    delete files["xl/styles.xml"];
    const workbook = fileWorkbookOf(zipSync(files));
    const before = workbook.bytes();
    expect(await workbook.write([hardware])).toMatchObject({
      ok: false,
      error: {
        code: "host-refused",
        message: expect.stringMatching(
          /^The file is damaged: xl\/styles\.xml is missing\. Open it/,
        ),
      },
    });
    expect(workbook.bytes()).toEqual(before);
  });
});
