/** @jest-environment jsdom */
import { afterEach, describe, expect, test } from "@jest/globals";
import { cleanup, screen, waitFor, within } from "@testing-library/react";
import { workbookOf } from "../app/typedWorkbook";
import { renderPane, statusText } from "./renderPane";

afterEach(cleanup);

describe("a workbook without a schedule", () => {
  test("is offered sheets to fill, and keeps what it has", async () => {
    const workbook = workbookOf({ Notes: [["call the architect"]] });
    const { user } = await renderPane(workbook);
    expect(screen.getByRole("heading", { name: /No schedule of openings/ })).toBeTruthy();
    await user.click(screen.getByRole("checkbox", { name: /Kit book/ }));
    await user.click(screen.getByRole("button", { name: "Add these sheets" }));
    await waitFor(() =>
      expect(statusText()).toBe("No openings yet. Type the first below the headings."),
    );
    const names = workbook.snapshot().sheets.map(({ name }) => name);
    expect(names.slice(0, 3)).toEqual(["Notes", "Schedule", "Items"]);
    expect(names).toContain("Kit book parts");
    expect(await workbook.activeSheet()).toBe("Schedule");
    // Whoever types at once types the first opening, and no heading over.
    expect(await workbook.selection()).toMatchObject({ sheet: "Schedule", row: 1, column: 0 });
    expect(screen.getByText(/The schedule has no opening yet/)).toBeTruthy();
    expect(screen.getByRole("button", { name: "Go to A2 on Schedule" })).toBeTruthy();
    expect(workbook.snapshot().sheets[0]?.rows[0]?.[0]?.value).toBe("call the architect");
  });

  test("can have the demo, which is counted at once", async () => {
    const { user } = await renderPane(workbookOf({ Sheet1: [] }));
    await user.click(screen.getByRole("button", { name: "Add the demo" }));
    await waitFor(() => expect(statusText()).toMatch(/^\d+of \d+ openings counted/));
  });

  test("may say which sheet is the schedule, whatever its headings", async () => {
    const workbook = workbookOf({
      Notes: [["nothing"]],
      Doors: [
        ["Where", "Breadth", "Tallness"],
        ["Crib", "4'", "7'"],
      ],
    });
    const { user } = await renderPane(workbook);
    await user.selectOptions(screen.getByRole("combobox", { name: "Openings from" }), "Doors");
    // No heading of it is known, so the pane asks which column is what.
    await user.click(await screen.findByRole("tab", { name: "Set-up" }));
    expect(await screen.findByText(/Say which column is which/)).toBeTruthy();
    const choose = async (column: RegExp, heading: string) => {
      const choice = await screen.findByRole("combobox", { name: column });
      await within(choice).findByRole("option", { name: heading });
      await user.selectOptions(choice, heading);
    };
    await choose(/^Width/, "B: Breadth");
    await choose(/^Height/, "C: Tallness");
    await waitFor(() => expect(statusText()).toBe("0of 1 opening counted1 opening is not counted"));
  });

  test("says why nothing can be added", async () => {
    const workbook = workbookOf({ Notes: [] });
    workbook.protectStructure();
    const { user } = await renderPane(workbook);
    await user.click(screen.getByRole("button", { name: "Add the demo" }));
    expect((await screen.findByRole("alert")).textContent).toContain(
      "structure of this workbook is protected",
    );
  });
});
