/** @jest-environment jsdom */
import { afterEach, describe, expect, jest, test } from "@jest/globals";
import { cleanup, fireEvent, screen, waitFor, within } from "@testing-library/react";
import axe from "axe-core";
import type { MemoryWorkbook } from "../../src/adapters/memory/memoryWorkbook";
import { demoWorkbook, scheduleHeadings, scheduleRows, workbookOf } from "../app/typedWorkbook";
import { starterCases } from "../core/bags/starterOpenings";
import { first, openView, renderPane } from "./renderPane";

afterEach(() => {
  cleanup();
  jest.restoreAllMocks();
});

/** A door of two panels, so that it has clamps, and a small one. */
const twoDoors = (): MemoryWorkbook =>
  workbookOf({
    Schedule: scheduleRows(
      "A-1 | 2 | sliding door | 9' | 8' | 9'",
      "A-2 | 1 | sliding door | 4' | 7' | 8'",
    ),
  });

type Shown = Awaited<ReturnType<typeof showOpenings>>;

/** The list of a job's openings, open. */
async function showOpenings(workbook: MemoryWorkbook, job = /Crib/) {
  const { user } = await renderPane(workbook);
  const view = await openView(user, /Jobs/);
  await user.click(within(view).getByRole("button", { name: job }));
  await user.click(await within(view).findByRole("button", { name: /^Pictures by opening/ }));
  const show = async (mark: string): Promise<void> => {
    const all = [...view.querySelectorAll<HTMLElement>("li > button")];
    const row = first(all.filter((each) => each.textContent.startsWith(mark)));
    fireEvent.click(row);
    await waitFor(() => expect(view.querySelector("[role=listbox]")).not.toBeNull());
  };
  return { user, view, show };
}

// By selectors: a search by role over hundreds of shapes takes the browser of the tests a second.
const places = ({ view }: Shown): readonly HTMLElement[] => [
  ...view.querySelectorAll<HTMLElement>("svg [role=option]"),
];
const litPlaces = (shown: Shown): readonly HTMLElement[] =>
  places(shown).filter((each) => each.getAttribute("aria-selected") === "true");
const lines = ({ view }: Shown): readonly HTMLElement[] => [
  ...view.querySelectorAll<HTMLElement>("li > button[aria-pressed]"),
];
const lineOf = (shown: Shown, words: RegExp): HTMLElement =>
  first(lines(shown).filter((each) => words.test(each.textContent)));
const marked = (shown: Shown): readonly string[] =>
  lines(shown).flatMap((each) => /^\d+ here/.exec(each.children[3]?.textContent ?? "")?.[0] ?? []);

/** Pieces by item and size, of words such as `track plate 1 of 3: 1 PLATE 9-8 · 2 HN 1/4`. */
function contentsOf(elements: readonly HTMLElement[]): Readonly<Record<string, number>> {
  const sums: Record<string, number> = {};
  for (const element of elements) {
    const [, contents = ""] = /^[^:]*: (.*)$/.exec(element.getAttribute("aria-label") ?? "") ?? [];
    for (const entry of contents.split(" · ")) {
      const [, pieces = "", what = ""] = /^([\d,]+) (.*)$/.exec(entry) ?? [];
      sums[what] = (sums[what] ?? 0) + Number(pieces.replace(",", ""));
    }
  }
  return sums;
}

/** The same of a line of the list. */
function piecesOf(line: HTMLElement): { readonly what: string; readonly pieces: number } {
  const [, pieces, small] = [...line.children].map((each) => each.textContent);
  const words = (small ?? "").split(" · ");
  const item = words.at(-1) ?? "";
  return {
    what: words.length > 1 ? `${item}, ${words[0] ?? ""}` : item,
    pieces: Number((pieces ?? "").replace(/[^\d]/g, "")),
  };
}

/** What a focus brings about is rendered before the next task. */
const rendered = (): Promise<void> => new Promise((resolve) => setTimeout(resolve, 0));

