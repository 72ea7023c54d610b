/** The grid as the workbook that the rest of Cribsheet knows. */
import { BooleanNumber, type Workbook as GridWorkbook, type Worksheet } from "@univerjs/core";
import { SetSelectionsOperation, SetWorksheetActiveOperation } from "@univerjs/sheets";
import { err, ok, type Result } from "../../core/base/result";
import type { Block } from "../../core/base/cell";
import { cancelled, sheetGone, tableGone } from "../../workbook/faults";
import { sameSheetName } from "../../workbook/sheetNames";
import type { WorkbookSnapshot } from "../../workbook/snapshot";
import type { Source, Workbook, WorkbookChange, WorkbookFault } from "../../workbook/workbook";
import { openGridWorkbook, type Engine } from "./engine";
import { loadSnapshot, takeSnapshot } from "./loading";
import { keepSetting, readSettings, sheetRecord } from "./records";
import { sheetIds, tablesOf } from "./sheetParts";
import { readBlock, readSheet } from "./sheetReading";
import { carryOut } from "./steps";
import { selectedCells, watchEverything, watchGrid } from "./watching";
import { makeReady, writeSteps, type ReadySheet } from "./writing";

export type EmbeddedWorkbook = Workbook & {
  /** Opens another workbook in place of this one; `watch` goes on and hears `sheets`. */
  readonly open: (snapshot: WorkbookSnapshot) => void;
  readonly snapshot: () => WorkbookSnapshot;
  /** Resolves once every formula shows its result. */
  readonly calculated: () => Promise<void>;
  /** Calls `onChange` for every change, settings and looks too; see `watchEverything`. */
  readonly watchAll: (onChange: (typed: boolean) => void) => () => void;
};

/** What only a screen can do; nothing where there is none. */
export type ScreenActions = {
  readonly scrollTo: (row: number, column: number) => void;
};

/** Opens `start` in the grid. */
export function embeddedWorkbook(
  engine: Engine,
  start: WorkbookSnapshot,
  screen?: ScreenActions,
): EmbeddedWorkbook {
  const watchers = new Set<(change: WorkbookChange) => void>();
  const allWatchers = new Set<(typed: boolean) => void>();
  const book = (): GridWorkbook => openGridWorkbook(engine);
  const sheetNamed = (name: string): Worksheet | undefined =>
    book()
      .getSheets()
      .find((sheet) => sameSheetName(sheet.getName(), name));

  const read = (source: Source): Result<Block, WorkbookFault> => {
    const found = source.kind === "sheet" ? sheetNamed(source.sheet) : null;
    if (found === undefined) return err(sheetGone(source.kind === "sheet" ? source.sheet : ""));
    if (found !== null) {
      const reading = readSheet(engine, book(), found);
      return ok(readBlock(reading, found.getName(), reading.used()));
    }
    return source.kind === "table" ? readTable(engine, book(), source.table) : err(sheetGone(""));
  };
  loadSnapshot(engine, start);
  return {
    host: "embedded",
    name: () => answer(() => book().name),
    sheets: () =>
      answer(() =>
        book()
          .getSheets()
          .map((sheet) => ({
            name: sheet.getName(),
            visible: sheet.isSheetHidden() === BooleanNumber.FALSE,
            mark: sheetRecord(sheet)?.mark ?? null,
            tables: tablesOf(engine, sheetIds(sheet)).map(({ name }) => name),
          })),
      ),
    activeSheet: () => answer(() => book().getActiveSheet(true)?.getName() ?? ""),
    selection: () => answer(() => selectedCells(engine)),
    read: (source) => answer(() => read(source)),
    watch: (onChange) =>
      answer(() => {
        const stop = watchGrid(engine, onChange);
        watchers.add(onChange);
        return () =>
          answer(() => {
            stop();
            watchers.delete(onChange);
          });
      }),
    goTo: ({ sheet: name, row, column }) =>
      answer(() => {
        const sheet = sheetNamed(name);
        if (sheet === undefined) return err(sheetGone(name));
        return goTo(engine, sheet, row, column, screen);
      }),
    write: async (drawings, options = {}) => {
      const ready: ReadySheet[] = [];
      for (const [index, drawing] of drawings.entries()) {
        options.onProgress?.(index / (drawings.length + 1));
        // Lets the page draw between two sheets, and whoever listens cancel.
        await pause();
        if (options.signal?.aborted === true) return err(cancelled);
        ready.push(makeReady(drawing));
      }
      options.onProgress?.(drawings.length / (drawings.length + 1));
      // A result that comes late would be put into a cell that has no formula any more.
      await engine.calculation.done();
      const plan = await planAtRest(engine, ready);
      if (!plan.ok) return plan;
      if (options.signal?.aborted === true) return err(cancelled);
      const active = book().getActiveSheet(true);
      try {
        carryOut(engine, book().getUnitId(), plan.value.steps);
      } catch (fault) {
        return err(refused(fault));
      }
      if (active) stayOn(engine, active);
      options.onProgress?.(1);
      return ok(plan.value.written);
    },
    readSetting: (key) =>
      answer(() => {
        const settings = readSettings(book());
        return Object.hasOwn(settings, key) ? (settings[key] ?? null) : null;
      }),
    writeSetting: (key, text) =>
      answer(() => {
        keepSetting(book(), key, text);
        for (const watcher of allWatchers) watcher(true);
        return ok(null);
      }),
    open: (snapshot) => {
      loadSnapshot(engine, snapshot);
      for (const watcher of watchers) watcher({ kind: "sheets" });
    },
    snapshot: () => takeSnapshot(engine),
    calculated: engine.calculation.done,
    watchAll: (onChange) => {
      const stop = watchEverything(engine, onChange);
      allWatchers.add(onChange);
      return () => {
        stop();
        allWatchers.delete(onChange);
      };
    },
  };
}

