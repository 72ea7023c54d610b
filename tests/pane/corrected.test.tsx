/** @jest-environment jsdom */
import { afterEach, expect, test } from "@jest/globals";
import { cleanup, within } from "@testing-library/react";
import type { MemoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { defaultSettings } from "../../src/app/settings";
import { takeOffWorkbook } from "../../src/app/reading/takeOffWorkbook";
import { writeTakeOff } from "../../src/app/writing/writeSheets";
import { cellText } from "../../src/core/base/cell";
import { scheduleRows, workbookOf } from "../app/typedWorkbook";
import { axeFaults } from "./axeFaults";
import { openView, renderPane } from "./renderPane";

afterEach(cleanup);

async function writtenCrib(): Promise<MemoryWorkbook> {
  const workbook = workbookOf({ Schedule: scheduleRows("A-1 | 2 | sliding door | 8' | 7' | 8'") });
  const takeOff = await takeOffWorkbook(workbook, defaultSettings);
  if (!takeOff.ok) throw new Error(takeOff.error.message);
  await writeTakeOff(workbook, takeOff.value, defaultSettings);
  return workbook;
}

/** The hardware sheet by its headings, as a person reads it. */
function hardware(workbook: MemoryWorkbook) {
  const sheet = workbook.snapshot().sheets.find(({ mark }) => mark?.kind === "hardware");
  if (sheet === undefined) throw new Error("No hardware sheet");
  const rows = sheet.rows.map((cells) => cells.map((cell) => cellText(cell?.value ?? null)));
  const heading = rows.findIndex((cells) => cells[0] === "Item");
  const type = (row: number, column: string, value: string): void =>
    workbook.type({ sheet: sheet.name, row, column: rows[heading]?.indexOf(column) ?? -1 }, value);
  return {
    rowOf: (item: string): number => rows.findIndex((cells) => cells[0] === item),
    freeRow: rows.findLastIndex((cells) => cells.some((text) => text.includes("#"))),
    type,
  };
}

test("what was corrected by hand shows in its line, in its sums and in a list with the ways to the cells", async () => {
  const workbook = await writtenCrib();
  const { rowOf, freeRow, type } = hardware(workbook);
  const nuts = rowOf("HN 1/4");
  type(nuts, "Correction", "+3");
  type(nuts, "Reason", "two were bent");
  type(nuts, "By", "AB");
  type(rowOf("STRIKE"), "Correction", "plenty");
  type(freeRow, "Item", "HN 1/4");
  const { user } = await renderPane(workbook);
  const jobs = await openView(user, /Jobs/);
  const find = within(jobs);
  await user.click(find.getByRole("button", { name: /Crib/ }));
  const list = (
    await find.findByRole("button", { name: /^Corrected by hand, 2 of no effect/ })
  ).closest("div");
  expect(list?.textContent).toContain("+3 by AB: two were bent");
  expect(list?.textContent).toContain("Added by hand, and not counted yet.");
  expect(list?.textContent).toContain("It cannot be used as it is typed: see To mend.");
  expect(await axeFaults()).toEqual([]);
  const line = find.getByRole("button", { name: /Corrected: \+3 by AB: two were bent.*show why/ });
  await user.click(line);
  await find.findByText("Typed by hand: +3 by AB: two were bent");
  const sums = [...jobs.querySelectorAll("dl > *")].map(({ textContent }) => textContent);
  const counted = Number.parseInt(sums[1] ?? "");
  expect(sums.slice(0, 6)).toEqual([
    "Counted",
    `${counted} pcs`,
    "Correction",
    "+3",
    "Quantity",
    `${counted + 3} pcs`,
  ]);
  await user.click(find.getAllByRole("button", { name: /^Go to .* on Hardware/ })[0] ?? line);
  expect(await workbook.selection()).toMatchObject({ row: nuts });
});

test("a line added by hand stands beside the counted one of its item, each with its own reasons", async () => {
  const workbook = await writtenCrib();
  const { freeRow, type } = hardware(workbook);
  type(freeRow, "Item", "STRIKE");
  type(freeRow, "Quantity (pcs)", "5");
  const { user } = await renderPane(workbook);
  const jobs = await openView(user, /Jobs/);
  const find = within(jobs);
  await user.click(find.getByRole("button", { name: /Crib/ }));
  const strikes = await find.findAllByRole("button", { name: /STRIKE.*show why/ });
  expect(strikes.map(({ textContent }) => /(\d+) pcs/.exec(textContent)?.[1])).toEqual(["2", "5"]);
  await user.click(find.getByRole("button", { name: /5 added by hand.*show why/ }));
  await find.findByText("Added by hand");
});

test("a correction whose line has gone is shown, with its cell", async () => {
  const workbook = await writtenCrib();
  const { rowOf, type } = hardware(workbook);
  const splice = rowOf("SPLICE");
  type(splice, "Correction", "-1");
  type(splice, "By", "AB");
  workbook.type({ sheet: "Schedule", row: 1, column: 4 }, "4'");
  const { user } = await renderPane(workbook);
  const jobs = await openView(user, /Jobs/);
  const find = within(jobs);
  await user.click(find.getByRole("button", { name: /Crib/ }));
  await find.findByText("This job does not count the line any more. Kept, without effect.");
  await user.click(find.getByRole("button", { name: /^Go to .* on Hardware/ }));
  expect(await workbook.selection()).toMatchObject({ row: splice });
});
