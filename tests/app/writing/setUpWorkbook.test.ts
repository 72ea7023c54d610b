import { describe, expect, test } from "@jest/globals";
import { readInputs } from "../../../src/app/reading/inputs";
import { readPriceInputs } from "../../../src/app/pricing/priceWorkbook";
import { defaultSettings } from "../../../src/app/settings";
import { setUpDrawings } from "../../../src/app/writing/setUpWorkbook";
import { starterRanges } from "../../../src/core/pricing/chances/ownerRanges";
import { starterTerms } from "../../../src/core/pricing/quotationTerms";
import { readJobDates } from "../../../src/tables/purchasingTables";
import { readTermsTable } from "../../../src/tables/termsTable";
import { workbookOf } from "../typedWorkbook";

describe("setting a workbook up", () => {
  test("adds what is wanted beside what stands, whatever the names", async () => {
    const workbook = workbookOf({ Schedule: [["my own notes"]], Items: [] });
    const before = workbook.snapshot().sheets;
    const made = await workbook.write(
      setUpDrawings(new Set(["schedule", "items", "jobs", "kitBook"]), ["door"]),
    );
    if (!made.ok) throw new Error(made.error.message);
    expect(made.value.map(({ name }) => name)).toEqual([
      "Schedule (2)",
      "Items (2)",
      "Job dates",
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
      setUpDrawings(new Set(["schedule", "items", "jobs", "kitBook"]), ["sliding door"]),
    );
    const inputs = await readInputs(workbook, defaultSettings);
    if (!inputs.ok) throw new Error(inputs.error.message);
    const { hasOwnItems, hasOwnKitBook, scheduleSources, findings } = inputs.value;
    expect({ hasOwnItems, hasOwnKitBook }).toEqual({ hasOwnItems: true, hasOwnKitBook: true });
    expect(scheduleSources).toEqual([{ kind: "sheet", sheet: "Schedule" }]);
    expect(findings).toEqual([]);
    const dates = await workbook.read({ kind: "sheet", sheet: "Job dates" });
    expect(dates.ok && readJobDates(dates.value)).toEqual([]);
  });

  test("makes the sheets of prices, which are read back as they are", async () => {
    const workbook = workbookOf({ Start: [] });
    const made = await workbook.write(setUpDrawings(new Set(["prices"]), []));
    expect(made.ok && made.value.map(({ name }) => name)).toEqual([
      "Rates",
      "Quotation terms",
      "Ranges",
      "Alternates",
    ]);
    const read = await readPriceInputs(workbook);
    if (!read.ok) throw new Error(read.error.message);
    const { ratesSheet, rates, ranges, alternateRows, findings } = read.value;
    expect(ratesSheet).toBe("Rates");
    expect(rates.usual.target?.value).toBe("24 %");
    expect(ranges).toEqual({ ranges: starterRanges, from: "sheet", findings: [] });
    expect([alternateRows, findings]).toEqual([[], []]);
    const terms = await workbook.read({ kind: "sheet", sheet: "Quotation terms" });
    expect(terms.ok && readTermsTable(terms.value)?.terms).toHaveLength(starterTerms.length);
  });

  test("makes only what is wanted", async () => {
    const workbook = workbookOf({ Start: [] });
    const made = await workbook.write(setUpDrawings(new Set(["items"]), []));
    expect(made.ok && made.value.map(({ name }) => name)).toEqual(["Items"]);
  });
});
