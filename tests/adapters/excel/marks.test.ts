/** Which sheets are ours: by a mark that follows the sheet and that a copy doesn't have. */
import { describe, expect, test } from "@jest/globals";
import { drawing } from "../../workbook/drawings";
import { excelRig, type ExcelRig } from "./excelRig";
import { lookAt } from "./rigBook";

const mark = { kind: "hardware", subject: "Job A" };
const first = drawing("Hardware", mark, [["Item"], ["HN 1/4"]]);
const second = drawing("Hardware", mark, [["Item"], ["HN 5/16"]]);

async function rigWithOurs(): Promise<ExcelRig> {
  const rig = await excelRig({ sheets: [{ name: "Schedule" }] });
  await rig.workbook.write([first]);
  return rig;
}

const writeAgain = async ({ workbook }: ExcelRig): Promise<unknown> => {
  const outcome = await workbook.write([second]);
  return outcome.ok ? outcome.value[0] : outcome.error;
};

const cellsOf = ({ book }: ExcelRig, name: string): unknown =>
  lookAt(book).find((sheet) => sheet.name === name)?.cells;

describe("a sheet of ours", () => {
  test("is known after it was renamed and moved", async () => {
    const rig = await rigWithOurs();
    rig.host.person.rename("Hardware", "For the yard");
    rig.host.person.move("For the yard", 0);
    expect(await writeAgain(rig)).toMatchObject({ name: "For the yard", was: "replaced" });
    expect(lookAt(rig.book).map(({ name }) => name)).toEqual(["For the yard", "Schedule"]);
  });

  test("is known after rows came and went on it, and is then kept", async () => {
    const rig = await rigWithOurs();
    rig.host.person.insertRows("Hardware", 0, 2);
    expect(await writeAgain(rig)).toMatchObject({ was: "replaced", keptAs: "Hardware (kept)" });
    expect(cellsOf(rig, "Hardware (kept)")).toEqual({ A3: "Item", A4: "HN 1/4" });
  });

  test("is written anew after a person deleted it, and its old mark goes", async () => {
    const rig = await rigWithOurs();
    rig.host.person.deleteSheet("Hardware");
    expect((await rig.workbook.sheets()).map((sheet) => sheet.mark)).toEqual([null]);
    expect(await writeAgain(rig)).toMatchObject({ name: "Hardware", was: "new" });
    expect(rig.book.names).toHaveLength(1);
  });

  test("is kept when a person commented on it", async () => {
    const rig = await excelRig({ sheets: [{ name: "Schedule" }] }, "1.10");
    await rig.workbook.write([first]);
    rig.book.sheets[1]?.comments.set(0, "is that so?");
    expect(await writeAgain(rig)).toMatchObject({ keptAs: "Hardware (kept)" });
    expect([...(rig.book.sheets[2]?.comments.values() ?? [])]).toEqual(["is that so?"]);
  });
});

describe("a person's copy of it", () => {
  test("is the person's, whatever becomes of the first", async () => {
    const rig = await rigWithOurs();
    const copy = rig.host.person.copySheet("Hardware");
    const before = cellsOf(rig, copy);
    expect((await rig.workbook.sheets()).map(({ name, mark: its }) => [name, its])).toEqual([
      ["Schedule", null],
      ["Hardware", mark],
      [copy, null],
    ]);
    expect(await writeAgain(rig)).toMatchObject({ name: "Hardware", was: "replaced" });
    expect(cellsOf(rig, copy)).toEqual(before);

    rig.host.person.deleteSheet("Hardware");
    rig.host.person.rename(copy, "Hardware");
    expect(await writeAgain(rig)).toMatchObject({ name: "Hardware (2)", was: "new" });
    expect(cellsOf(rig, "Hardware")).toEqual(before);
  });
});

describe("the marks themselves", () => {
  test("are hidden, one for each sheet, and a kept sheet has none", async () => {
    const rig = await rigWithOurs();
    rig.host.person.type("Hardware", "B2", "mine");
    await writeAgain(rig);
    await writeAgain(rig);
    expect(rig.book.names.map(({ name, visible, sheet }) => [name, visible, sheet])).toEqual([
      ["_cribsheet_1", false, null],
    ]);
  });

  test("leave names of a person's alone", async () => {
    const rig = await excelRig({ sheets: [{ name: "Schedule" }] });
    const own = {
      name: "_cribsheet_rates",
      formula: "=1",
      visible: true,
      comment: "",
      sheet: null,
    };
    rig.book.names.push({ ...own });
    await rig.workbook.write([first]);
    await rig.workbook.write([second]);
    expect(rig.book.names).toContainEqual(own);
  });
});

describe("what a person types while we write", () => {
  test("is kept, even between the preparing and the swap", async () => {
    const rig = await rigWithOurs();
    for (let request = 1; request <= 3; request++) {
      rig.host.failWith({
        meanwhile: {
          request,
          happens: () => {
            rig.host.person.type("Hardware", "C9", `before request ${request}`);
          },
        },
      });
      expect(await writeAgain(rig)).toMatchObject({ was: "replaced" });
      const texts = lookAt(rig.book).flatMap(({ cells }) => Object.values(cells));
      expect(texts).toContain(`before request ${request}`);
    }
  });

  test("stays where it is when it comes after the swap", async () => {
    const rig = await rigWithOurs();
    rig.host.failWith({
      meanwhile: {
        request: 5,
        happens: () => {
          rig.host.person.type("Hardware", "C9", "quick");
        },
      },
    });
    expect(await writeAgain(rig)).toMatchObject({ was: "replaced", keptAs: null });
    expect(cellsOf(rig, "Hardware")).toMatchObject({ C9: "quick" });
    rig.host.failWith({});
    expect(await writeAgain(rig)).toMatchObject({ keptAs: "Hardware (kept)" });
    expect(cellsOf(rig, "Hardware (kept)")).toMatchObject({ C9: "quick" });
  });
});
