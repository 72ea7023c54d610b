/** @jest-environment jsdom */
import { afterEach, describe, expect, test } from "@jest/globals";
import { cleanup, fireEvent, waitFor, within } from "@testing-library/react";
import axe from "axe-core";
import type { MemoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { demoWorkbook, scheduleRows, workbookOf } from "../app/typedWorkbook";
import { openMargins } from "./openMargins";

afterEach(cleanup);

/** Contrast, which differs in light and dark, needs a browser that draws; the page around the pane brings its landmarks and title. */
const rules = { "color-contrast": { enabled: false }, region: { enabled: false } };
async function faults(): Promise<readonly string[]> {
  const { violations } = await axe.run(document.body, { rules });
  return violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html}`));
}

/** The value of a figure of the job that is open. */
const figure = (panel: HTMLElement, name: RegExp): string =>
  within(panel)
    .getAllByText(name, { selector: "dt" })
    .map((term) => term.nextElementSibling?.textContent)[0] ?? "";

const oneJob = (): MemoryWorkbook =>
  workbookOf({
    Schedule: scheduleRows("A-1 | 2 | sliding door | 8' | 7' | 8'"),
    Rates: [
      ["Rate", "Usual"],
      ["Lead installer, wage", 40],
      ["Price by", "markup"],
      ["Markup, margin or typed price", "24 %"],
      ["Target margin", "24 %"],
      ["Round the price to", 0],
    ],
  });

const rowOf = (panel: HTMLElement, name: string): readonly string[] =>
  [...(within(panel).getByRole("rowheader", { name }).closest("tr")?.cells ?? [])].map(
    (cell) => cell.textContent,
  );

describe("all jobs", () => {
  test("stand with what is most at risk first, or in another order, and are sound", async () => {
    const { user, panel } = await openMargins(await demoWorkbook());
    const names = (): readonly string[] =>
      within(within(panel).getByRole("list", { name: "Jobs" }))
        .getAllByRole("button")
        .map((button) => button.textContent);
    expect(names()).toHaveLength(3);
    await user.selectOptions(within(panel).getByRole("combobox", { name: "First comes" }), "name");
    expect(names()).toEqual([...names()].sort());
    expect(
      within(panel).getByText(/markup = profit \/ cost; margin = profit \/ price/),
    ).toBeTruthy();
    expect(await faults()).toEqual([]);
  });

  test("take the same changes, and those below their target are named", async () => {
    const { user, panel, openPart } = await openMargins(await demoWorkbook());
    await openPart("What if, on all jobs");
    const before = within(panel).getByText(/ of 3 below the target/).textContent;
    await user.type(within(panel).getByRole("textbox", { name: "Discount: typed change" }), "30");
    await within(panel).findByText("3 jobs of 3 below the target");
    expect(before).not.toContain("3 jobs of");
    const names = within(within(panel).getByRole("list", { name: "Below the target" }));
    expect(names.getAllByRole("listitem")).toHaveLength(3);
    expect(await faults()).toEqual([]);
  });

  test("are written as price sheets and margins", async () => {
    const workbook = await demoWorkbook();
    const { user, panel, openPart } = await openMargins(workbook);
    await openPart("Sheets");
    await user.click(
      within(panel).getByRole("button", { name: "Write margins and 3 price sheets" }),
    );
    await within(panel).findByText(/4 sheets written/);
    const marks = async () => (await workbook.sheets()).flatMap(({ mark }) => mark?.kind ?? []);
    expect(await marks()).toEqual(["price", "price", "price", "margins"]);
    await user.click(
      within(panel).getByRole("button", { name: "Write what-if, loads and actuals" }),
    );
    await within(panel).findByText(/3 sheets written/);
    expect(await marks()).toHaveLength(7);
  });
});

describe("a workbook without rates", () => {
  test("says so, and adds a rates sheet beside what stands", async () => {
    const workbook = workbookOf({
      Schedule: scheduleRows("A-1 | 2 | sliding door | 8' | 7' | 8'"),
    });
    const { user, panel } = await openMargins(workbook);
    expect(await faults()).toEqual([]);
    await user.click(within(panel).getByRole("button", { name: "Add a rates sheet" }));
    await waitFor(() => expect(within(panel).queryByText(/has no rates sheet/)).toBeNull());
    expect((await workbook.sheets()).map(({ name }) => name)).toEqual(["Schedule", "Rates"]);
  });
});

describe("one job", () => {
  test("shows markup and margin each with its formula, and a markup that was meant as a margin", async () => {
    const { panel, openJob, openPart } = await openMargins(oneJob());
    await openJob(/^Crib/);
    expect(figure(panel, /^Markup = profit \/ cost$/)).toBe("24.0 %");
    expect(figure(panel, /^Margin = profit \/ price$/)).toMatch(/^19\.\d %$/);
    expect(
      within(panel).getByText(/A markup of 24 % is the same number as the target margin/),
    ).toBeTruthy();
    for (const part of ["From cost to price", "Hours", "Weight and freight"]) await openPart(part);
    expect(within(panel).getByText("Hours of all")).toBeTruthy();
    expect(within(panel).getByText("Charged by weight")).toBeTruthy();
    expect(await faults()).toEqual([]);
  });

  test("follows a rate that is changed in the spreadsheet", async () => {
    const workbook = oneJob();
    const { panel, openJob } = await openMargins(workbook);
    await openJob(/^Crib/);
    const before = figure(panel, /^Price$/);
    workbook.type({ sheet: "Rates", row: 1, column: 1 }, 80);
    await waitFor(() => expect(figure(panel, /^Price$/)).not.toBe(before));
  });

  test("what if: a slider and a typed change move the table, and a win price is read by its way", async () => {
    const { user, panel, openJob, openPart } = await openMargins(oneJob());
    await openJob(/^Crib/);
    await openPart("What if");
    const [, , before, none] = rowOf(panel, "Cost");
    expect(none).toBe("$0.00");
    const slider = within(panel).getByRole("slider", { name: /^Labour hours/ });
    fireEvent.change(slider, { target: { value: "20" } });
    const [, , more] = rowOf(panel, "Cost");
    expect(more).not.toBe(before);
    const typed = within(panel).getByRole("textbox", { name: "Labour hours: typed change" });
    expect(typed).toHaveProperty("value", "20");
    await user.clear(typed);
    await user.type(typed, "lots");
    expect(within(panel).getByText(/lots is not a percentage/)).toBeTruthy();
    expect(rowOf(panel, "Cost")[2]).toBe(before);
    await user.clear(typed);
    await user.selectOptions(
      within(panel).getByRole("combobox", { name: "Price that would win it" }),
      "margin",
    );
    await user.type(within(panel).getByRole("textbox", { name: "Percent" }), "24");
    expect(rowOf(panel, "Margin")[2]).toBe("24.0 %");
    expect(within(panel).getByText("Discount that still keeps it")).toBeTruthy();
    expect(await faults()).toEqual([]);
    await user.click(within(panel).getByRole("button", { name: "Start over" }));
    expect(within(panel).getByText("Missing to the target")).toBeTruthy();
  });

  test("what was typed is there again after a look at another job", async () => {
    const { user, panel, openJob, openPart } = await openMargins(await demoWorkbook());
    await openJob(/^Tool crib/);
    await openPart("What if");
    await user.type(within(panel).getByRole("textbox", { name: "Freight: typed change" }), "12");
    await user.click(within(panel).getByRole("button", { name: "All jobs" }));
    await openJob(/^Stock room/);
    await user.click(within(panel).getByRole("button", { name: "All jobs" }));
    await openJob(/^Tool crib/);
    await openPart("What if");
    const typed = within(panel).getByRole("textbox", { name: "Freight: typed change" });
    expect(typed).toHaveProperty("value", "12");
  });
});

test("alternates are typed on a sheet and priced beside the job", async () => {
  const workbook = oneJob();
  const { user, panel, openJob, openPart } = await openMargins(workbook);
  await openJob(/^Crib/);
  await openPart("Alternates and options");
  await user.click(within(panel).getByRole("button", { name: "Add a sheet of alternates" }));
  await within(panel).findByText("Example: a closer on each door (option)");
  const { rows = [] } = workbook.snapshot().sheets.find(({ name }) => name === "Alternates") ?? {};
  const row = rows.findIndex((cells) => cells[0]?.value === "Example: a closer on each door");
  workbook.type({ sheet: "Alternates", row, column: 6 }, 100);
  expect(within(panel).getByText(/^cost \$0\.00, 0 hours/)).toBeTruthy();
  await within(panel).findByText(/^cost \+\$1\d\d\.\d\d, 0 hours; the job with it/);
  expect(await faults()).toEqual([]);
});

describe("simulation", () => {
  test("draws by typed ranges, says the chance, and that it is old when a range changes", async () => {
    const workbook = oneJob();
    const { user, panel, openJob, openPart } = await openMargins(workbook);
    await openJob(/^Crib/);
    await openPart("Chance of missing the target");
    expect(within(panel).getByText(/These ranges are invented/)).toBeTruthy();
    const draws = within(panel).getByRole("textbox", { name: "Draws" });
    await user.clear(draws);
    await user.type(draws, "2000");
    await user.click(within(panel).getByRole("button", { name: "Simulate" }));
    await within(panel).findByRole("img", { name: /^Histogram of 2,000 margins/ });
    expect(
      within(panel).getByText(/Chance of falling below the target of 24 %: 100.0 %/),
    ).toBeTruthy();
    expect(within(panel).queryByText(/simulate again/)).toBeNull();
    expect(await faults()).toEqual([]);
    const high = within(panel).getByRole("textbox", { name: /^Labour hours: highest change/ });
    await user.clear(high);
    await user.type(high, "60");
    await within(panel).findByText(/simulate again/);
    await waitFor(async () =>
      expect(await workbook.readSetting("ranges")).toContain('"high":600000'),
    );
    const low = within(panel).getByRole("textbox", { name: /^Labour hours: lowest change/ });
    await user.clear(low);
    await user.type(low, "90");
    expect(within(panel).getByText(/must be between the lowest and the highest/)).toBeTruthy();
  });

  test("is cancelled", async () => {
    const { user, panel, openJob, openPart } = await openMargins(oneJob());
    await openJob(/^Crib/);
    await openPart("Chance of missing the target");
    const draws = within(panel).getByRole("textbox", { name: "Draws" });
    await user.clear(draws);
    await user.type(draws, "1000000");
    await user.click(within(panel).getByRole("button", { name: "Simulate" }));
    await user.click(await within(panel).findByRole("button", { name: "Cancel" }));
    await within(panel).findByText(/Cancelled: nothing was drawn/);
    expect(within(panel).getByRole("button", { name: "Simulate" })).toBeTruthy();
  });
});

describe("actual against estimate", () => {
  test("a sheet of every cost, step and item is added, and what is typed there is compared", async () => {
    const workbook = oneJob();
    const { user, panel, openJob, openPart } = await openMargins(workbook);
    await openJob(/^Crib/);
    await openPart("Actual against estimate");
    await user.click(within(panel).getByRole("button", { name: "Add a sheet of actuals" }));
    await waitFor(async () =>
      expect((await workbook.sheets()).map(({ name }) => name)).toContain("Actuals Crib"),
    );
    const { rows = [] } =
      workbook.snapshot().sheets.find(({ name }) => name === "Actuals Crib") ?? {};
    const row = rows.findIndex((cells) => cells[2]?.value === "Freight");
    const hours = rows.findIndex((cells) => cells[1]?.value === "hours");
    workbook.type({ sheet: "Actuals Crib", row, column: 3 }, 999);
    workbook.type({ sheet: "Actuals Crib", row: hours, column: 3 }, 80);
    await within(panel).findByText("By step of the work");
    expect(within(panel).getByText(/actual \$999.00/)).toBeTruthy();
    expect(within(panel).getByText("What would have fitted")).toBeTruthy();
    const [first, ...others] = within(panel).getAllByRole("checkbox");
    if (first === undefined) throw new Error("Nothing is suggested.");
    expect(others.length).toBeGreaterThan(0);
    await user.click(first);
    expect(await faults()).toEqual([]);
    await user.click(
      within(panel).getByRole("button", { name: "Write the kit book with 1 new time" }),
    );
    // The suggestion that was taken counts now, and so is suggested no more as it was.
    const label = first.getAttribute("aria-label") ?? first.closest("span")?.textContent ?? "";
    await waitFor(() => expect(within(panel).queryByRole("checkbox", { name: label })).toBeNull());
    const names = (await workbook.sheets()).map(({ name }) => name);
    expect(names).toContain("Kit book parts");
  });
});

describe("sheets of a job", () => {
  test("the quotation is written as a sheet, with terms to type", async () => {
    const workbook = oneJob();
    const { user, panel, openJob, openPart } = await openMargins(workbook);
    await openJob(/^Crib/);
    await openPart("Sheets and quotation");
    await user.click(within(panel).getByRole("button", { name: "Write the quotation as a sheet" }));
    await within(panel).findByText(/1 sheet written/);
    expect((await workbook.sheets()).map(({ name }) => name)).toContain("Quotation Crib");
    await user.click(within(panel).getByRole("button", { name: "Add a sheet of terms" }));
    await waitFor(async () =>
      expect((await workbook.sheets()).map(({ name }) => name)).toContain("Quotation terms"),
    );
    expect(await faults()).toEqual([]);
  });
});
