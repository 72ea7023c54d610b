/** @jest-environment jsdom */
import { afterEach, describe, expect, test } from "@jest/globals";
import { cleanup, fireEvent, waitFor, within } from "@testing-library/react";
import type { MemoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { listIssues, removeIssue } from "../../src/app/revisions/issues";
import { readAnswers } from "../../src/app/revisions/markAnswers";
import { scheduleRows, workbookOf } from "../app/typedWorkbook";
import { axeFaults } from "./axeFaults";
import { openView, renderPane } from "./renderPane";

afterEach(cleanup);

const crib = (): MemoryWorkbook =>
  workbookOf({
    Schedule: scheduleRows(
      "D-1 | 2 | hinged door | 3' | 7' | 8'",
      "D-2 | 1 | sliding door | 8' | 7' | 8'",
      "D-3 | 1 | hinged door | 3' | 7' | 8'",
    ),
  });

const type = (workbook: MemoryWorkbook, row: number, column: number, value: string): void =>
  workbook.type({ sheet: "Schedule", row, column }, value);

async function openChanges(workbook: MemoryWorkbook) {
  const { user, unmount } = await renderPane(workbook);
  const view = await openView(user, /Changes/);
  const find = within(view);
  await find.findByRole("region", { name: "Issues" });
  const ready = async (name: string): Promise<HTMLElement> => {
    const button = await find.findByRole("button", { name });
    await waitFor(() => expect(button.getAttribute("aria-disabled")).not.toBe("true"));
    return button;
  };
  const freeze = async (name: string): Promise<void> => {
    if (find.queryByRole("textbox", { name: "Name" }) === null) {
      await user.click(find.getByRole("button", { name: /issue/ }));
    }
    await user.type(find.getByRole("textbox", { name: "Name" }), name);
    const who = find.getByRole("textbox", { name: "Who" });
    if ((who as HTMLInputElement).value === "") await user.type(who, "AB");
    await user.click(await ready("Freeze this count"));
    await find.findByText(`${name} is frozen and kept in this workbook.`);
  };
  /** The sentence that tells what differs, once it says so. */
  const says = (words: RegExp): Promise<HTMLElement> => find.findByText(words);
  return { user, unmount, view, find, freeze, ready, says };
}

describe("changes", () => {
  test("of a workbook without an issue are none: the way in is to freeze one", async () => {
    const { user, find, ready } = await openChanges(crib());
    expect(find.getByText(/No count is frozen in this workbook yet/)).toBeTruthy();
    expect(find.queryByRole("combobox")).toBeNull();
    await user.click(await ready("Freeze this count"));
    expect(find.getByText("Name it, such as Bid or Revision B.")).toBeTruthy();
    expect(find.getByText("Say who, such as your initials.")).toBeTruthy();
    expect(await axeFaults()).toEqual([]);
  });

  test("no longer say that a count is kept where another workbook came in its place", async () => {
    const workbook = crib();
    const { find, freeze } = await openChanges(workbook);
    await freeze("Bid");
    await removeIssue(workbook, "Bid");
    type(workbook, 1, 4, "4'");
    await find.findByText(/No count is frozen in this workbook yet/);
    expect(find.queryByText(/is frozen and kept/)).toBeNull();
  });

  test("are told from the latest issue to now: sizes, hardware, money, and the way to the cell", async () => {
    const workbook = crib();
    const { user, find, freeze, says, view } = await openChanges(workbook);
    await freeze("Bid");
    await says(/^No opening differs; no hardware differs\.$/);
    type(workbook, 1, 4, "4'");
    type(workbook, 2, 2, "3");
    await says(
      /^2 openings changed; \d+ pieces more and \d+ pieces fewer in \d+ lines of hardware; the material costs \$[\d,.]+ more\.$/,
    );
    expect(find.getByText(`Width: 3'-0" is now 4'-0"`)).toBeTruthy();
    expect(find.getByText("Quantity: 1 is now 3")).toBeTruthy();
    const changed = find.getByRole("region", { name: "Changed" });
    await user.click(within(changed).getByRole("button", { name: "Go to D-1 E2 on Schedule" }));
    expect(await workbook.selection()).toMatchObject({ sheet: "Schedule", row: 1, column: 4 });
    const lines = within(find.getByRole("table", { name: "Lines of Crib that differ" }));
    expect(lines.getAllByRole("row").length).toBeGreaterThan(10);
    expect(view.textContent).toContain("+");
    expect(await axeFaults()).toEqual([]);
  });

  test("with a mark that looks renamed ask, remember what a person says, and let it be taken back", async () => {
    const workbook = crib();
    const { user, find, freeze, says } = await openChanges(workbook);
    await freeze("Bid");
    type(workbook, 1, 1, "D-101");
    await says(/^1 opening perhaps under another mark; no hardware differs\.$/);
    expect(find.getByText(/% alike. Is D-101 the opening that was D-1\?/)).toBeTruthy();
    expect(await axeFaults()).toEqual([]);
    await user.click(find.getByRole("button", { name: "Yes D-101 was D-1" }));
    await says(/^1 opening under another mark; no hardware differs\.$/);
    expect(find.getByText("Nothing else changed.")).toBeTruthy();
    expect(document.activeElement?.textContent).toBe("From Bid to now");
    expect(await readAnswers(workbook)).toEqual([
      { job: "Crib", from: "D-1", to: "D-101", isSame: true },
    ]);
    await user.click(
      find.getByRole("button", { name: "Take back what was said of D-1 and D-101" }),
    );
    await user.click(await find.findByRole("button", { name: "No D-101 was not D-1" }));
    await says(/^1 opening added, 1 removed; no hardware differs\.$/);
    expect(find.getByRole("region", { name: "Said to be two openings" })).toBeTruthy();
    expect(await axeFaults()).toEqual([]);
  });

  test("of any two issues are told, and the same two are not compared", async () => {
    const workbook = crib();
    const { user, find, freeze, says } = await openChanges(workbook);
    await freeze("Bid");
    type(workbook, 3, 4, "3'-6\"");
    await says(/^1 opening changed/);
    await freeze("B");
    await says(/^No opening differs/);
    await user.selectOptions(find.getByRole("combobox", { name: "From" }), "B");
    await user.selectOptions(find.getByRole("combobox", { name: "To" }), "Bid");
    await says(/^1 opening changed/);
    expect(find.getByText(`Width: 3'-6" is now 3'-0"`)).toBeTruthy();
    await user.selectOptions(find.getByRole("combobox", { name: "To" }), "B");
    expect(find.getByText("Choose two that are not the same.")).toBeTruthy();
  });

  test("are written as a sheet, which is renewed", async () => {
    const workbook = crib();
    const { user, find, freeze, says, ready } = await openChanges(workbook);
    await freeze("Bid");
    type(workbook, 1, 4, "4'");
    await says(/^1 opening changed/);
    await user.click(await ready("Write the sheet of changes"));
    await find.findByText("1 sheet written.");
    await user.click(find.getByRole("button", { name: "Changes Bid to now" }));
    expect(await workbook.activeSheet()).toBe("Changes Bid to now");
    await user.click(await ready("Write the sheet of changes"));
    await find.findByText("renewed");
    expect(await axeFaults()).toEqual([]);
  });

  test("lose an issue only when a person is sure", async () => {
    const workbook = crib();
    const { user, find, freeze } = await openChanges(workbook);
    await freeze("Bid");
    await user.click(find.getByRole("button", { name: "Remove Bid" }));
    await user.click(find.getByRole("button", { name: "Keep it" }));
    expect(await listIssues(workbook)).toMatchObject({ value: [{ name: "Bid", who: "AB" }] });
    await user.click(find.getByRole("button", { name: "Remove Bid" }));
    await user.click(find.getByRole("button", { name: "Yes, remove" }));
    await find.findByText("Bid is removed.");
    expect(await listIssues(workbook)).toEqual({ ok: true, value: [] });
    expect(find.queryByRole("combobox")).toBeNull();
  });

  test("of many openings show how far they are, can be stopped, and go on", async () => {
    const marks = Array.from({ length: 450 }, (_, place) => `D-${place}`);
    const workbook = workbookOf({
      Schedule: scheduleRows(...marks.map((mark) => `${mark} | 1 | hinged door | 3' | 7' | 8'`)),
    });
    const { find, freeze, says } = await openChanges(workbook);
    await freeze("Bid");
    await says(/^No opening differs/);
    for (const [place, mark] of marks.entries()) type(workbook, place + 1, 1, `X${mark}`);
    await find.findByRole("progressbar", { name: "Comparing" });
    fireEvent.click(find.getByRole("button", { name: "Stop" }));
    await find.findByText("Stopped.");
    // What was compared last stays in sight.
    await says(/^No opening differs/);
    fireEvent.click(find.getByRole("button", { name: "Go on" }));
    await says(/^450 openings perhaps under another mark/);
    expect(find.queryByRole("progressbar", { name: "Comparing" })).toBeNull();
  }, 60_000);

  test("say why an issue cannot be kept or read, and keep what was typed", async () => {
    const workbook = crib();
    const { user, find, freeze, ready } = await openChanges(workbook);
    await freeze("Bid");
    await user.type(find.getByRole("textbox", { name: "Name" }), "bid");
    await user.click(await ready("Freeze this count"));
    await find.findByText(/There is an issue bid already/);
    expect(find.getByRole("textbox", { name: "Name" })).toMatchObject({ value: "bid" });
    await workbook.writeSetting("issues.1", "{broken");
    type(workbook, 1, 4, "4'");
    await find.findByText(/What the workbook kept of Bid cannot be read/);
  });
});
