import { describe, expect, test } from "@jest/globals";
import { drawnWorkbook } from "../../../src/workbook/drawnWorkbook";
import { snapshotBytes, snapshotParts } from "../../../src/adapters/xlsx/snapshotBytes";
import { fileWorkbook, type FileWorkbook } from "../../../src/adapters/xlsx/fileWorkbook";
import { openFile } from "../../../src/adapters/xlsx/openFile";
import { partText, readParts } from "../../../src/adapters/xlsx/parts";
import { parseXml } from "../../../src/adapters/xlsx/xml";
import type { Picture } from "../../../src/core/base/picture";
import type { Drawing, DrawnPicture } from "../../../src/workbook/drawing";
import { drawing } from "../../workbook/drawings";

const picture: Picture = {
  width: 200,
  height: 100,
  title: "Elevation of <A-1> & more",
  description: `Sliding door. Two "panels".`,
  marks: [
    { kind: "box", stroke: "part", group: "1", x: 10, y: 20, width: 80, height: 60, fill: "mesh" },
    { kind: "box", stroke: "thin", group: null, x: 1, y: 2, width: 3, height: 4, fill: "solid" },
    { kind: "box", stroke: "around", group: null, x: 5, y: 2, width: 3, height: 4, fill: "none" },
    { kind: "circle", stroke: "thin", group: null, center: { x: 50, y: 50 }, radius: 2 },
    {
      kind: "line",
      stroke: "measure",
      group: null,
      from: { x: 90, y: 90 },
      to: { x: 10, y: 80 },
      arrows: "both",
    },
    {
      kind: "line",
      stroke: "heavy",
      group: null,
      from: { x: 10, y: 10 },
      to: { x: 40, y: 10 },
      arrows: "end",
    },
    {
      kind: "words",
      group: null,
      center: { x: 50, y: 95 },
      words: `=width 7'-0" <x>`,
      size: 7.5,
      upright: false,
    },
    {
      kind: "words",
      group: null,
      center: { x: 5, y: 50 },
      words: "height",
      size: 8,
      upright: true,
    },
  ],
};
const placed: DrawnPicture = { ...picture, row: 2, column: 1 };
const sheet = (more: Partial<Drawing> = {}): Drawing =>
  drawing("Packing", { kind: "packing", subject: "J" }, [["a"], ["b"], ["c"]], {
    pictures: [placed],
    ...more,
  });

const ungrouped = ({ marks, ...rest }: DrawnPicture): DrawnPicture => ({
  ...rest,
  marks: marks.map((mark) => ({ ...mark, group: null })),
});

const opened = (bytes: Uint8Array): FileWorkbook => {
  const file = openFile(bytes, "Job.xlsx");
  if (!file.ok) throw new Error(file.error.message);
  return file.value;
};
const fresh = (drawings: readonly Drawing[]): FileWorkbook =>
  fileWorkbook(snapshotParts(drawnWorkbook("Job.xlsx", drawings)), "Job.xlsx");

const partOf = (bytes: Uint8Array, path: string): string => {
  const parts = readParts(bytes);
  const text = parts.ok ? partText(parts.value, path) : null;
  if (text === null) throw new Error(`No part ${path}`);
  return text;
};
const paths = (bytes: Uint8Array): readonly string[] => {
  const parts = readParts(bytes);
  return parts.ok ? [...parts.value.keys()] : [];
};

