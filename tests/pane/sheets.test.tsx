/** @jest-environment jsdom */
import { afterEach, describe, expect, test } from "@jest/globals";
import { cleanup, screen, waitFor, within } from "@testing-library/react";
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
