/** @jest-environment jsdom */
import { afterEach, describe, expect, test } from "@jest/globals";
import { cleanup, screen, within } from "@testing-library/react";
import { demoWorkbook, workbookOf } from "../app/typedWorkbook";
import { axeFaults } from "./axeFaults";
import { first, openView, renderPane } from "./renderPane";

afterEach(cleanup);

describe("for a screen reader", () => {
  test("what to mend is sound", async () => {
    await renderPane(await demoWorkbook());
    expect(await axeFaults()).toEqual([]);
  });

  test("jobs, lines and reasons are sound", async () => {
    const { user } = await renderPane(await demoWorkbook());
    const jobs = await openView(user, /Jobs/);
    expect(await axeFaults()).toEqual([]);
    await user.click(within(jobs).getByRole("button", { name: /Stock room/ }));
    await within(jobs).findByRole("searchbox");
    expect(await axeFaults()).toEqual([]);
    await user.click(first(within(jobs).getAllByRole("button", { name: /^Panel, .*show why/ })));
    await within(jobs).findByText("To order");
    for (const closed of within(jobs).getAllByRole("button", { expanded: false }).slice(0, 2)) {
      await user.click(closed);
    }
    expect(await axeFaults()).toEqual([]);
  });

  test("sheets, before and after writing, are sound", async () => {
    const { user } = await renderPane(await demoWorkbook());
    await openView(user, /Sheets/);
    const write = await screen.findByRole("button", { name: /^Write sheets/ });
    expect(await axeFaults()).toEqual([]);
    await user.click(write);
    await screen.findByText(/sheets written/);
    expect(await axeFaults()).toEqual([]);
  });

  test("set-up, all of it open, is sound", async () => {
    const { user } = await renderPane(await demoWorkbook());
    const setUp = await openView(user, /Set-up/);
    await within(setUp).findByRole("combobox", { name: /^Width/ });
    for (const closed of within(setUp).getAllByRole("button", { expanded: false })) {
      await user.click(closed);
    }
    expect(await axeFaults()).toEqual([]);
  });

  test("the first steps and a fault are sound", async () => {
    const workbook = workbookOf({ Notes: [] });
    workbook.protectStructure();
    const { user } = await renderPane(workbook);
    await user.click(screen.getByRole("button", { name: "Add the demo" }));
    await screen.findByRole("alert");
    expect(await axeFaults()).toEqual([]);
  });
});