describe("a picture on a sheet", () => {
  test("is one group of shapes with a text for who cannot see it", () => {
    const xml = partOf(fresh([sheet()]).bytes(), "xl/drawings/drawing1.xml");
    const [anchor, ...others] = parseXml(xml).children;
    expect(others).toEqual([]);
    expect(anchor?.name).toBe("oneCellAnchor");
    expect(xml).toContain("<xdr:col>1</xdr:col>");
    expect(xml).toContain("<xdr:row>2</xdr:row>");
    expect(xml).toContain(
      `descr="Elevation of &lt;A-1&gt; &amp; more. Sliding door. Two &quot;panels&quot;."`,
    );
    expect(xml).toContain(`<a:t>=width 7'-0&quot; &lt;x&gt;</a:t>`);
    const ids = [...xml.matchAll(/<xdr:cNvPr id="(\d+)"/g)].map(([, id]) => id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test("comes back from the file as it was drawn, save for what belongs together", () => {
    const [back] = opened(fresh([sheet()]).bytes()).snapshot().sheets;
    expect(back?.pictures).toEqual([ungrouped(placed)]);
    const again = snapshotBytes(opened(fresh([sheet()]).bytes()).snapshot());
    expect(opened(again).snapshot().sheets[0]?.pictures).toEqual([ungrouped(placed)]);
  });

  test("is not told as something that a snapshot leaves out", () => {
    expect(opened(fresh([sheet()]).bytes()).snapshot().leftOut).toEqual([]);
  });

  test("is replaced with its sheet, and goes when the sheet has none any more", async () => {
    const workbook = fresh([sheet()]);
    await workbook.write([sheet({ pictures: [placed, { ...placed, row: 9 }] })]);
    const rows = (): readonly number[] =>
      (opened(workbook.bytes()).snapshot().sheets[0]?.pictures ?? []).map(({ row }) => row);
    expect(rows()).toEqual([2, 9]);
    expect(paths(workbook.bytes()).filter((path) => path.includes("drawings/drawing"))).toEqual([
      "xl/drawings/drawing1.xml",
    ]);
    await workbook.write([sheet({ pictures: [] })]);
    expect(rows()).toEqual([]);
  });

  test("leaves a chart that a person put beside it", async () => {
    const parts = new Map(snapshotParts(drawnWorkbook("Job.xlsx", [sheet()])));
    const path = "xl/drawings/drawing1.xml";
    const theirs = `<xdr:twoCellAnchor><xdr:from/><xdr:to/><xdr:sp><xdr:nvSpPr><xdr:cNvPr id="99" name="Their shape"/></xdr:nvSpPr></xdr:sp></xdr:twoCellAnchor>`;
    const xml = partText(parts, path) ?? "";
    parts.set(path, new TextEncoder().encode(xml.replace("</xdr:wsDr>", `${theirs}</xdr:wsDr>`)));
    const workbook = fileWorkbook(parts, "Job.xlsx");
    expect(workbook.snapshot().leftOut).toEqual(["charts or pictures on “Packing”"]);
    await workbook.write([sheet({ pictures: [{ ...placed, row: 5 }] })]);
    const now = partOf(workbook.bytes(), path);
    expect(now).toContain("Their shape");
    expect(parseXml(now).children).toHaveLength(2);
    expect(workbook.snapshot().sheets[0]?.pictures?.map(({ row }) => row)).toEqual([5]);
    expect(now).not.toContain(`id="99" name="Mark`);
  });
});

/** The packing sheet as Excel saves it after it was written there: its pictures are images. */
function withImages(): Map<string, Uint8Array> {
  const parts = new Map(
    snapshotParts(drawnWorkbook("Job.xlsx", [sheet(), { ...sheet(), name: "Other", mark: null }])),
  );
  const image = `<xdr:oneCellAnchor><xdr:from><xdr:col>0</xdr:col><xdr:row>2</xdr:row></xdr:from><xdr:pic><xdr:nvPicPr><xdr:cNvPr id="9" name="Cribsheet picture 3"/></xdr:nvPicPr><xdr:blipFill><a:blip xmlns:a="a" xmlns:r="r" r:embed="rId7"/></xdr:blipFill></xdr:pic></xdr:oneCellAnchor>`;
  const list = `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId7" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/image" Target="../media/image1.png"/></Relationships>`;
  const encode = (text: string): Uint8Array => new TextEncoder().encode(text);
  for (const number of [1, 2]) {
    const path = `xl/drawings/drawing${number}.xml`;
    const xml = (partText(parts, path) ?? "").replace(
      /<xdr:oneCellAnchor.*<\/xdr:oneCellAnchor>/s,
      image,
    );
    parts.set(path, encode(xml));
    parts.set(`xl/drawings/_rels/drawing${number}.xml.rels`, encode(list));
  }
  parts.set("xl/media/image1.png", encode("png"));
  return parts;
}

describe("a picture of ours that Excel saved as an image", () => {
  test("is told as left out where a sheet is shown elsewhere", () => {
    const { leftOut, sheets } = fileWorkbook(withImages(), "Job.xlsx").snapshot();
    expect(sheets[0]?.pictures).toBeUndefined();
    expect(leftOut).toEqual(["charts or pictures on “Packing”", "charts or pictures on “Other”"]);
  });

  test("goes with its sheet's new pictures, and its bytes when nothing else shows them", async () => {
    const parts = withImages();
    const workbook = fileWorkbook(parts, "Job.xlsx");
    await workbook.write([sheet()]);
    const first = partOf(workbook.bytes(), "xl/drawings/drawing1.xml");
    expect(first.match(/Cribsheet picture/g)).toHaveLength(1);
    expect(first).not.toContain("blip");
    expect(paths(workbook.bytes())).toContain("xl/media/image1.png");
    parts.delete("xl/drawings/_rels/drawing2.xml.rels");
    const alone = fileWorkbook(parts, "Job.xlsx");
    await alone.write([sheet()]);
    expect(paths(alone.bytes())).not.toContain("xl/media/image1.png");
  });
});

describe("paper and margins", () => {
  const print = {
    orientation: "portrait",
    fitToOnePageWide: false,
    breaksBefore: [],
    header: "",
    footer: "",
  } as const;

  test("are written and read back", () => {
    const margins = { top: 0.5, bottom: 0.1, left: 0.25, right: 0 };
    const bytes = fresh([sheet({ print: { ...print, paper: "a4", margins } })]).bytes();
    expect(partOf(bytes, "xl/worksheets/sheet1.xml")).toContain(
      `<pageMargins left="0.25" right="0" top="0.5" bottom="0.1" header="0.3" footer="0.1"/><pageSetup paperSize="9" orientation="portrait"/>`,
    );
    expect(opened(bytes).snapshot().sheets[0]?.print).toEqual({ ...print, paper: "a4", margins });
  });

  test("that a drawing does not name are nobody's to read back", () => {
    const bytes = fresh([sheet({ print })]).bytes();
    expect(opened(bytes).snapshot().sheets[0]?.print).toEqual(print);
  });
});
