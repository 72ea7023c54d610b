/**
 * The counter that worksheet functions ask, kept up with the workbook: they cannot wait for a
 * reading, and their answers change with the kit book, the items and the settings.
 */
import { readInputs, type Inputs } from "../app/reading/inputs";
import { openingCounter, type OpeningCounter } from "../app/openings/oneOpening";
import { readSettings, type Settings } from "../app/settings";
import type { Workbook, WorkbookChange } from "../workbook/workbook";

export type LiveCounter = {
  /** The counter as of now; `null` while the workbook could not be read. */
  readonly counter: () => OpeningCounter | null;
  readonly stop: () => Promise<void>;
};

/** Long enough for a person to go on typing, short enough not to be noticed. */
const pause = 400;

/** Reads the workbook, and calls `onNew` each time after that when answers may have changed. */
export async function liveCounter(workbook: Workbook, onNew: () => void): Promise<LiveCounter> {
  let counter: OpeningCounter | null = null;
  let basis = "";
  let schedules: ReadonlySet<string> = new Set();
  let timer: ReturnType<typeof setTimeout> | null = null;

  /** Whether answers may be others than before. */
  const read = async (): Promise<boolean> => {
    const settings = await readSettings(workbook);
    const inputs = await readInputs(workbook, settings);
    if (!inputs.ok) return false;
    schedules = new Set(inputs.value.readings.map(({ schedule }) => schedule.sheet));
    const next = basisOf(inputs.value, settings);
    if (next === basis) return false;
    basis = next;
    counter = openingCounter(inputs.value, settings);
    return true;
  };
  const readSoon = (): void => {
    if (timer !== null) clearTimeout(timer);
    timer = setTimeout(() => {
      read().then(
        (isNew) => {
          if (isNew) onNew();
        },
        // A host that cannot be read now is read at the next change; the answers stay as they are.
        () => undefined,
      );
    }, pause);
  };
  const stopWatching = await workbook.watch((change: WorkbookChange) => {
    // What is typed into a schedule changes no answer.
    const matters =
      change.kind === "cells" ? !schedules.has(change.sheet) : change.kind === "sheets";
    if (matters) readSoon();
  });
  await read();
  return {
    counter: () => counter,
    stop: () => {
      if (timer !== null) clearTimeout(timer);
      return stopWatching();
    },
  };
}

/** What the answers hang on, as text to compare. */
const basisOf = ({ kitBook, items, schedules }: Inputs, settings: Settings): string =>
  JSON.stringify([
    kitBook,
    items,
    settings,
    schedules.map(({ otherHeadings }) => Object.values(otherHeadings)),
  ]);
