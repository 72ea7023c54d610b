/** @jest-environment jsdom */
import { afterEach, beforeEach, expect, jest, test } from "@jest/globals";
import type { EmbeddedWorkbook } from "../../../src/adapters/embedded/embeddedWorkbook";
import type { KeptWorkbook } from "../../../src/adapters/embedded/keeping";
import { keepWhileChanging, openKeptWorkbook } from "../../../src/main/embedded/keepWork";
import { blankSheet, workbookOf } from "../../../src/workbook/blankSheet";

beforeEach(() => void jest.useFakeTimers());
afterEach(() => void jest.useRealTimers());

/** A workbook whose only act is that a person types into it. */
function typedWorkbook(): { readonly workbook: EmbeddedWorkbook; readonly type: () => void } {
  let onChange: (typed: boolean) => void = () => undefined;
  const workbook = {
    snapshot: () => workbookOf("Job", [blankSheet("Schedule")]),
    watchAll: (listener: typeof onChange) => {
      onChange = listener;
      return () => undefined;
    },
  } as Partial<EmbeddedWorkbook> as EmbeddedWorkbook;
  return { workbook, type: () => onChange(true) };
}

/** Whether the browser would ask a person who leaves now. */
function asksOnLeave(): boolean {
  const event = new Event("beforeunload", { cancelable: true });
  window.dispatchEvent(event);
  return event.defaultPrevented;
}

const keptBy = (keep: KeptWorkbook["keep"]): KeptWorkbook => ({
  read: () => Promise.resolve(null),
  keep,
  forget: () => Promise.resolve(),
});

const later = (): Promise<void> => jest.advanceTimersByTimeAsync(3000);

test("who leaves work that was kept is not asked", async () => {
  const { workbook, type } = typedWorkbook();
  keepWhileChanging(
    workbook,
    keptBy(() => Promise.resolve()),
    false,
    () => undefined,
  );
  expect(asksOnLeave()).toBe(false);
  type();
  expect(asksOnLeave()).toBe(true);
  await later();
  expect(asksOnLeave()).toBe(false);
});

test("who leaves work that could not be kept is asked, until it is in a file", async () => {
  const { workbook, type } = typedWorkbook();
  const said: string[] = [];
  const full = keptBy(() => Promise.reject(new Error("full")));
  const keeping = keepWhileChanging(workbook, full, false, (text) => said.push(text));
  type();
  await later();
  expect(said.at(-1)).toContain("save your work as a file");
  expect(asksOnLeave()).toBe(true);
  await later();
  keeping.savedToFile();
  await later();
  expect(asksOnLeave()).toBe(false);
});

test("who leaves work in a page that keeps nothing is asked", async () => {
  const warnings: string[] = [];
  // This browser has no place to keep anything in, as in a private window or a second tab.
  const kept = await openKeptWorkbook((text) => warnings.push(text));
  expect(warnings).toHaveLength(1);
  const { workbook, type } = typedWorkbook();
  keepWhileChanging(workbook, kept, false, () => undefined);
  expect(asksOnLeave()).toBe(false);
  type();
  await later();
  expect(asksOnLeave()).toBe(true);
});

test("what is typed while a file is made is not in it", () => {
  const { workbook, type } = typedWorkbook();
  const kept = keptBy(() => Promise.resolve());
  const keeping = keepWhileChanging(workbook, kept, false, () => undefined);
  type();
  const changes = keeping.changes();
  keeping.savedToFile(changes);
  expect(keeping.isChanged()).toBe(false);
  type();
  keeping.savedToFile(changes);
  expect(keeping.isChanged()).toBe(true);
});

test("what was kept from last time is in no file until it is saved", () => {
  const kept = keptBy(() => Promise.resolve());
  const keeping = keepWhileChanging(typedWorkbook().workbook, kept, true, () => undefined);
  expect(keeping.isChanged()).toBe(true);
  keeping.savedToFile();
  expect(keeping.isChanged()).toBe(false);
});
