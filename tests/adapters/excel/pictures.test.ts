/** Pictures in Excel: images over the cells, words where there can be none, and what a person put there. */
import { describe, expect, test } from "@jest/globals";
import type { PaintPicture } from "../../../src/adapters/excel/paintPicture";
import { drawing } from "../../workbook/drawings";
import { excelRig, type ExcelRig } from "./excelRig";
import { packing, painter, picture, sheetNamed, writtenIn } from "./floatingDrawings";
import { lookAt } from "./rigBook";

const schedule = { sheets: [{ name: "Schedule" }] };
const words = "No picture here. Elevation of A-1. Sliding door A-1, closed. Parts: 2 panels.";

const painting = (version = "1.15", paint: PaintPicture = painter().paint): Promise<ExcelRig> =>
  excelRig(schedule, version, { paint });

describe.each(["1.9", "1.15"])("with ExcelApi %s", (version) => {
  test("a picture lies over the cells of its row, seen, with its words for who cannot see it", async () => {
    const rig = await painting(version);
    const other = { marks: [...picture.marks], title: "Elevation of A-2" };
    const second = { ...picture, ...other, row: 3, column: 1, width: 200 };
    const [sheet] = await writtenIn(rig, packing("Packing list", [picture, second]));
    expect(sheet?.pictures).toBeUndefined();
    expect(lookAt(rig.book)[1]?.cells).toEqual({ A1: "Packing list", A3: "HN 1/4", A5: "CB 1/4" });
    const { shapes } = sheetNamed(rig, "Packing");
    expect(shapes.map(({ name, image }) => [name, image])).toEqual([
      ["Cribsheet picture 1", "iVBO100x50"],
      ["Cribsheet picture 2", "iVBO200x50"],
    ]);
    expect(shapes.map(({ looks }) => looks)).toMatchObject([
      { visible: true, left: 0, top: 15, width: 100, height: 50, altTextTitle: "Elevation of A-1" },
      // One column of ten characters is 56.25 points wide.
      { visible: true, left: 56.25, top: 90, width: 200, height: 50 },
    ]);
    expect(shapes[0]?.looks["altTextDescription"]).toBe(picture.description);
    expect(shapes[0]?.looks["placement"]).toBe(version === "1.9" ? undefined : "OneCell");
  });

  test("writing again shows the new pictures alone, and what a person put there stays", async () => {
    const rig = await painting(version);
    await writtenIn(rig, packing("First", [picture, { ...picture, row: 3 }]));
    const theirs = (id: string) => ({ id, name: "Photo", image: "abcd", looks: { left: 7 } });
    sheetNamed(rig, "Packing").shapes.push(theirs("{X1}"));
    sheetNamed(rig, "Schedule").shapes.push(theirs("{X2}"), {
      ...theirs("{X3}"),
      name: "Cribsheet picture 1",
    });
    const again = await writtenIn(rig, packing("Second", [{ ...picture, width: 120, marks: [] }]));
    expect(again).toEqual([
      { name: "Packing", mark: packing("").mark, was: "replaced", keptAs: null },
    ]);
    expect(sheetNamed(rig, "Packing").shapes.map(({ name, image }) => [name, image])).toEqual([
      ["Photo", "abcd"],
      ["Cribsheet picture 3", "iVBO120x50"],
    ]);
    expect(sheetNamed(rig, "Packing").shapes[1]?.looks).toMatchObject({ visible: true, top: 15 });
    expect(sheetNamed(rig, "Schedule").shapes).toHaveLength(2);
    await writtenIn(rig, drawing("Packing", packing("").mark, [["Third"]]));
    expect(sheetNamed(rig, "Packing").shapes.map(({ name }) => name)).toEqual(["Photo"]);
  });

  test("a sheet that is kept keeps its own pictures, and gets none of the new ones", async () => {
    const rig = await painting(version);
    await writtenIn(rig, packing("First"));
    await rig.type("Packing", "B3", "counted twice");
    const [sheet] = await writtenIn(rig, packing("Second"));
    const seen = (name: string) =>
      sheetNamed(rig, name).shapes.map((shape) => [shape.name, shape.looks["visible"]]);
    expect(seen(sheet?.keptAs ?? "")).toEqual([["Cribsheet picture 1", true]]);
    expect(seen("Packing")).toEqual([["Cribsheet picture 2", true]]);
  });

  test.each<readonly [string, PaintPicture, boolean]>([
    ["no canvas", () => Promise.resolve(null), true],
    ["a painter that fails", () => Promise.reject(new Error("no memory")), true],
    ["an Excel that takes no images", painter().paint, false],
  ])("with %s, words stand in the place, and the outcome says so", async (_, paint, takes) => {
    const rig = await painting(version, paint);
    rig.book.takesImages = takes;
    const plain = drawing("Loading", { kind: "loading", subject: "Job A" }, [["x"]]);
    const outcome = await writtenIn(rig, packing("Packing list"), plain);
    expect(outcome.map(({ pictures }) => pictures)).toEqual(["words", undefined]);
    expect(lookAt(rig.book)[1]?.cells).toMatchObject({ A1: "Packing list", A2: words });
    expect(sheetNamed(rig, "Packing").merges).toEqual([{ row: 1, column: 0, rows: 1, columns: 2 }]);
    expect(rig.book.sheets).toHaveLength(3);
    const again = await writtenIn(rig, packing("Packing list"));
    expect(again).toMatchObject([{ was: "replaced", keptAs: null, pictures: "words" }]);
    expect(sheetNamed(rig, "Packing").shapes).toEqual([]);
  });
});