/** The port answers later in every host; what throws here rejects. */
const answer = <T>(made: () => T): Promise<T> =>
  new Promise((resolve) => {
    resolve(made());
  });

/** Lets the page draw, and whoever waits go on. */
const pause = (): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, 0);
  });

/** How often a plan is made again because the person goes on working; then it is made at once. */
const mostPlans = 5;

/** Plans in a slice of time of its own. What changed in the pause after it makes the plan void. */
async function planAtRest(
  engine: Engine,
  ready: readonly ReadySheet[],
): Promise<ReturnType<typeof writeSteps>> {
  let changes = 0;
  const stop = watchEverything(engine, () => (changes += 1));
  try {
    for (let plans = 1; plans < mostPlans; plans++) {
      const before = changes;
      const plan = writeSteps(engine, openGridWorkbook(engine), ready);
      await pause();
      if (changes === before) return plan;
    }
    return writeSteps(engine, openGridWorkbook(engine), ready);
  } finally {
    stop();
  }
}

function readTable(engine: Engine, book: GridWorkbook, name: string): Result<Block, WorkbookFault> {
  for (const sheet of book.getSheets()) {
    const table = tablesOf(engine, sheetIds(sheet)).find((each) => sameSheetName(each.name, name));
    if (table === undefined) continue;
    const { startRow, startColumn, endRow, endColumn } = table.range;
    const area = {
      firstRow: startRow,
      firstColumn: startColumn,
      lastRow: endRow,
      lastColumn: endColumn,
    };
    return ok(readBlock(readSheet(engine, book, sheet), sheet.getName(), area));
  }
  return err(tableGone(name));
}

function goTo(
  { commands }: Engine,
  sheet: Worksheet,
  row: number,
  column: number,
  screen: ScreenActions | undefined,
): Result<null, WorkbookFault> {
  if (sheet.isSheetHidden() === BooleanNumber.TRUE) {
    return err({
      code: "host-refused",
      message: `The sheet “${sheet.getName()}” is hidden. Show it first, then try again.`,
    });
  }
  const ids = sheetIds(sheet);
  const range = { startRow: row, endRow: row, startColumn: column, endColumn: column };
  const primary = {
    ...range,
    actualRow: row,
    actualColumn: column,
    isMerged: false,
    isMergedMainCell: false,
  };
  commands.syncExecuteCommand(SetWorksheetActiveOperation.id, ids);
  commands.syncExecuteCommand(SetSelectionsOperation.id, {
    ...ids,
    selections: [{ range, primary, style: null }],
  });
  screen?.scrollTo(row, column);
  return ok(null);
}

/** The grid shows a sheet that comes; the person stays where they were. */
function stayOn({ commands }: Engine, sheet: Worksheet): void {
  try {
    commands.syncExecuteCommand(SetWorksheetActiveOperation.id, sheetIds(sheet));
  } catch {
    // The sheets are written all the same.
  }
}

const refused = (fault: unknown): WorkbookFault => ({
  code: "host-refused",
  message: `The spreadsheet could not take the sheets, and is as it was before. ${
    fault instanceof Error ? fault.message : ""
  }`.trim(),
});
