/** Suggestions of actuals, taken over into the kit book one by one. */
import { describe, expect, test } from "@jest/globals";
import { acceptSuggestions } from "../../../src/app/pricing/acceptSuggestions";
import { actualsReport } from "../../../src/app/pricing/jobActuals";
import { priceWorkbook } from "../../../src/app/pricing/priceWorkbook";
import { defaultSettings } from "../../../src/app/settings";
import { takeOffWorkbook } from "../../../src/app/reading/takeOffWorkbook";
import { cellText, type CellValue } from "../../../src/core/base/cell";
import { demoWorkbook } from "../typedWorkbook";

type Demo = Awaited<ReturnType<typeof demoWorkbook>>;

async function reportOf(workbook: Demo) {
  const takeOff = await takeOffWorkbook(workbook, defaultSettings);
  if (!takeOff.ok) throw new Error(takeOff.error.message);
  const prices = await priceWorkbook(workbook, takeOff.value, defaultSettings, 46_200);
  if (!prices.ok) throw new Error(prices.error.message);
  const { inputs } = takeOff.value;
  return { inputs, suggestions: actualsReport(prices.value.actuals, inputs).suggestions };
}

const minutesOf = ({ inputs }: Awaited<ReturnType<typeof reportOf>>): readonly CellValue[] =>
  inputs.kitBook.parts.map(({ minutes }) => minutes.value);

describe("a suggestion", () => {
  test("that is named changes its row and no other, in the next edition of the book", async () => {
    const workbook = await demoWorkbook();
    const before = await reportOf(workbook);
    const third = before.suggestions[2];
    const drawings = acceptSuggestions(before.suggestions, [3], before.inputs);
    if (!drawings.ok || third === undefined) throw new Error("not accepted");
    const sheets = workbook.snapshot().sheets;
    await workbook.write(drawings.value);
    expect(workbook.snapshot().sheets.slice(0, sheets.length)).toEqual(sheets);
    const after = await reportOf(workbook);
    expect(after.inputs.kitBookEdition).toBe(before.inputs.kitBookEdition + 1);
    const [was, is] = [minutesOf(before), minutesOf(after)];
    const changed = is.flatMap((value, index) => (value === was[index] ? [] : [index]));
    expect(changed.map((index) => `parts ${index + 1}`)).toEqual([third.row]);
    expect(changed.map((index) => cellText(is[index] ?? null))).toEqual([third.to]);
    // Every other row is offered again, by the same bags.
    expect(after.suggestions.map(({ row }) => row)).toContain(before.suggestions[1]?.row);
  });

  test("about spares names the cell to type into instead", async () => {
    const { suggestions, inputs } = await reportOf(await demoWorkbook());
    const number = suggestions.findIndex(({ kind }) => kind === "spares") + 1;
    expect(acceptSuggestions(suggestions, [number], inputs)).toEqual({
      ok: false,
      error: `Suggestion ${number} is about spares of HN 1/4: type 7 into Items!G10.`,
    });
  });

  test("that nobody made is refused", async () => {
    const { suggestions, inputs } = await reportOf(await demoWorkbook());
    const accepted = acceptSuggestions(suggestions, [1, 999], inputs);
    expect(accepted).toEqual({ ok: false, error: expect.stringContaining("no suggestion 999") });
  });
});
