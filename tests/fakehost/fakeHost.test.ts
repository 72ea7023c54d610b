import { beforeEach, describe, expect, test } from "@jest/globals";
import { newBook, type FakeBook } from "./book";
import { fakeHost, type FakeHost } from "./fakeHost";
import { excelApiUpTo } from "./excelModel";
import { loadOfficeModel } from "./officeModel";

const model = loadOfficeModel(excelApiUpTo("1.9"));
let book: FakeBook;
let host: FakeHost;

beforeEach(() => {
  book = newBook("One", "Two");
  host = fakeHost(book, model.OfficeExtension);
});

const run = <T>(batch: (context: Excel.RequestContext) => Promise<T>): Promise<T> =>
  model.Excel.run(batch);

/** Writes to the sheet One through the object model. */
const write = (address: string, values: unknown[][]): Promise<void> =>
  run(async (context) => {
    context.workbook.worksheets.getItem("One").getRange(address).values = values as string[][];
    await context.sync();
  });

const read = (sheet: string, address: string): Promise<unknown[][]> =>
  run(async (context) => {
    const range = context.workbook.worksheets.getItem(sheet).getRange(address).load("values");
    await context.sync();
    return range.values as unknown[][];
  });

const formula = (sheet: string, address: string): Promise<unknown> =>
  run(async (context) => {
    const range = context.workbook.worksheets.getItem(sheet).getRange(address).load("formulas");
    await context.sync();
    return (range.formulas as unknown[][])[0]?.[0];
  });

describe("the library's own rules", () => {
  test("what was not loaded can't be read", async () => {
    const unloaded = run((context) =>
      Promise.resolve(context.workbook.worksheets.getActiveWorksheet().name),
    );
    await expect(unloaded).rejects.toMatchObject({ code: "PropertyNotLoaded" });
  });

  test("a member above the host's set is not there", async () => {
    const newer = run(async (context) => {
      context.workbook.worksheets.getItem("One").getRange("A1").getSpillingToRangeOrNullObject();
      await context.sync();
    });
    await expect(newer).rejects.toMatchObject({ code: "ApiNotFound" });
  });

  test("an error names the statement that failed", async () => {
    const failing = run(async (context) => {
      context.workbook.tables.getItem("Nope").getRange().values = [[1]];
      await context.sync();
    });
    await expect(failing).rejects.toMatchObject({
      code: "ItemNotFound",
      debugInfo: { statement: "var table = tables.getItem(...);" },
    });
  });

  test("what is not in the fake is an error of its own, never a silent success", async () => {
    const unknown = run(async (context) => {
      context.workbook.worksheets.getItem("One").pivotTables.getCount();
      await context.sync();
    });
    await expect(unknown).rejects.toThrow("The fake host has no worksheet.pivotTables");
  });
});

describe("what Excel makes of an entry", () => {
  test.each([
    ["=1+1", 2],
    ["'=1+1", "=1+1"],
    ["007", 7],
    ["'007", "007"],
    ["1/4", 46_026],
    ["TRUE", true],
    ["-2.5", -2.5],
    ["plain", "plain"],
    ["''x", "'x"],
  ])("%s", async (typed, shown) => {
    await write("A1", [[typed]]);
    expect(await read("One", "A1")).toEqual([[shown]]);
  });

  test("in a cell of text format everything stays as typed", async () => {
    await run(async (context) => {
      const range = context.workbook.worksheets.getItem("One").getRange("A1");
      range.numberFormat = [["@"]];
      range.values = [["=1+1"]];
      await context.sync();
    });
    expect(await read("One", "A1")).toEqual([["=1+1"]]);
  });

  test("null leaves a cell as it is", async () => {
    await write("A1:B1", [["a", "b"]]);
    await write("A1:B1", [[null, "c"]]);
    expect(await read("One", "A1:B1")).toEqual([["a", "c"]]);
  });

  test("a grid of another shape is refused", async () => {
    await expect(write("A1:B1", [["a"]])).rejects.toMatchObject({ code: "InvalidArgument" });
  });

  test("a formula that names a sheet that is not there is refused", async () => {
    await expect(write("A1", [["=Three!A1"]])).rejects.toMatchObject({ code: "InvalidArgument" });
  });
});