test("a picture beside cells of its own row leaves them as they are, in words too", async () => {
  const rig = await painting("1.15", () => Promise.resolve(null));
  await writtenIn(rig, packing("x", [{ ...picture, row: 2, column: 1 }]));
  expect(lookAt(rig.book)[1]?.cells).toMatchObject({ A1: "x", A3: "HN 1/4" });
  expect(lookAt(rig.book)[1]?.cells["B3"]).toBeUndefined();
});

test("pictures that a file brought along go with the counts that they show; a person's stay", async () => {
  const rig = await painting();
  await writtenIn(rig, packing("First"));
  const group = { image: null, looks: {} };
  sheetNamed(rig, "Packing").shapes = [
    { ...group, id: "{P1}", name: "Cribsheet picture 1" },
    { ...group, id: "{P2}", name: "Picture 2" },
  ];
  await rig.type("Packing", "B3", "counted twice");
  const [sheet] = await writtenIn(rig, packing("Second"));
  expect(sheetNamed(rig, "Packing").shapes.map(({ name }) => name)).toEqual([
    "Picture 2",
    "Cribsheet picture 2",
  ]);
  expect(sheetNamed(rig, sheet?.keptAs ?? "").shapes).toHaveLength(2);
});

test("openings that are alike are painted once; progress never goes back", async () => {
  const { paint, painted } = painter();
  const rig = await painting("1.15", paint);
  const copies = [1, 3].map((row) => ({ ...picture, row }));
  const told: number[] = [];
  await rig.workbook.write([packing("x", copies), drawing("Empty", null, [[1]])], {
    onProgress: (done) => told.push(done),
  });
  expect(painted).toHaveLength(1);
  expect(told.at(-1)).toBe(1);
  expect(told).toEqual([...told].sort((one, other) => one - other));
});

test("cancelled while pictures are painted: nothing is there", async () => {
  const stop = new AbortController();
  const rig = await painting("1.15", () => {
    stop.abort();
    return Promise.resolve("iVBO");
  });
  const other = { ...picture, row: 3, marks: [...picture.marks] };
  const outcome = await rig.workbook.write([packing("x", [picture, other])], {
    signal: stop.signal,
  });
  expect(outcome).toMatchObject({ ok: false, error: { code: "cancelled" } });
  expect(rig.book.sheets).toHaveLength(1);
  expect(rig.book.parts).toEqual([]);
});

test("a person's picture that comes while Excel refuses ours is not taken for ours", async () => {
  const rig = await painting();
  await writtenIn(rig, packing("First"));
  rig.host.failWith({});
  await writtenIn(rig, packing("Second"));
  const requests = rig.host.requests.length;
  for (let request = 1; request <= requests; request++) {
    rig.host.failWith({
      request,
      meanwhile: {
        request,
        happens: () =>
          sheetNamed(rig, "Packing").shapes.push({
            id: `{X${request}}`,
            name: `Photo ${request}`,
            image: null,
            looks: {},
          }),
      },
    });
    await rig.workbook.write([packing(`No. ${request}`)]);
    rig.host.failWith({});
    const names = sheetNamed(rig, "Packing").shapes.map(({ name }) => name);
    expect([request, names]).toEqual([request, expect.arrayContaining([`Photo ${request}`])]);
  }
});