describe("the picture and the kit list", () => {
  test("agree piece by piece for every type of the starter, whatever the hand", async () => {
    const hands = ["left", "right"];
    const shown = await showOpenings(
      workbookOf({
        Schedule: [
          [...scheduleHeadings, "Hand", "Tail run", "Floor"],
          ...starterCases.map(([type, sizes], index) => {
            const [width = "", height = "", posts = ""] = sizes.split(/ (?:x|on) /);
            const hand = hands[index % 2] ?? "";
            return ["Crib", `D.${index}:`, 1, type, width, height, posts, hand, "30'", "concrete"];
          }),
        ],
      }),
    );
    for (const [index, [type]] of starterCases.entries()) {
      await shown.show(`D.${index}:`);
      expect(shown.view.querySelector("h2")?.textContent).toBe(`D.${index}:: ${type}`);
      const wanted: Record<string, number> = {};
      for (const line of lines(shown)) {
        const { what, pieces } = piecesOf(line);
        wanted[what] = (wanted[what] ?? 0) + pieces;
        line.focus();
        await rendered();
        expect({ what, pieces: contentsOf(litPlaces(shown))[what] }).toEqual({ what, pieces });
        expect(shown.view.querySelectorAll("[data-lit]")).toHaveLength(litPlaces(shown).length);
      }
      expect(contentsOf(places(shown))).toEqual(wanted);
      expect(shown.view.textContent).toContain(`Drawn as a ${hands[index % 2] ?? ""} hand`);
      fireEvent.click(first([...shown.view.querySelectorAll<HTMLElement>("button")]));
      await waitFor(() => expect(shown.view.querySelector("[role=listbox]")).toBeNull());
    }
  }, 120_000);

  test("light each other: a line its places, a place its lines", async () => {
    const shown = await showOpenings(twoDoors());
    await shown.show("A-1");
    lineOf(shown, /TROLLEY/).focus();
    await waitFor(() =>
      expect(litPlaces(shown).map((each) => each.getAttribute("aria-label"))).toEqual([
        expect.stringMatching(/^trolley 1 of 2: 1 TROLLEY/),
        expect.stringMatching(/^trolley 2 of 2: 1 TROLLEY/),
      ]),
    );
    const plate = first(
      places(shown).filter((each) => each.getAttribute("aria-label")?.startsWith("track plate 1")),
    );
    plate.focus();
    await waitFor(() => expect(litPlaces(shown)).toEqual([plate]));
    expect(marked(shown)).toEqual(["1 here", "2 here", "2 here", "2 here", "2 here"]);
    const said = shown.view.querySelector("figcaption")?.textContent ?? "";
    expect(said).toContain("Track plate 1 of 2");
    expect(said).toContain("1 PLATE 9-8 · 2 HB 1/4 x 3/4 · 2 FW 1/4 · 2 LW 1/4 · 2 HN 1/4");
  });

  test("say the schedule's sizes in the user's unit", async () => {
    const shown = await showOpenings(twoDoors());
    await shown.show("A-1");
    const texts = () => [...shown.view.querySelectorAll("text")].map((each) => each.textContent);
    expect(texts()).toContain(`width 9'-0"`);
    await shown.user.click(screen.getByRole("tab", { name: /Set-up/ }));
    const setUp = await screen.findByRole("tabpanel", { name: /Set-up/ });
    await shown.user.click(await within(setUp).findByRole("button", { name: "Lengths and money" }));
    await shown.user.selectOptions(
      await within(setUp).findByRole("combobox", { name: /Lengths are written/ }),
      "millimetres",
    );
    await shown.user.click(screen.getByRole("tab", { name: /Jobs/ }));
    await waitFor(() => expect(texts()).toContain("width 2743.2 mm"));
  });

  test("keep a mark that looks like markup as text", async () => {
    const hostile = `"><script>alert(1)</script>&`;
    const shown = await showOpenings(
      workbookOf({ Schedule: scheduleRows(`${hostile} | 1 | sliding door | 4' | 7' | 8'`) }),
    );
    await shown.show(`"`);
    expect(shown.view.querySelector("script")).toBeNull();
    expect(within(shown.view).getByRole("listbox", { name: new RegExp("script") })).toBeTruthy();
  });

  test("are sound for a screen reader, with nothing and with something lit", async () => {
    const shown = await showOpenings(await demoWorkbook(), /Stock room/);
    const all = within(shown.view).getAllByRole("button", { name: /show its picture/ });
    await shown.user.click(first(all));
    const box = await within(shown.view).findByRole("listbox");
    const about = document.getElementById(box.getAttribute("aria-describedby") ?? "");
    expect(about?.textContent).toMatch(/closed, seen from .* Sizes: width .* Parts: /);
    const faults = async () => {
      const { violations } = await axe.run(document.body, {
        rules: { "color-contrast": { enabled: false }, region: { enabled: false } },
      });
      return violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html ?? ""}`);
    };
    expect(await faults()).toEqual([]);
    first(places(shown)).focus();
    await waitFor(() => expect(litPlaces(shown)).toHaveLength(1));
    expect(await faults()).toEqual([]);
  });
});

describe("by keyboard", () => {
  test("arrow keys go through all places, one of which takes Tab; Escape leaves", async () => {
    const shown = await showOpenings(twoDoors());
    await shown.show("A-1");
    const { user } = shown;
    const tabbable = () => places(shown).filter((each) => each.tabIndex === 0);
    first(tabbable()).focus();
    for (const [back, forth] of [
      ["{Home}", "{ArrowRight}"],
      [`{ArrowUp>${places(shown).length}}`, "{ArrowDown}"],
    ] as const) {
      await user.keyboard(back);
      const seen = new Set<Element | null>();
      while (!seen.has(document.activeElement)) {
        seen.add(document.activeElement);
        expect(tabbable()).toEqual([document.activeElement]);
        await user.keyboard(forth);
      }
      expect(seen).toEqual(new Set(places(shown)));
    }
    await user.keyboard("{Escape}");
    expect(document.activeElement).toBe(lines(shown)[0]);
    expect(litPlaces(shown).length).toBeGreaterThan(0);
  });

  test("Enter keeps a place lit after the focus has gone, and lets it go again", async () => {
    const shown = await showOpenings(twoDoors());
    await shown.show("A-1");
    const { user } = shown;
    first(places(shown)).focus();
    await user.keyboard("{Enter}");
    within(shown.view).getByRole("button", { name: "Crib" }).focus();
    await waitFor(() => expect(litPlaces(shown)).toEqual([first(places(shown))]));
    first(places(shown)).focus();
    await user.keyboard("{Enter}");
    within(shown.view).getByRole("button", { name: "Crib" }).focus();
    await waitFor(() => expect(litPlaces(shown)).toEqual([]));
  });

  test("Enter on a line keeps its places lit", async () => {
    const shown = await showOpenings(twoDoors());
    await shown.show("A-1");
    const line = lineOf(shown, /TROLLEY/);
    line.focus();
    await shown.user.keyboard("{Enter}");
    expect(line.getAttribute("aria-pressed")).toBe("true");
    within(shown.view).getByRole("button", { name: "Crib" }).focus();
    await waitFor(() => expect(litPlaces(shown)).toHaveLength(2));
  });
});

describe("by pointer", () => {
  /** The picture as large as it is drawn, at the corner of the window. */
  function laidOut({ view }: Shown): SVGSVGElement {
    const svg = view.querySelector<SVGSVGElement>("svg[viewBox]:has([role=listbox])");
    if (svg === null) throw new Error("No picture");
    const [, , width = 0, height = 0] = (svg.getAttribute("viewBox") ?? "").split(" ").map(Number);
    jest
      .spyOn(svg, "getBoundingClientRect")
      .mockReturnValue({ left: 0, top: 0, width, height } as DOMRect);
    return svg;
  }
  /** The browser of the tests has no pointer events of its own. */
  function moveMouse(over: Element, at: { clientX: number; clientY: number }): void {
    const event = new MouseEvent("pointermove", { ...at, bubbles: true });
    Object.defineProperty(event, "pointerType", { value: "mouse" });
    fireEvent(over, event);
  }
  const middleOf = (place: HTMLElement) => {
    const rect = place.querySelector("rect");
    const number = (name: string) => Number(rect?.getAttribute(name));
    return {
      clientX: number("x") + number("width") / 2,
      clientY: number("y") + number("height") / 2,
    };
  };
  const placeNamed = (shown: Shown, name: string): HTMLElement =>
    first(places(shown).filter((each) => each.getAttribute("aria-label")?.startsWith(name)));

  test("a mouse lights what it is over, and nothing once it has left", async () => {
    const shown = await showOpenings(twoDoors());
    await shown.show("A-1");
    const svg = laidOut(shown);
    const strike = placeNamed(shown, "strike");
    moveMouse(svg, middleOf(strike));
    await waitFor(() => expect(litPlaces(shown)).toEqual([strike]));
    fireEvent.pointerLeave(svg);
    await waitFor(() => expect(litPlaces(shown)).toEqual([]));
    moveMouse(lineOf(shown, /TROLLEY/), { clientX: 0, clientY: 0 });
    await waitFor(() => expect(litPlaces(shown)).toHaveLength(2));
  });

  test("a tap keeps a place lit until the next tap, on it or beside all", async () => {
    const shown = await showOpenings(twoDoors());
    await shown.show("A-1");
    const svg = laidOut(shown);
    const strike = placeNamed(shown, "strike");
    fireEvent.click(svg, middleOf(strike));
    await waitFor(() => expect(litPlaces(shown)).toEqual([strike]));
    fireEvent.click(svg, middleOf(strike));
    await waitFor(() => expect(litPlaces(shown)).toEqual([]));
    fireEvent.click(svg, middleOf(strike));
    fireEvent.click(svg, { clientX: 1, clientY: 1 });
    await waitFor(() => expect(litPlaces(shown)).toEqual([]));
  });
});

describe("the way to an opening", () => {
  test("leads from a line's reasons, and back to them", async () => {
    const { user } = await renderPane(twoDoors());
    const view = await openView(user, /Jobs/);
    await user.click(within(view).getByRole("button", { name: /Crib/ }));
    await user.click(first(await within(view).findAllByRole("button", { name: /show why/ })));
    const row = await within(view).findByRole("button", { name: /^A-2/ });
    await user.click(row);
    await user.click(within(view).getByRole("button", { name: "Picture of A-2" }));
    await within(view).findByRole("heading", { name: "A-2: Sliding door" });
    expect(document.activeElement?.textContent).toBe("A-2: Sliding door");
    await user.click(first(within(view).getAllByRole("button")));
    expect(await within(view).findByText("To order")).toBeTruthy();
  });

  test("leads from the job, whose row has the focus again afterwards", async () => {
    const shown = await showOpenings(twoDoors());
    await shown.show("A-2");
    await shown.user.click(within(shown.view).getByRole("button", { name: "Crib" }));
    await waitFor(() => expect(document.activeElement?.textContent).toMatch(/^A-2/));
  });

  test("leads from the row that is selected in the spreadsheet", async () => {
    const workbook = twoDoors();
    const { user } = await renderPane(workbook);
    const view = await openView(user, /Jobs/);
    workbook.select({ sheet: "Schedule", row: 2, column: 4, rows: 1, columns: 1 });
    const words = await within(view).findByText(/Selected in the schedule/);
    expect(words.textContent).toContain("A-2");
    await user.click(within(view).getByRole("button", { name: "Show its picture" }));
    await within(view).findByRole("heading", { name: "A-2: Sliding door" });
    expect(within(view).queryByText(/Selected in the schedule/)).toBeNull();
    workbook.select({ sheet: "Schedule", row: 0, column: 0, rows: 1, columns: 1 });
    workbook.select({ sheet: "Schedule", row: 1, column: 0, rows: 1, columns: 1 });
    expect((await within(view).findByText(/Selected in the schedule/)).textContent).toContain(
      "A-1",
    );
  });

  test("ends in a message once the opening is gone, and follows it to another row", async () => {
    const workbook = twoDoors();
    const shown = await showOpenings(workbook);
    await shown.show("A-2");
    workbook.type({ sheet: "Schedule", row: 2, column: 4 }, "5'");
    await waitFor(
      () => expect(shown.view.querySelector("svg[viewBox] text")?.textContent).toContain(`5'-0"`),
      { timeout: 10_000 },
    );
    workbook.type({ sheet: "Schedule", row: 2, column: 1 }, "B-9");
    await within(shown.view).findByText("This opening is no longer in the schedule.");
  });
});