describe("what happens to references", () => {
  beforeEach(async () => {
    host.person.type("Two", "B2", 5);
    host.person.type("Two", "B3", 6);
    await write("A1:A2", [["=SUM(Two!B2:B3)"], ["=Two!$B$3*2"]]);
  });

  test("they are calculated", async () => {
    expect(await read("One", "A1:A2")).toEqual([[11], [12]]);
  });

  test("a very hidden sheet is not deleted before it is merely hidden", async () => {
    const deleteIt = (visibility: "Hidden" | "VeryHidden"): Promise<void> =>
      run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("Two");
        sheet.visibility = visibility;
        sheet.delete();
        await context.sync();
      });
    await expect(deleteIt("VeryHidden")).rejects.toMatchObject({ code: "InvalidOperation" });
    await deleteIt("Hidden");
    expect(book.sheets.map(({ name }) => name)).toEqual(["One"]);
  });

  test("a sheet that is deleted leaves #REF! behind", async () => {
    host.person.deleteSheet("Two");
    expect(await formula("One", "A1")).toBe("=SUM(#REF!B2:B3)");
    expect(await read("One", "A1")).toEqual([["#REF!"]]);
  });

  test("a sheet that is renamed takes them along", async () => {
    host.person.rename("Two", "Bob's");
    expect(await formula("One", "A1")).toBe("=SUM('Bob''s'!B2:B3)");
  });

  test.each([
    [0, 1, "=SUM(Two!B3:B4)", "=Two!$B$4*2"],
    [2, 1, "=SUM(Two!B2:B4)", "=Two!$B$4*2"],
    [9, 1, "=SUM(Two!B2:B3)", "=Two!$B$3*2"],
    [1, -1, "=SUM(Two!B2:B2)", "=Two!$B$2*2"],
    [1, -2, "=SUM(Two!#REF!)", "=Two!#REF!*2"],
  ])("rows that come or go at %d by %d move them", async (at, count, first, second) => {
    if (count > 0) host.person.insertRows("Two", at, count);
    else host.person.deleteRows("Two", at, -count);
    expect(await formula("One", "A1")).toBe(first);
    expect(await formula("One", "A2")).toBe(second);
  });

  test("pasting moves what is not fixed", async () => {
    await run(async (context) => {
      const sheet = context.workbook.worksheets.getItem("One");
      sheet.getRange("C4").copyFrom("A1:A2");
      await context.sync();
    });
    expect(await formula("One", "C4")).toBe("=SUM(Two!D5:D6)");
    expect(await formula("One", "C5")).toBe("=Two!$B$3*2");
  });

  test("a copied sheet points at itself, and its names are its own", async () => {
    await run(async (context) => {
      context.workbook.names.add("Total", "=One!$A$1");
      await context.sync();
    });
    await write("B1", [["=One!A1"]]);
    expect(host.person.copySheet("One")).toBe("One (2)");
    expect(await formula("One (2)", "B1")).toBe("='One (2)'!A1");
    expect(book.names.map(({ name, formula: text, sheet }) => [name, text, sheet?.name])).toEqual([
      ["Total", "=One!$A$1", undefined],
      ["Total", "='One (2)'!$A$1", "One (2)"],
    ]);
  });

  test("rows that a filter hides are not copied", async () => {
    await write("A1:A3", [["a"], ["b"], ["c"]]);
    book.sheets[0]?.filteredRows.add(1);
    await run(async (context) => {
      const [one, two] = ["One", "Two"].map((name) => context.workbook.worksheets.getItem(name));
      if (one !== undefined) two?.getRange("E1").copyFrom(one.getRange("A1:A3"));
      await context.sync();
    });
    expect(await read("Two", "E1:E3")).toEqual([["a"], ["c"], [""]]);
  });
});

