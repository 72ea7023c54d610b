/** @jest-environment jsdom */
import { afterEach, describe, expect, test } from "@jest/globals";
import { cleanup, screen, waitFor, within } from "@testing-library/react";
import { demoWorkbook, scheduleRows, workbookOf } from "../app/typedWorkbook";
import { first, openView, renderPane } from "./renderPane";

afterEach(cleanup);

const oneDoor = () =>
  workbookOf({
    Schedule: scheduleRows(
      "A-1 | 2 | sliding door | 8' | 7' | 8'",
      "A-2 | 1 | sliding door | 4' | 7' | 8'",
    ),
  });

describe("jobs", () => {
  test("show totals, weight and what the totals do not hold", async () => {
    const { user } = await renderPane(await demoWorkbook());
    const jobs = await openView(user, /Jobs/);
    const card = within(jobs).getByRole("button", { name: /Stock room/ });
    expect(card.textContent).toMatch(/\$[\d,]+\.\d\d/);
    expect(card.textContent).toMatch(/[\d,]+ lb/);
    expect(card.textContent).toMatch(/\d openings not counted/);
    expect(within(jobs).getByRole("heading", { name: "All 3 jobs" })).toBeTruthy();
  });

  test("say that the starter's costs are invented", async () => {
    const { user } = await renderPane(oneDoor());
    const jobs = await openView(user, /Jobs/);
    await user.click(within(jobs).getByRole("button", { name: /Crib/ }));
    expect(await within(jobs).findByText(/costs and weights are invented/)).toBeTruthy();
  });

  test("open into lines, and the focus goes in and comes back", async () => {
    const { user } = await renderPane(oneDoor());
    const jobs = await openView(user, /Jobs/);
    within(jobs).getByRole("button", { name: /Crib/ }).focus();
    await user.keyboard("{Enter}");
    const heading = await within(jobs).findByRole("heading", { name: "Crib" });
    expect(document.activeElement).toBe(heading);
    const lines = within(jobs).getAllByRole("button", { name: /show why/ });
    lines[1]?.focus();
    const name = lines[1]?.textContent;
    await user.keyboard("{Enter}");
    await within(jobs).findByText("To order");
    await user.click(within(jobs).getByRole("button", { name: "Crib" }));
    expect(document.activeElement?.textContent).toBe(name);
    await user.click(within(jobs).getByRole("button", { name: "All jobs" }));
    expect(document.activeElement).toBe(within(jobs).getByRole("button", { name: /Crib/ }));
  });

  test("find lines by any word of theirs", async () => {
    const { user } = await renderPane(oneDoor());
    const jobs = await openView(user, /Jobs/);
    await user.click(within(jobs).getByRole("button", { name: /Crib/ }));
    const search = await within(jobs).findByRole("searchbox", { name: "Search the lines" });
    const all = within(jobs).getAllByRole("button", { name: /show why/ }).length;
    await user.type(search, "1-1/4 CARRIAGE");
    await waitFor(() => {
      const found = within(jobs).getAllByRole("button", { name: /show why/ });
      expect(found.length).toBeLessThan(all);
      expect(found.every((line) => line.textContent.includes("1-1/4"))).toBe(true);
    });
    await user.type(search, " nothing like it");
    expect(await within(jobs).findByText(/No line has/)).toBeTruthy();
  });

  test("say that a job is gone when its rows are", async () => {
    const workbook = oneDoor();
    const { user } = await renderPane(workbook);
    const jobs = await openView(user, /Jobs/);
    await user.click(within(jobs).getByRole("button", { name: /Crib/ }));
    await within(jobs).findByRole("heading", { name: "Crib" });
    for (const row of [1, 2]) workbook.type({ sheet: "Schedule", row, column: 0 }, "Cage");
    await within(jobs).findByText("This job is no longer in the schedule.");
    await user.click(within(jobs).getByRole("button", { name: "Back" }));
    expect(within(jobs).getByRole("button", { name: /Cage/ })).toBeTruthy();
  });
});

describe("the reasons of a line", () => {
  test("add up to its quantity, and go down to the numbers of the schedule", async () => {
    const workbook = oneDoor();
    const { user } = await renderPane(workbook);
    const jobs = await openView(user, /Jobs/);
    await user.click(within(jobs).getByRole("button", { name: /Crib/ }));
    await within(jobs).findByRole("heading", { name: "Crib" });
    const line = within(jobs).getByRole("button", { name: /^Panel, .*show why/ });
    const quantity = Number(/(\d+) pcs/.exec(line.textContent)?.[1]);
    await user.click(line);
    await within(jobs).findByText("To order");
    const openings = within(jobs).getAllByRole("button", { name: /^A-\d.* pcs$/ });
    const counts = openings.map(({ textContent }) =>
      Number(/(?:= |^A-\d)(\d+) pcs$/.exec(textContent)?.[1]),
    );
    expect(counts.reduce((sum, count) => sum + count, 0)).toBe(quantity);

    await user.click(first(openings));
    // Every size that went in opens until only fields of the schedule are left.
    for (let depth = 0; depth < 8; depth += 1) {
      const closed = within(jobs)
        .getAllByRole("button", { expanded: false })
        .find(({ textContent }) => !textContent.endsWith(" pcs"));
      if (closed === undefined) break;
      await user.click(closed);
    }
    expect(within(jobs).getAllByText("Width").length).toBeGreaterThan(0);
    expect(within(jobs).getAllByText(`8'-0"`).length).toBeGreaterThan(0);
    await user.click(within(jobs).getByRole("button", { name: "Go to A-1 A2 on Schedule" }));
    expect(await workbook.selection()).toMatchObject({ sheet: "Schedule", row: 1, column: 0 });
  });

  test("go to the kit book's row where the workbook has its own", async () => {
    const workbook = oneDoor();
    const { user } = await renderPane(workbook);
    await openView(user, /Set-up/);
    await user.click(await screen.findByRole("button", { name: "Kit book" }));
    await user.click(screen.getByRole("button", { name: /Add the kit book/ }));
    await screen.findByText("The workbook has a kit book of its own.");
    const jobs = await openView(user, /Jobs/);
    await user.click(within(jobs).getByRole("button", { name: /Crib/ }));
    await within(jobs).findByRole("heading", { name: "Crib" });
    await user.click(first(within(jobs).getAllByRole("button", { name: /show why/ })));
    await user.click(
      first(await within(jobs).findAllByRole("button", { name: /on Kit book parts/ })),
    );
    expect(await workbook.selection()).toMatchObject({ sheet: "Kit book parts" });
  });
});
