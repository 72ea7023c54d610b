/** @jest-environment jsdom */
import { afterEach, describe, expect, jest, test } from "@jest/globals";
import { cleanup, configure, fireEvent, screen, waitFor, within } from "@testing-library/react";
import axe from "axe-core";
import type { MemoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { demoPurchasing } from "../../src/app/demo/demoPurchasing";
import { moneyText } from "../../src/core/money/writeMoney";
import { starterItems } from "../../src/core/kitbook/starter/items";
import { countedDemo, doorOf, headings, orderOf } from "../app/orders/orderFiles";
import { demoWorkbook, workbookOf, type TypedSheets } from "../app/typedWorkbook";
import { today } from "../../src/app/today";
import { filesToOpen, openView, renderPane } from "./renderPane";

// A busy machine is no fault of the view.
jest.setTimeout(120_000);
afterEach(cleanup);
// What is looked for stands inside the view's panel, which is shown.
configure({ defaultHidden: true });

/** A file as a person chooses or drops it. */
function fileOf(name: string, sheets: TypedSheets): File {
  filesToOpen.set(name, workbookOf(sheets));
  return new File([], name);
}

/** Two small jobs, with the demo's purchasing sheets. */
async function shopWorkbook(): Promise<MemoryWorkbook> {
  const [dock, yard] = [doorOf("Dock"), doorOf("Yard")];
  const workbook = workbookOf({ Schedule: [...dock, ...yard.slice(1)] });
  const written = await workbook.write(demoPurchasing());
  if (!written.ok) throw new Error(written.error.message);
  return workbook;
}

async function openOrder(given?: MemoryWorkbook, doors: Parameters<typeof renderPane>[2] = {}) {
  const workbook = given ?? (await shopWorkbook());
  const { user } = await renderPane(workbook, "light", doors);
  const panel = await openView(user, /Order/);
  await within(panel).findByRole("button", { name: /^Work out the order/ });
  const add = async (...files: readonly File[]) => {
    const input = await within(panel).findByLabelText("Workbooks to order from");
    fireEvent.change(input, { target: { files } });
    for (const { name } of files) await within(panel).findByText(`Jobs of ${name}`);
  };
  const workOut = async () => {
    await waitFor(() => {
      const button = within(panel).getByRole("button", { name: /^Work out the order/ });
      expect(button.getAttribute("aria-disabled")).not.toBe("true");
    });
    await user.click(within(panel).getByRole("button", { name: /^Work out the order/ }));
    await within(panel).findByRole("region", { name: "What the order comes to" });
    await within(panel).findByRole("button", { name: /again$/ });
  };
  return { workbook, user, panel, add, workOut };
}

const totalOf = (panel: HTMLElement) =>
  within(panel).getByRole("region", { name: "What the order comes to" }).textContent;

describe("working an order out", () => {
  test("has the total of the command line, and says what it saves", async () => {
    const { panel, workOut } = await openOrder(await demoWorkbook());
    await workOut();
    const { plan } = orderOf([await countedDemo()], { today: today() });
    expect(totalOf(panel)).toContain(moneyText(plan.total));
    expect(totalOf(panel)).toMatch(/Saves \$[\d,.]+ against ordering job by job/);
  });

  test("is for the jobs chosen, and says when the choice has changed since", async () => {
    const { user, panel, workOut } = await openOrder();
    await user.click(within(panel).getByRole("checkbox", { name: "Yard" }));
    await workOut();
    expect(totalOf(panel)).toContain("Order for 1 job");
    expect(within(panel).queryByText(/has changed since/)).toBeNull();
    await user.click(within(panel).getByRole("checkbox", { name: "Yard" }));
    await within(panel).findByText(/has changed since/);
  });

  test("explains a line from the count to the packs", async () => {
    const { user, panel, workOut } = await openOrder();
    await workOut();
    await user.click(within(panel).getByRole("button", { name: /^Lines/ }));
    const more = within(panel).queryByText(/^Show more/);
    if (more !== null) await user.click(more);
    await user.click(within(panel).getByText("TROLLEY"));
    const steps = within(panel).getByRole("list", { name: "From the count to what is bought" });
    expect(steps.textContent).toMatch(/counted/);
    // The demo's shelf has three.
    expect(steps.textContent).toMatch(/on hand−3 pcs/);
    expect(within(panel).getByRole("list", { name: "Packs" }).textContent).toMatch(/pack/);
  });

  test("draws the cut list to scale, with words for it", async () => {
    const { user, panel, workOut } = await openOrder();
    await workOut();
    await user.click(within(panel).getByRole("button", { name: /^Cut list/ }));
    const drawn = within(panel).getAllByRole("img", { name: /new: .* x .*\(/ });
    expect(drawn.length).toBeGreaterThan(0);
    expect(
      within(panel).getAllByText(/no plan (has fewer|costs less) than/).length,
    ).toBeGreaterThan(0);
  });
});

describe("other workbooks", () => {
  test("add their jobs to the order", async () => {
    const { panel, add, workOut } = await openOrder();
    await add(fileOf("yard.xlsx", { List: doorOf("Pier") }));
    expect(within(panel).getByRole("checkbox", { name: "Pier" })).toBeTruthy();
    await workOut();
    expect(totalOf(panel)).toContain("Order for 3 jobs");
  });

  test("that are none are said to be none, and nothing is added", async () => {
    const { panel } = await openOrder();
    const input = within(panel).getByLabelText("Workbooks to order from");
    fireEvent.change(input, { target: { files: [new File([], "letter.pdf")] } });
    await within(panel).findByText(/letter.pdf was not added. It is no workbook/);
  });

  test("with a job of the same name wait for a decision, and are not merged", async () => {
    const { user, panel, add, workOut } = await openOrder();
    await add(fileOf("copy.xlsx", { List: doorOf("Yard") }));
    await workOut();
    expect(totalOf(panel)).toContain("Order for 1 job");
    expect(totalOf(panel)).toContain("Not complete");
    await user.click(
      within(panel).getByRole("radio", { name: "They are two jobs: order for both" }),
    );
    await workOut();
    expect(totalOf(panel)).toContain("Order for 3 jobs");
    expect(totalOf(panel)).toContain("Yard (copy.xlsx)");
  });

  test("whose items differ are shown, and counted by the items that the person says", async () => {
    const { user, panel, add } = await openOrder();
    const items = [
      ["Code", "Description", "Unit", "Unit cost"],
      ...starterItems.map(({ code, description, unit, unitCost }) => [
        code.value,
        code.value === "TROLLEY" ? "Trolley, two wheels" : description.value,
        unit.value,
        unitCost.value,
      ]),
    ];
    await add(fileOf("yard.xlsx", { List: doorOf("Pier"), Items: items }));
    const said = await within(panel).findByText(/TROLLEY is “Trolley, two wheels/);
    expect(said.parentElement?.textContent).toContain("To decide");
    await user.click(
      within(panel).getByRole("radio", { name: "The items of yard.xlsx hold for all" }),
    );
    await waitFor(() => expect(said.parentElement?.textContent).toContain("Decided"));
  });

  test("are dropped into the view too", async () => {
    const { panel } = await openOrder();
    const zone = within(panel).getByRole("region", { name: "Jobs to order for" });
    const file = fileOf("yard.xlsx", { List: doorOf("Pier") });
    fireEvent.drop(zone, { dataTransfer: { types: ["Files"], files: [file] } });
    await within(panel).findByRole("checkbox", { name: "Pier" });
  });
});

test("what can wait is split off by the next order day", async () => {
  const { user, panel, workOut } = await openOrder();
  await workOut();
  await user.click(within(panel).getByRole("button", { name: /^Now or later/ }));
  fireEvent.change(within(panel).getByLabelText("The next day that orders go out"), {
    target: { value: "2027-01-20" },
  });
  await user.click(within(panel).getByRole("button", { name: /^Split/ }));
  const later = await within(panel).findByRole("radio", { name: /^What can wait/ });
  const whole = totalOf(panel);
  await user.click(later);
  expect(totalOf(panel)).not.toBe(whole);
});

test("the order's sheets are written", async () => {
  const { workbook, user, panel, workOut } = await openOrder();
  await workOut();
  await user.click(within(panel).getByText("Only write its sheets"));
  await screen.findByText(/sheets written/);
  const names = workbook.snapshot().sheets.map(({ name }) => name);
  expect(names).toEqual(expect.arrayContaining(["Order allocation", "Cut list", "Order needs"]));
});

test("an order is kept, sent, and after a change the difference is ordered and received", async () => {
  const { workbook, user, panel, workOut } = await openOrder();
  const press = async (name: string | RegExp) =>
    user.click(await within(panel).findByRole("button", { name }));
  const step = async (name: RegExp, outcome: RegExp) => {
    await press(name);
    await press(name);
    await within(panel).findByText(outcome);
  };
  await workOut();
  await press("Keep as a draft order");
  await within(panel).findByText(/Kept as the draft PO-\d+-0001/);
  await step(/^Mark as sent: PO-/, /is marked as sent/);
  await within(panel).findByText(/is for the difference/);
  workbook.type({ sheet: "Schedule", row: 1, column: 2 }, 9);
  await within(panel).findByText(/has changed since/);
  const before = totalOf(panel);
  await workOut();
  await waitFor(() => expect(totalOf(panel)).not.toBe(before));
  await press("Keep as a draft order");
  await within(panel).findByText(/Kept as the draft PO-\d+-0002/);
  await step(/^Mark as sent: PO-\d+-0002/, /0002 is marked as sent/);
  await press(/^Some has come: PO-\d+-0001/);
  const form = await within(panel).findByRole("form", { name: /^What has come of PO-\d+-0001/ });
  const take = () => within(form).getByRole("button", { name: /^Take this in/ });
  expect(take().getAttribute("aria-disabled")).toBe("true");
  const [came] = within(form).getAllByRole("textbox", { name: /^Came of / });
  if (came === undefined) throw new Error("no line");
  fireEvent.change(came, { target: { value: "some" } });
  await within(form).findByText(/is no number of packs/);
  fireEvent.change(came, { target: { value: "9999" } });
  await user.click(take());
  await within(form).findByText(/More came than is to come/);
  await user.click(within(form).getByRole("button", { name: "Look again" }));
  fireEvent.change(came, { target: { value: "1 pcs" } });
  const [, , other] = within(form).getAllByRole("checkbox", { name: /^No more of / });
  if (other === undefined) throw new Error("no line");
  await user.click(other);
  await within(form).findByText("Say why the rest will not come.");
  const why = within(form).getByLabelText(/^Why the rest will not come/);
  fireEvent.change(why, { target: { value: "sold out" } });
  await user.click(take());
  await within(panel).findByText(/0001 is part received/);
  await within(panel).findByText(/^part received .* to come$/);
  await step(/^Mark as received: PO-\d+-0001/, /0001 is received short/);
  const names = workbook.snapshot().sheets.map(({ name }) => name);
  expect(names).toEqual(expect.arrayContaining(["Order book", "Stock movements", "Stock now"]));
});

test("a long search is stopped with the best so far, and cancelled with nothing", async () => {
  const { user, panel, add } = await openOrder();
  const rows = Array.from({ length: 400 }, (_, row) => [
    "Long wall",
    `W-${row}`,
    3,
    "sliding door",
    `${36 + (row % 97) * 0.5}"`,
    "7'",
    "8'",
    "yes",
    "concrete",
  ]);
  await add(fileOf("long.xlsx", { List: [headings, ...rows] }));
  const begin = within(panel).getByRole("button", { name: /^Work out the order/ });
  await user.click(begin);
  await user.click(await within(panel).findByRole("button", { name: "Cancel" }));
  expect(within(panel).queryByRole("region", { name: "What the order comes to" })).toBeNull();
  await user.click(within(panel).getByRole("button", { name: /^Work out the order/ }));
  const stop = await within(panel).findByRole("button", { name: /best so far/ });
  expect(document.activeElement).toBe(stop);
  await user.click(stop);
  await within(panel).findByRole("region", { name: "What the order comes to" });
  expect(totalOf(panel)).toContain("Order for 3 jobs");
});

test("an order that was worked out is looked at again only when something changes", async () => {
  const workbook = await shopWorkbook();
  let asked = 0;
  const counting: MemoryWorkbook = {
    ...workbook,
    sheets: () => {
      asked += 1;
      return workbook.sheets();
    },
  };
  const { workOut } = await openOrder(counting);
  await workOut();
  await new Promise((resolve) => setTimeout(resolve, 1000));
  const before = asked;
  await new Promise((resolve) => setTimeout(resolve, 1000));
  expect(asked).toBe(before);
});

test("a planner that fails is told, and what was chosen stays", async () => {
  const planOrder = () => Promise.reject(new Error("out of memory"));
  const { user, panel } = await openOrder(undefined, { planOrder });
  await user.click(within(panel).getByRole("checkbox", { name: "Yard" }));
  await user.click(within(panel).getByRole("button", { name: /^Work out the order/ }));
  await within(panel).findByText(/was not worked out.*out of memory/);
  expect(within(panel).getByRole("checkbox", { name: "Yard" })).toMatchObject({ checked: false });
});

test("is sound for a screen reader, all of it open", async () => {
  const { user, panel, add, workOut } = await openOrder();
  await add(fileOf("copy.xlsx", { List: doorOf("Yard") }));
  await workOut();
  for (let depth = 0; depth < 2; depth += 1) {
    for (const closed of within(panel).getAllByRole("button", { expanded: false }).slice(0, 12)) {
      await user.click(closed);
    }
  }
  const rules = { "color-contrast": { enabled: false }, region: { enabled: false } };
  const { violations } = await axe.run(document.body, { rules });
  expect(
    violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => `${id}: ${html.slice(0, 200)}`)),
  ).toEqual([]);
});
