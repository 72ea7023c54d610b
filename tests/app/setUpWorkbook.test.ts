import { describe, expect, test } from "@jest/globals";
import { readInputs } from "../../src/app/inputs";
import { defaultSettings } from "../../src/app/settings";
import { setUpDrawings } from "../../src/app/setUpWorkbook";
import { workbookOf } from "./typedWorkbook";

describe("setting a workbook up", () => {
  test("adds what is wanted beside what stands, whatever the names", async () => {
    const workbook = workbookOf({ Schedule: [["my own notes"]], Items: [] });
    const before = workbook.snapshot().sheets;
    const made = await workbook.write(
      setUpDrawings(new Set(["schedule", "items", "kitBook"]), ["door"]),
    );
    if (!made.ok) throw new Error(made.error.message);
    expect(made.value.map(({ name }) => name)).toEqual([
      "Schedule (2)",
      "Items (2)",
      "Kit book sizes",
      "Kit book parts",
      "Kit book limits",
      "Kit book charts",
    ]);
    expect(workbook.snapshot().sheets.slice(0, 2)).toEqual(before);
  });

  test("makes sheets that are read back as the person's own", async () => {
    const workbook = workbookOf({ Start: [] });
    await workbook.write(
      setUpDrawings(new Set(["schedule", "items", "kitBook"]), ["sliding door"]),
    );
    const inputs = await readInputs(workbook, defaultSettings);
    if (!inputs.ok) throw new Error(inputs.error.message);
    const { hasOwnItems, hasOwnKitBook, scheduleSources, findings } = inputs.value;
    expect({ hasOwnItems, hasOwnKitBook }).toEqual({ hasOwnItems: true, hasOwnKitBook: true });
    expect(scheduleSources).toEqual([{ kind: "sheet", sheet: "Schedule" }]);
    expect(findings).toEqual([]);
  });

  test("makes only what is wanted", async () => {
    const workbook = workbookOf({ Start: [] });
    const made = await workbook.write(setUpDrawings(new Set(["items"]), []));
    expect(made.ok && made.value.map(({ name }) => name)).toEqual(["Items"]);
  });
});
