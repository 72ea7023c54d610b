/** @jest-environment jsdom */
import { afterEach, describe, expect, test } from "@jest/globals";
import { cleanup, waitFor, within } from "@testing-library/react";
import axe from "axe-core";
import type { CellValue } from "../../src/core/base/cell";
import { scheduleHeadings, workbookOf } from "../app/typedWorkbook";
import { openMargins } from "./openMargins";

afterEach(cleanup);

const doors = (carries: CellValue) =>
  workbookOf({
    Schedule: [
      [...scheduleHeadings, "Tail post"],
      ["Crib", "A-1", 2, "sliding door", "3'", "7'", "8'", "yes"],
      ["Crib", "A-2", 1, "sliding door", "8'", "7'", "8'", "yes"],
      ["Crib", "A-3", 1, "hinged door", "3'", "7'", "8'", "no"],
    ],
    Rates: [
      ["Rate", "Usual"],
      ["One trolley carries", carries],
    ],
  });

describe("hanging loads of a job", () => {
  test("say how each opening hangs, what is over and by how much, and who must decide", async () => {
    const { panel, user, openJob, openPart } = await openMargins(doors(50));
    await openJob(/^Crib/);
    await openPart("Hanging loads");
    const list = within(panel).getByRole("list", { name: "Hanging openings" });
    await within(list).findByText("A-2: over");
    expect(within(list).getByText("A-1: not checked")).toBeTruthy();
    expect(within(list).queryByText(/A-3/)).toBeNull();
    expect(within(list).getByText(/over by \d+(\.\d)? lb: 50 lb is entered/)).toBeTruthy();
    expect(within(list).getAllByText(/not checked: no capacity is entered/)).not.toEqual([]);
    expect(within(panel).getByText(/not counted, priced or ordered/)).toBeTruthy();
    expect(within(panel).getByText(/belong to a licensed engineer/)).toBeTruthy();
    await user.click(within(list).getByRole("button", { name: "How A-2 is weighed" }));
    expect(within(list).getByText(/lb per sq ft/)).toBeTruthy();
    const { violations } = await axe.run(panel, {
      rules: { "color-contrast": { enabled: false } },
    });
    expect(violations.map(({ id }) => id)).toEqual([]);
  });

  test("say that nothing is checked where no capacity is entered", async () => {
    const { panel, openJob, openPart } = await openMargins(doors(null));
    await openJob(/^Crib/);
    await openPart("Hanging loads");
    expect(await within(panel).findByText(/Nothing is checked/)).toBeTruthy();
    expect(within(panel).queryByText(/not counted, priced or ordered/)).toBeNull();
  });
});

describe("where lengths are in millimetres", () => {
  test("loads and reasons are in kilograms and millimetres", async () => {
    const workbook = doors("20 kg");
    await workbook.writeSetting("settings", JSON.stringify({ lengths: "millimetres" }));
    const { panel, user, openJob, openPart } = await openMargins(workbook);
    await openJob(/^Crib/);
    await openPart("Hanging loads");
    const list = within(panel).getByRole("list", { name: "Hanging openings" });
    await within(list).findByText("A-2: over");
    expect(within(list).getAllByText(/over by \d+(\.\d)? kg: 20 kg is entered/)).not.toEqual([]);
    expect(within(list).getAllByText(/hanger at [\d.]+ mm/)).not.toEqual([]);
    await user.click(within(list).getByRole("button", { name: "How A-2 is weighed" }));
    expect(within(list).getByText(/kg per m²/)).toBeTruthy();
    expect(within(list).queryByText("0 kg")).toBeNull();
    await openPart("Weight and freight");
    expect(within(panel).getByText(/\d lb \([\d,.]+ kg\) (at|charged as|is)/)).toBeTruthy();
    expect(panel.textContent).not.toMatch(/in-lb|inches/);
  });

  test("a capacity that cannot be read is told where loads are shown", async () => {
    const { panel, openJob, openPart } = await openMargins(doors("20 stone"));
    await openJob(/^Crib/);
    await openPart("Hanging loads");
    expect(await within(panel).findByText(/stone is no unit for it/)).toBeTruthy();
  });
});

describe("what was typed to see what would become of a job", () => {
  const typedIn = (panel: HTMLElement) =>
    within(panel).getByRole<HTMLInputElement>("textbox", { name: "Freight: typed change" });

  test("is in the workbook when the pane is opened again, until it is started over", async () => {
    const workbook = doors(null);
    const first = await openMargins(workbook);
    await first.openJob(/^Crib/);
    await first.openPart("What if");
    await first.user.type(typedIn(first.panel), "12");
    await waitFor(async () => expect(await workbook.readSetting("what-if")).toContain("12"));
    cleanup();

    const second = await openMargins(workbook);
    await second.openJob(/^Crib/);
    await second.openPart("What if");
    expect(typedIn(second.panel).value).toBe("12");
    await second.user.click(within(second.panel).getByRole("button", { name: "Start over" }));
    expect(typedIn(second.panel).value).toBe("");
    cleanup();

    const third = await openMargins(workbook);
    await third.openJob(/^Crib/);
    await third.openPart("What if");
    expect(typedIn(third.panel).value).toBe("");
  });

  test("on all jobs is kept too, and what cannot be read is as if nothing were kept", async () => {
    const workbook = doors(null);
    const first = await openMargins(workbook);
    await first.openPart("What if, on all jobs");
    await first.user.type(typedIn(first.panel), "7");
    cleanup();
    const second = await openMargins(workbook);
    await second.openPart("What if, on all jobs");
    expect(typedIn(second.panel).value).toBe("7");
    cleanup();
    await workbook.writeSetting("what-if", '{"onAll": 3}');
    const third = await openMargins(workbook);
    await third.openPart("What if, on all jobs");
    expect(typedIn(third.panel).value).toBe("");
  });
});
