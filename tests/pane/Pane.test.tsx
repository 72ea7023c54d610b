/** @jest-environment jsdom */
import { afterEach, describe, expect, test } from "@jest/globals";
import { cleanup, screen, waitFor, within } from "@testing-library/react";
import { demoWorkbook, scheduleRows, workbookOf } from "../app/typedWorkbook";
import { openView, renderPane, statusText } from "./renderPane";

afterEach(cleanup);

const twoDoors = () =>
  workbookOf({
    Schedule: scheduleRows(
      "A-1 | 2 | sliding door | 8' | 7' | 8'",
      "A-2 | 1 | sliding door | 4' | | 8'",
    ),
  });

describe("the count", () => {
  test("says what is counted and, in words, what is not", async () => {
    await renderPane(twoDoors());
    expect(statusText()).toBe("1of 2 openings counted1 opening is not counted");
    expect(screen.getByRole("button", { name: /1 opening is not counted/ })).toBeTruthy();
  });

  test("follows what is typed: a finding goes once its cell is right", async () => {
    const workbook = twoDoors();
    await renderPane(workbook);
    expect(screen.getByText(/height is blank/i)).toBeTruthy();
    workbook.type({ sheet: "Schedule", row: 2, column: 5 }, "7'");
    await waitFor(() => expect(statusText()).toBe("All2openings counted"));
    expect(screen.queryByText(/height is blank/i)).toBeNull();
  });

  test("keeps the keyboard with a person whose finding goes under their hands", async () => {
    const workbook = twoDoors();
    await renderPane(workbook);
    // The test's document has no window that could be in front.
    document.hasFocus = () => true;
    screen.getByRole("button", { name: "Go to A-2 F3 on Schedule" }).focus();
    workbook.type({ sheet: "Schedule", row: 2, column: 5 }, "7'");
    await waitFor(() => expect(statusText()).toBe("All2openings counted"));
    expect(document.activeElement).toBe(screen.getByRole("tabpanel", { name: /To mend/ }));
  });

  test("goes to the cell that a finding is about", async () => {
    const workbook = twoDoors();
    const { user } = await renderPane(workbook);
    await user.click(screen.getByRole("button", { name: "Go to A-2 F3 on Schedule" }));
    expect(await workbook.selection()).toMatchObject({ sheet: "Schedule", row: 2, column: 5 });
  });

  test("says so where the cell's sheet is gone", async () => {
    const workbook = twoDoors();
    const { user } = await renderPane(workbook);
    const goTo = screen.getByRole("button", { name: "Go to A-2 F3 on Schedule" });
    workbook.rename("Schedule", "Openings");
    await user.click(goTo);
    const said = await screen.findByRole("alert");
    expect(said.textContent).toContain("There is no sheet “Schedule” any more.");
    await user.click(within(said).getByRole("button", { name: "Close this message" }));
    expect(screen.queryByRole("alert")).toBeNull();
  });

  test("says when the spreadsheet does not answer, and counts again when asked", async () => {
    const workbook = twoDoors();
    const { user } = await renderPane(workbook);
    workbook.failAt(1, true);
    workbook.type({ sheet: "Schedule", row: 2, column: 5 }, "7'");
    const said = await screen.findByRole("alert");
    workbook.failAt(null);
    await user.click(within(said).getByRole("button", { name: "Count again" }));
    await waitFor(() => expect(statusText()).toBe("All2openings counted"));
    expect(screen.queryByRole("alert")).toBeNull();
  });
});

