/** @jest-environment jsdom */
import { afterEach, describe, expect, test } from "@jest/globals";
import { cleanup, waitFor, within } from "@testing-library/react";
import type { MemoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { setUpDrawings } from "../../src/app/writing/setUpWorkbook";
import { starterKitBook } from "../../src/core/kitbook/starter/starterKitBook";
import { kitBookLines } from "../../src/tables/kitBookLines";
import { scheduleRows, workbookOf } from "../app/typedWorkbook";
import { axeFaults } from "./axeFaults";
import { filesToOpen, openView, renderPane } from "./renderPane";

afterEach(cleanup);

const schedule = () =>
  workbookOf({
    Schedule: scheduleRows(
      "A-1 | 2 | sliding door | 8' | 7' | 7'",
      "A-2 | 1 | hinged door | 3' | 7' | 8'",
    ),
  });

async function ownBook(): Promise<MemoryWorkbook> {
  const workbook = schedule();
  const made = await workbook.write(setUpDrawings(new Set(["kitBook"]), []));
  if (!made.ok) throw new Error(made.error.message);
  return workbook;
}

async function openBook(workbook: MemoryWorkbook) {
  const { user } = await renderPane(workbook);
  const view = await openView(user, /Kit book/);
  await within(view).findByRole("heading", { name: "Kit book" });
  const open = async (title: string): Promise<HTMLElement> => {
    await user.click(within(view).getByRole("button", { name: title }));
    return within(view).getByRole("region", { name: title });
  };
  return { user, view, open };
}

/** A row of the section by what stands in one of its columns. */
function rowOf(workbook: MemoryWorkbook, sheet: string, column: number, value: string): number {
  const rows = workbook.snapshot().sheets.find(({ name }) => name === sheet)?.rows ?? [];
  const at = rows.findIndex((cells) => cells[column]?.value === value);
  if (at < 0) throw new Error(`No ${value} on ${sheet}`);
  return at;
}

const text = (element: HTMLElement): string => element.textContent.replace(/\s+/g, " ");

describe("the kit book's view", () => {
  test("says that the starter is in use, and makes it the person's own", async () => {
    const workbook = schedule();
    const { user, view } = await openBook(workbook);
    expect(text(view)).toContain("The starter kit book is in use.");
    const before = await workbook.selection();
    await user.click(within(view).getByRole("button", { name: "Own it: add its sheets" }));
    await within(view).findByText("Counted by the workbook’s own kit book.");
    expect(workbook.snapshot().sheets.map(({ name }) => name)).toContain("Kit book parts");
    // A person who went on to a sheet would have lost the pane on a narrow page.
    expect(await workbook.selection()).toEqual(before);
    expect(text(document.activeElement as HTMLElement)).toContain("4 sheets written.");
    await user.click(within(view).getByRole("button", { name: "Kit book parts" }));
    expect(await workbook.activeSheet()).toBe("Kit book parts");
  });

  test("shows an error in place, and goes to its cell", async () => {
    const workbook = await ownBook();
    const { user, view, open } = await openBook(workbook);
    expect(within(view).getByText("Every row works.")).toBeTruthy();
    const row = rowOf(workbook, "Kit book parts", 3, "SPLICE");
    workbook.type({ sheet: "Kit book parts", row, column: 5 }, "panls");
    await within(view).findByText(/no size or field "panls".*Did you mean panels/);
    const about = within(view).getByRole("region", { name: "What is wrong with the rows" });
    await user.click(within(about).getByRole("button", { name: /Go to/ }));
    expect(await workbook.selection()).toMatchObject({ row, column: 5 });
    // The row itself says it too.
    const rows = await open("Its rows");
    await user.click(await within(rows).findByRole("button", { name: /Show more/ }));
    const card = within(rows).getByText("SPLICE").closest("li");
    expect(card === null ? "" : text(card)).toContain('no size or field "panls"');
  });

  test("shows the rows of a type, a section at a time", async () => {
    const { user, view, open } = await openBook(await ownBook());
    await user.selectOptions(
      within(view).getByRole("combobox", { name: "Opening type" }),
      "Sliding door",
    );
    const rows = await open("Its rows");
    await user.selectOptions(within(rows).getByRole("combobox", { name: "Rows" }), "charts");
    expect(text(rows)).toContain("track plate · ");
    await user.selectOptions(within(rows).getByRole("combobox", { name: "Rows" }), "limits");
    expect(text(rows)).toMatch(/Level ?stop/);
  });

  test("tries a size, and tells which rows change for a second one", async () => {
    const { user, open } = await openBook(schedule());
    const part = await open("Try a size");
    const one = within(part).getByRole("group", { name: "Opening to try" });
    const width = within(one).getByRole("textbox", { name: "Width" });
    expect((width as HTMLInputElement).value).toBe(`8'-0"`);
    await user.clear(width);
    await user.type(width, "5'");
    await user.click(within(part).getByRole("button", { name: "Put a second size beside it" }));
    const other = within(part).getByRole("group", { name: "Second opening" });
    await user.clear(within(other).getByRole("textbox", { name: "Width" }));
    await user.type(within(other).getByRole("textbox", { name: "Width" }), `5' 1/16"`);
    await within(part).findByText(/rows do something else/);
    const splice = within(part)
      .getAllByText("SPLICE")
      .map((each) => text(each.closest("li") ?? each));
    expect(splice.some((words) => words.includes("not needed → becomes 1 SPLICE"))).toBe(true);
    await user.clear(width);
    await within(part).findByText(/Width/, { selector: "[role=status] span" });
  });

  test("takes an opening of the schedule, of another type", async () => {
    const { user, view, open } = await openBook(schedule());
    const part = await open("Try a size");
    await user.type(within(part).getByRole("searchbox"), "hinged");
    await user.click(within(part).getByRole("button", { name: /^A-2/ }));
    expect(
      within(view).getByRole<HTMLSelectElement>("combobox", { name: "Opening type" }).value,
    ).toBe("Hinged door");
    expect(within(part).getByRole<HTMLInputElement>("textbox", { name: "Width" }).value).toBe(
      `3'-0"`,
    );
  });

  test("works out the boundaries of a field and writes them", async () => {
    const workbook = schedule();
    const { user, open } = await openBook(workbook);
    const part = await open("Boundaries");
    const five = (await within(part).findByText(`Width 5'-0"`)).closest("li");
    expect(five === null ? "" : text(five)).toMatch(
      /60 in.*goes with what is below.*CLAMP PANEL0 → then 6/,
    );
    await user.click(within(part).getByRole("button", { name: /Write these boundaries/ }));
    await within(part).findByText(/1 sheet written/);
    expect(workbook.snapshot().sheets.map(({ name }) => name)).toContain(
      "Boundaries Width Sliding door",
    );
  });

  test("tells what the book leaves open, with its bolts", async () => {
    const { user, open } = await openBook(await ownBook());
    const part = await open("What it leaves open");
    await user.click(await within(part).findByRole("button", { name: /Sizes without a chart/ }));
    expect(text(part)).toContain("no entry for Post height 11'-0\" by Height 7'-0\"");
    await user.click(within(part).getByRole("button", { name: /Bolts, washers and nuts/ }));
    expect(text(part)).toContain("may stand only 1.7 threads beyond its nut");
    await user.click(within(part).getByRole("button", { name: /bolts looked at/ }));
    expect(text(part)).toContain("Joins 0.75 in");
  });

  test("can be stopped while it works, and go on", async () => {
    const { user, open } = await openBook(schedule());
    const part = await open("What it leaves open");
    await user.click(within(part).getByRole("button", { name: "Stop" }));
    expect(text(part)).toContain("Stopped.");
    await user.click(within(part).getByRole("button", { name: "Go on" }));
    await within(part).findByRole("button", { name: /Sizes without a chart/ });
  });

  test("tells what the firm has otherwise than the starter", async () => {
    const workbook = await ownBook();
    const { open } = await openBook(workbook);
    const part = await open("Against the starter");
    expect(text(part)).toContain("Every row is as in the starter.");
    const row = rowOf(workbook, "Kit book sizes", 1, "panels");
    workbook.type({ sheet: "Kit book sizes", row, column: 2 }, "IF(leaf_width <= 6', 1, 2)");
    await within(part).findByText("1 row is not as in the starter.");
    expect(text(part)).toContain("IF(leaf_width <= 6', 1, 2)");
  });
});

describe("other books", () => {
  const otherBook = {
    ...starterKitBook,
    limits: starterKitBook.limits.slice(1),
    parts: starterKitBook.parts.map((part, at) =>
      at === 0 ? { ...part, quantity: { value: 7, place: null } } : part,
    ),
  };
  const choose = async (
    { user, open }: Awaited<ReturnType<typeof openBook>>,
    name: string,
    other: MemoryWorkbook,
  ): Promise<HTMLElement> => {
    filesToOpen.set(name, other);
    const part = await open("Other books");
    await user.upload(within(part).getByLabelText(/Take over rows/), new File([], name));
    return part;
  };

  /** The button waits until the book that comes of it is checked. */
  const takeOver = async (
    user: Awaited<ReturnType<typeof openBook>>["user"],
    part: HTMLElement,
  ): Promise<void> => {
    const button = () => within(part).getByRole("button", { name: "Take over 1 row" });
    await waitFor(() => expect(button().getAttribute("aria-disabled")).not.toBe("true"));
    await user.click(button());
  };

  test("can be stopped while it compares, and go on; nothing is taken over unchecked", async () => {
    const workbook = await ownBook();
    const opened = await openBook(workbook);
    const part = await choose(opened, "other.csv", workbookOf({ Book: kitBookLines(otherBook) }));
    await within(part).findByText(/^Comparing with other\.csv: \d+ %/);
    await opened.user.click(within(part).getByRole("button", { name: "Stop" }));
    expect(text(part)).toContain("Stopped.");
    await opened.user.click(within(part).getByRole("button", { name: "Go on" }));
    await within(part).findByText("other.csv: 2 rows differ, 1 to take over");
    const before = workbook.snapshot().sheets;
    await opened.user.click(within(part).getByRole("button", { name: "None" }));
    await opened.user.click(within(part).getByRole("button", { name: "All of them" }));
    expect(text(part)).toContain("Checking the book that comes of it");
    await opened.user.click(within(part).getByRole("button", { name: "Take over 2 rows" }));
    expect(workbook.snapshot().sheets).toEqual(before);
  });

  test("shows what would change, row by row, and writes what was wanted beside the old sheets", async () => {
    const workbook = await ownBook();
    const before = workbook.snapshot().sheets;
    const opened = await openBook(workbook);
    const part = await choose(opened, "other.csv", workbookOf({ Book: kitBookLines(otherBook) }));
    await within(part).findByText("other.csv: 2 rows differ, 1 to take over");
    const [changed, removed] = within(part).getAllByRole<HTMLInputElement>("checkbox");
    expect([changed?.checked, removed?.checked]).toEqual([true, false]);
    expect(workbook.snapshot().sheets).toEqual(before);
    await takeOver(opened.user, part);
    await within(opened.view).findByText("Counted by the workbook’s own kit book, edition 2.");
    expect(workbook.snapshot().sheets.slice(0, before.length)).toEqual(before);
    await within(part).findByText(/4 sheets written/);
    await within(part).findByText(/1 row differs, 0 to take over/);
    // The row that only this book has goes too where a person says so.
    await opened.user.click(within(part).getByRole("button", { name: "All of them" }));
    await takeOver(opened.user, part);
    await within(part).findByText("The kit book in other.csv says the same as this one.");
  });

  test("says that a first book takes the starter's place, and keeps the starter's rows for who wants them", async () => {
    const opened = await openBook(schedule());
    const small = workbookOf({
      Parts: [
        ["Type", "Bag", "Step", "Item", "Quantity", "When"],
        ["Dutch door", "Leaf", 1, "PANEL", 2, null],
      ],
    });
    const part = await choose(opened, "small.csv", small);
    await within(part).findByText(/\d+ rows of the starter go, since it has no such rows/);
    await opened.user.click(within(part).getByRole("button", { name: "Keep the starter’s rows" }));
    expect(within(part).queryByText(/rows of the starter go/)).toBeNull();
    // What is new comes first.
    expect(within(part).getAllByRole("checkbox")[0]).toMatchObject({ checked: true });
    await within(part).findByText(/rows differ, 1 to take over/);
    expect(await axeFaults()).toEqual([]);
  });

  test("says when the other book is the same, or there is none", async () => {
    const opened = await openBook(schedule());
    const part = await choose(opened, "none.csv", workbookOf({ Start: [["Mark", "Width"]] }));
    await within(part).findByText(
      /^none\.csv has no kit book: no rows under headings such as Type/,
    );
  });
});

describe("for a screen reader", () => {
  test("rows, a size tried and boundaries are sound", async () => {
    const workbook = await ownBook();
    workbook.type({ sheet: "Kit book parts", row: 3, column: 5 }, "panls");
    const { user, open } = await openBook(workbook);
    await open("Its rows");
    const part = await open("Try a size");
    await user.click(within(part).getByText("Put a second size beside it"));
    const boundaries = await open("Boundaries");
    await within(boundaries).findByText(`Width 5'-0"`);
    expect(await axeFaults()).toEqual([]);
  }, 60_000);

  test("what is left open and other books are sound", async () => {
    const { user, open } = await openBook(await ownBook());
    const part = await open("What it leaves open");
    await user.click(await within(part).findByText(/^Sizes without a chart entry/));
    await user.click(within(part).getByText(/bolts looked at/));
    await open("Against the starter");
    await open("Other books");
    expect(await axeFaults()).toEqual([]);
  }, 60_000);
});