describe("tables", () => {
  const addTable = (address: string, name: string): Promise<void> =>
    run(async (context) => {
      context.workbook.worksheets.getItem("One").tables.add(address, true).name = name;
      await context.sync();
    });

  test("structured references follow a new name and break with the table", async () => {
    await write("A1:B3", [
      ["Item", "Count"],
      ["x", 2],
      ["y", 3],
    ]);
    await addTable("A1:B3", "Lines");
    await write("D1", [["=SUM(Lines[Count])"]]);
    expect(await read("One", "D1")).toEqual([[5]]);
    await run(async (context) => {
      context.workbook.tables.getItem("Lines").name = "Rows";
      await context.sync();
    });
    expect(await formula("One", "D1")).toBe("=SUM(Rows[Count])");
    await run(async (context) => {
      context.workbook.tables.getItem("Rows").delete();
      await context.sync();
    });
    expect(await formula("One", "D1")).toBe("=SUM(#REF!)");
  });

  test("headings are text, none blank and none twice", async () => {
    await write("A1:C2", [
      ["Item", "", "Item"],
      [1, 2, 3],
    ]);
    await addTable("A1:C2", "Lines");
    expect(await read("One", "A1:C1")).toEqual([["Item", "Column2", "Item2"]]);
  });
});

describe("faults", () => {
  test("a request that is refused does nothing, and the next one works", async () => {
    host.failWith({ request: 1 });
    await expect(write("A1", [[1]])).rejects.toMatchObject({ code: "GeneralException" });
    expect(await read("One", "A1")).toEqual([[""]]);
  });

  test("an action that is refused leaves done what came before it", async () => {
    const twoWrites = (): Promise<void> =>
      run(async (context) => {
        const sheet = context.workbook.worksheets.getItem("One");
        sheet.getRange("A1").values = [[1]];
        sheet.getRange("A2").values = [[2]];
        await context.sync();
      });
    host.failWith({});
    await twoWrites();
    const all = host.actions();
    const seen = new Set<string>();
    for (let action = 1; action <= all; action++) {
      host.person.type("One", "A1", null);
      host.person.type("One", "A2", null);
      host.failWith({ action });
      await expect(twoWrites()).rejects.toMatchObject({ code: "GeneralException" });
      seen.add(JSON.stringify(await read("One", "A1:A2")));
    }
    expect([...seen]).toContain('[[1],[""]]');
  });

  test("an answer that is lost leaves the work done", async () => {
    host.failWith({ lostAnswer: 1 });
    await expect(write("A1", [[1]])).rejects.toMatchObject({ code: "GeneralException" });
    expect(await read("One", "A1")).toEqual([[1]]);
  });

  test("more than 5 MB in a request is refused", async () => {
    const long = Array.from({ length: 200 }, () => ["x".repeat(30_000)]);
    await expect(write("A1:A200", long)).rejects.toMatchObject({
      code: "RequestPayloadSizeLimitExceeded",
    });
  });

  test("a protected sheet and a protected structure are refused", async () => {
    const [one] = book.sheets;
    if (one !== undefined) one.isProtected = true;
    await expect(write("A1", [[1]])).rejects.toMatchObject({ code: "AccessDenied" });
    book.structureProtected = true;
    const adding = run(async (context) => {
      context.workbook.worksheets.add("Three");
      await context.sync();
    });
    await expect(adding).rejects.toMatchObject({ code: "AccessDenied" });
  });

  test("while a cell is edited a request is refused, or waits if it asked to", async () => {
    host.beginEdit();
    await expect(write("A1", [[1]])).rejects.toMatchObject({
      code: "InvalidOperationInCellEditMode",
    });
    const waiting = model.Excel.run({ delayForCellEdit: true }, async (context) => {
      context.workbook.worksheets.getItem("One").getRange("A1").values = [[2]];
      await context.sync();
    });
    host.endEdit();
    await waiting;
    expect(await read("One", "A1")).toEqual([[2]]);
  });

  test("nothing works once the workbook is closed", async () => {
    host.close();
    await expect(write("A1", [[1]])).rejects.toMatchObject({ code: "RequestAborted" });
  });
});

test("what a person does reaches those who listen, until they stop", async () => {
  const heard: string[] = [];
  const handler = await run(async (context) => {
    const added = context.workbook.worksheets.onChanged.add((event) => {
      heard.push(event.address);
      return Promise.resolve();
    });
    await context.sync();
    return added;
  });
  const moment = (): Promise<void> => new Promise((done) => setTimeout(done, 5));
  host.person.type("Two", "C3", 1);
  await moment();
  expect(heard).toEqual(["C3"]);
  await model.Excel.run(handler.context, async (context) => {
    handler.remove();
    await context.sync();
  });
  host.person.type("Two", "C3", 2);
  await moment();
  expect(heard).toEqual(["C3"]);
});