describe("the tabs", () => {
  test("are gone through by keyboard, and keep what was open in a view", async () => {
    const { user } = await renderPane(await demoWorkbook());
    screen.getByRole("tab", { name: /To mend/ }).focus();
    await user.keyboard("{ArrowRight}");
    expect(document.activeElement).toBe(screen.getByRole("tab", { name: "Jobs" }));
    const jobs = screen.getByRole("tabpanel", { name: "Jobs" });
    await user.click(within(jobs).getByRole("button", { name: /Tool crib/ }));
    await within(jobs).findByRole("heading", { name: /Tool crib/ });
    screen.getByRole("tab", { name: "Jobs" }).focus();
    await user.keyboard("{End}");
    expect(document.activeElement).toBe(screen.getByRole("tab", { name: "Set-up" }));
    await user.keyboard("{ArrowRight}{ArrowRight}");
    expect(screen.getByRole("heading", { name: /Tool crib/ })).toBeTruthy();
  });

  test.each([
    ["Jobs", "{ArrowDown}", "Changes"],
    ["Jobs", "{ArrowUp}", "Changes"],
    ["Set-up", "{ArrowDown}", "Order"],
    ["Set-up", "{ArrowUp}", "Order"],
    ["Order", "{ArrowRight}", "Margins"],
    ["Set-up", "{ArrowRight}", "To mend"],
  ])("lie in two rows: from %s, %s goes to %s", async (from, keys, to) => {
    const { user } = await renderPane(await demoWorkbook());
    await openView(user, new RegExp(from));
    screen.getByRole("tab", { name: new RegExp(from) }).focus();
    await user.keyboard(keys);
    expect(document.activeElement).toBe(screen.getByRole("tab", { name: new RegExp(to) }));
  });

  test("the count of what is not counted leads to what to mend", async () => {
    const { user } = await renderPane(await demoWorkbook());
    await openView(user, /Jobs/);
    await user.click(screen.getByRole("button", { name: /not counted Show what to mend/ }));
    expect(screen.getByRole("tabpanel", { name: /To mend/ })).toBeTruthy();
    expect(document.activeElement).toBe(screen.getByRole("tab", { name: /To mend/ }));
  });
});

describe("the schedule", () => {
  test("can be another sheet, and the choice is kept in the workbook", async () => {
    const workbook = workbookOf({
      Doors: scheduleRows("A-1 | 1 | sliding door | 8' | 7' | 8'"),
      "Old doors": scheduleRows(
        "B-1 | 1 | sliding door | 8' | 7' | 8'",
        "B-2 | 1 | sliding door | 8' | 7' | 8'",
      ),
    });
    const { user } = await renderPane(workbook);
    const choice = screen.getByRole("combobox", { name: "Openings from" });
    expect(choice.querySelector("option")?.textContent).toBe("Found: Doors and 1 more");
    expect(statusText()).toBe("All3openings counted");
    await user.selectOptions(choice, "Old doors");
    await waitFor(() => expect(statusText()).toBe("All2openings counted"));
    expect(await workbook.readSetting("settings")).toContain('"sheet":"Old doors"');
  });

  test("has its columns shown, corrected and found again", async () => {
    const workbook = workbookOf({
      Schedule: [
        ["Job", "Mark", "Type", "Width", "Breadth", "Height", "Post height"],
        ["Crib", "A-1", "sliding door", "wide", "8'", "7'", "8'"],
      ],
    });
    const { user } = await renderPane(workbook);
    expect(screen.getByRole("button", { name: /1 opening is not counted/ })).toBeTruthy();
    await openView(user, /Set-up/);
    const width = await screen.findByRole("combobox", { name: /^Width/ });
    expect(within(width).getByRole("option", { name: "Found in D: Width" })).toBeTruthy();
    await user.selectOptions(width, "E: Breadth");
    await waitFor(() => expect(statusText()).toBe("1opening counted"));
    await user.click(screen.getByRole("button", { name: /Find all columns/ }));
    await screen.findByRole("button", { name: /1 opening is not counted/ });
  });
});

describe("settings", () => {
  test("change how lengths are read and written, and are there the next time", async () => {
    const workbook = workbookOf({
      Schedule: scheduleRows("A-1 | 1 | sliding door | 2438 | 2134 | 2438"),
    });
    const { user, unmount } = await renderPane(workbook);
    await openView(user, /Set-up/);
    await user.click(await screen.findByRole("button", { name: "Lengths and money" }));
    await user.selectOptions(screen.getByRole("combobox", { name: /bare number/ }), "millimetres");
    await waitFor(() => expect(statusText()).toBe("1opening counted"));
    unmount();
    await renderPane(workbook);
    expect(statusText()).toBe("1opening counted");
  });
});
