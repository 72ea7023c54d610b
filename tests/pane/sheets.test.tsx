/** @jest-environment jsdom */
import { afterEach, describe, expect, test } from "@jest/globals";
import { cleanup, fireEvent, screen, waitFor, within } from "@testing-library/react";
import { readSettings } from "../../src/app/settings";
import { plainLabelGrid } from "../../src/sheets/crew/labelGrid";
import { cellText } from "../../src/core/base/cell";
import type { MemoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { demoWorkbook } from "../app/typedWorkbook";
import { openView, renderPane } from "./renderPane";

afterEach(cleanup);

const sheetNames = (workbook: MemoryWorkbook) => workbook.snapshot().sheets.map(({ name }) => name);

async function openSheets(workbook: MemoryWorkbook) {
  const { user } = await renderPane(workbook);
  await openView(user, /Sheets/);
  await screen.findByRole("button", { name: /^Write sheets/ });
  const write = async () => {
    await waitFor(() => {
      const button = screen.getByRole("button", { name: /^Write sheets/ });
      expect(button.getAttribute("aria-disabled")).not.toBe("true");
    });
    await user.click(screen.getByRole("button", { name: /^Write sheets/ }));
  };
  return { user, write };
}

describe("writing the sheets", () => {
  test("writes all jobs, links to the sheets, and says that openings are missing", async () => {
    const workbook = await demoWorkbook();
    const { user, write } = await openSheets(workbook);
    expect(screen.getByText(/openings are not counted. The sheets will say so/)).toBeTruthy();
    await write();
    await screen.findByText(/sheets written/);
    await user.click(screen.getByRole("button", { name: /^Hardware Tool crib/ }));
    expect(await workbook.activeSheet()).toMatch(/^Hardware Tool crib/);
  });

  test("writes the jobs chosen, in one sheet, without costs", async () => {
    const workbook = await demoWorkbook();
    const before = sheetNames(workbook);
    const { user, write } = await openSheets(workbook);
    await user.click(screen.getByRole("checkbox", { name: /Stock room/ }));
    expect(screen.getByRole("checkbox", { name: "All jobs" })).toMatchObject({
      indeterminate: true,
    });
    await user.click(screen.getByRole("radio", { name: "One sheet for all jobs" }));
    await user.click(screen.getByRole("switch", { name: "With costs" }));
    expect(screen.getByRole("button", { name: "Write sheets for 2 jobs" })).toBeTruthy();
    await write();
    await screen.findByText(/sheets written/);
    expect(sheetNames(workbook)).toEqual([...before, "Hardware", "Reasons", "Findings"]);
    const hardware = workbook.snapshot().sheets.find(({ name }) => name === "Hardware");
    const texts = hardware?.rows.flat().map((cell) => cellText(cell?.value ?? null)) ?? [];
    expect(texts.some((text) => text.includes("Stock room"))).toBe(false);
    expect(texts.some((text) => text.startsWith("Unit cost"))).toBe(false);
  });

  test("writes nothing for no job", async () => {
    const { user } = await openSheets(await demoWorkbook());
    await user.click(screen.getByRole("checkbox", { name: "All jobs" }));
    const button = screen.getByRole("button", { name: "Write sheets for 0 jobs" });
    expect(button.getAttribute("aria-disabled")).toBe("true");
  });

  test("says in one sentence what changed since the last time", async () => {
    const workbook = await demoWorkbook();
    const { write } = await openSheets(workbook);
    await write();
    await screen.findByText("Nothing has changed since these sheets were last written.");
    const [headings = 0] = (workbook.snapshot().sheets[0]?.rows ?? []).flatMap((cells, row) =>
      cells.some((cell) => cell?.value === "Mark") ? [row] : [],
    );
    workbook.type({ sheet: "Schedule", row: headings + 1, column: 2 }, 9);
    const sentence = await screen.findByText(/^Since these sheets were last written, .* more/);
    await write();
    await waitFor(() =>
      expect(screen.getByText(/sheets written/).parentElement?.textContent).toContain(
        sentence.textContent,
      ),
    );
  });

  test("keeps what a person typed into a sheet of ours, and says where", async () => {
    const workbook = await demoWorkbook();
    const { write } = await openSheets(workbook);
    await write();
    await screen.findByText(/sheets written/);
    workbook.type({ sheet: "Findings", row: 1, column: 9 }, "my note");
    await write();
    const kept = await screen.findByText(/You had typed into “Findings”/);
    expect(within(kept).getByRole("button", { name: "Findings (kept)" })).toBeTruthy();
  });

  test("names older sheets that were not renewed", async () => {
    const { user, write } = await openSheets(await demoWorkbook());
    await write();
    await screen.findByText(/sheets written/);
    await user.click(screen.getByRole("radio", { name: "One sheet for all jobs" }));
    await write();
    const older = await screen.findByText(/From an earlier writing/);
    expect(within(older).getAllByRole("button")).toHaveLength(3);
  });

  test("says why the host refused, with the workbook as it was", async () => {
    const workbook = await demoWorkbook();
    const { write } = await openSheets(workbook);
    const before = sheetNames(workbook);
    workbook.protectStructure();
    await write();
    const said = await screen.findByText(/structure of this workbook is protected/);
    expect(said).toBeTruthy();
    expect(sheetNames(workbook)).toEqual(before);
  });

  test("is cancelled by keyboard at once: the focus is on the way out", async () => {
    const workbook = await demoWorkbook();
    const before = sheetNames(workbook);
    const { user } = await openSheets({
      ...workbook,
      write: (drawings, options = {}) =>
        new Promise((resolve) => {
          options.signal?.addEventListener("abort", () => {
            resolve(workbook.write(drawings, options));
          });
        }),
    });
    await waitFor(() => {
      const button = screen.getByRole("button", { name: /^Write sheets/ });
      expect(button.getAttribute("aria-disabled")).not.toBe("true");
    });
    screen.getByRole("button", { name: /^Write sheets/ }).focus();
    await user.keyboard("{Enter}");
    const cancel = await screen.findByRole("button", { name: "Cancel" });
    expect(document.activeElement).toBe(cancel);
    await user.keyboard("{Enter}");
    await screen.findByText("Writing was cancelled. The workbook is as it was.");
    expect(sheetNames(workbook)).toEqual(before);
  });
});

describe("what the crew works from", () => {
  const kind = (name: RegExp) => screen.getByRole("checkbox", { name });

  test("is written beside the hardware sheets, or by itself", async () => {
    const workbook = await demoWorkbook();
    const before = sheetNames(workbook);
    const { user, write } = await openSheets(workbook);
    await user.click(kind(/^Hardware/));
    expect(screen.queryByRole("switch", { name: "With costs" })).toBeNull();
    await user.click(kind(/^Packing lists/));
    await user.click(kind(/^Loading lists/));
    await user.click(screen.getByRole("radio", { name: "One sheet for all jobs" }));
    await write();
    await screen.findByText(/sheets written/);
    expect(sheetNames(workbook)).toEqual([...before, "Packing", "Loading"]);
    const packing = workbook.snapshot().sheets.find(({ name }) => name === "Packing");
    expect(packing?.pictures?.length).toBeGreaterThan(3);
  });

  test("is nothing where no kind is chosen", async () => {
    const { user } = await openSheets(await demoWorkbook());
    await user.click(kind(/^Hardware/));
    const button = screen.getByRole("button", { name: /^Write sheets/ });
    expect(button.getAttribute("aria-disabled")).toBe("true");
  });

  test("names its own older sheets, and no hardware sheet that it leaves alone", async () => {
    const { user, write } = await openSheets(await demoWorkbook());
    await user.click(kind(/^Loading lists/));
    await write();
    await screen.findByText(/sheets written/);
    await user.click(kind(/^Hardware/));
    await user.click(screen.getByRole("radio", { name: "One sheet for all jobs" }));
    await write();
    const older = await screen.findByText(/From an earlier writing/);
    expect(
      within(older)
        .getAllByRole("button")
        .map((each) => each.textContent),
    ).toEqual([
      expect.stringMatching(/^Loading/),
      expect.stringMatching(/^Loading/),
      expect.stringMatching(/^Loading/),
    ]);
  });

  test.each([
    [{ pictures: "kept" }, /They are in the .xlsx that you save, and under Jobs/],
    [{ pictures: "words" }, /Their words stand in their place/],
    [{ charts: "kept" }, /It is in the .xlsx that you save, and under Margins/],
    [{ charts: "none" }, /made no chart. Its numbers stand on the sheet/],
  ] as const)("says where %j are that the spreadsheet does not draw", async (what, words) => {
    const workbook = await demoWorkbook();
    const { user, write } = await openSheets({
      ...workbook,
      write: async (drawings, options) => {
        const written = await workbook.write(drawings, options);
        if (!written.ok) return written;
        return { ok: true, value: written.value.map((sheet) => ({ ...sheet, ...what })) };
      },
    });
    await user.click(kind(/^Packing lists/));
    await write();
    await screen.findByText(words);
  });

  test("has labels on paper that is set here and kept in the workbook", async () => {
    const workbook = await demoWorkbook();
    const { user } = await openSheets(workbook);
    expect(screen.queryByRole("button", { name: /^Label paper/ })).toBeNull();
    await user.click(kind(/^Bag labels/));
    await user.click(screen.getByRole("button", { name: /^Label paper/ }));
    const field = (name: string) => screen.getByRole("textbox", { name });
    const retype = (name: string, text: string) =>
      fireEvent.change(field(name), { target: { value: text } });
    retype("Labels across", "3");
    retype("Labels down", "10");
    retype("Margin above", "12.7 mm");
    retype("Gap across", "1/8");
    const kept = async () => (await readSettings(workbook)).labels;
    await waitFor(async () =>
      expect(await kept()).toEqual({
        ...plainLabelGrid,
        columns: 3,
        rows: 10,
        margins: { ...plainLabelGrid.margins, top: 0.5 },
        gapAcross: 0.125,
      }),
    );
    retype("Labels down", "99");
    await screen.findByText(/1 to 30 rows, and not 3 x 99/);
    expect((await kept()).rows).toBe(10);
    retype("Labels down", "10");
    retype("Margin left", "wide");
    await screen.findByText(/Margin left: type a length, such as 1\/2/);
    expect((await kept()).margins.left).toBe(0.5);
  });
});
