/**
 * A workbook in memory: the port's plainest meaning, and the double that tests of everything above
 * the port use. It calculates nothing: a formula keeps the result it was given.
 */
import { cellName, type CellPlace, type CellValue } from "../../core/base/cell";
import { err, ok, type Result } from "../../core/base/result";
import { cancelled, sheetGone } from "../../workbook/faults";
import { carriedFrom, isTouched } from "../../workbook/fingerprint";
import { planWriting } from "../../workbook/plan";
import { readSource } from "../../workbook/readSource";
import { sameSheetName } from "../../workbook/sheetNames";
import type { CellSnapshot, SheetSnapshot, WorkbookSnapshot } from "../../workbook/snapshot";
import type {
  Selection,
  Workbook,
  WorkbookChange,
  WorkbookFault,
  WrittenSheet,
} from "../../workbook/workbook";
import { withPlannedSheet } from "./replaceSheets";

/** The port, and what a person and a failing host do to it in a test. */
export type MemoryWorkbook = Workbook & {
  /** A person types a value, or a formula with its result; `null` clears the cell. */
  readonly type: (place: CellPlace, value: CellValue, formula?: string) => void;
  readonly rename: (sheet: string, name: string) => void;
  readonly remove: (sheet: string) => void;
  readonly protect: (sheet: string) => void;
  readonly protectStructure: () => void;
  readonly select: (selection: Selection) => void;
  readonly snapshot: () => WorkbookSnapshot;
  /** Refuses call number `call` from here (the first is 1), with `onwards` all later ones too. */
  readonly failAt: (call: number | null, onwards?: boolean) => void;
  /** Calls that reached the workbook since the last `failAt`. */
  readonly calls: () => number;
};

/** A workbook with the sheets of `start`. A call that `failAt` refuses rejects, or gives `host-refused`. */
export function memoryWorkbook(start: WorkbookSnapshot): MemoryWorkbook {
  let now = start;
  let structureProtected = false;
  let selection: Selection | null = null;
  let calls = 0;
  let failing: { readonly from: number; readonly to: number } | null = null;
  const watchers = new Set<(change: WorkbookChange) => void>();

  const reach = (): void => {
    calls += 1;
    if (failing !== null && calls >= failing.from && calls <= failing.to) {
      throw new HostRefusal(`The workbook refused call ${calls}.`);
    }
  };
  const tell = (change: WorkbookChange): void => {
    for (const watcher of watchers) watcher(change);
  };
  const sheetNamed = (name: string): SheetSnapshot | undefined =>
    now.sheets.find((sheet) => sameSheetName(sheet.name, name));
  const change = (name: string, changed: (sheet: SheetSnapshot) => SheetSnapshot | null): void => {
    if (sheetNamed(name) === undefined) throw new RangeError(`No such sheet: ${name}`);
    now = {
      ...now,
      sheets: now.sheets.flatMap((sheet) =>
        sameSheetName(sheet.name, name) ? (changed(sheet) ?? []) : [sheet],
      ),
    };
  };

  const write: Workbook["write"] = (drawings, options = {}) =>
    refusable(async (): Promise<Result<readonly WrittenSheet[], WorkbookFault>> => {
      reach();
      const standing = now.sheets.map((sheet) => ({
        ...sheet,
        isTouched: isTouched(sheet, carriedFrom(sheet.mark, drawings)),
      }));
      const plan = planWriting(drawings, standing, structureProtected);
      if (!plan.ok) return plan;
      let next = now;
      for (const [index, planned] of plan.value.entries()) {
        options.onProgress?.(index / plan.value.length);
        await Promise.resolve();
        if (options.signal?.aborted === true) return err(cancelled);
        reach();
        next = withPlannedSheet(next, planned);
      }
      reach();
      now = next;
      options.onProgress?.(1);
      tell({ kind: "sheets" });
      for (const { name } of plan.value) tell({ kind: "cells", sheet: name });
      return ok(
        plan.value.map(({ drawing, ...rest }): WrittenSheet => ({ ...rest, mark: drawing.mark })),
      );
    });

  return {
    host: "memory",
    name: () => answer(() => now.name),
    sheets: () =>
      answer(() => {
        reach();
        return now.sheets.map(({ name, visible, mark, tables }) => ({
          name,
          visible,
          mark,
          tables: tables.map((table) => table.name),
        }));
      }),
    activeSheet: () => answer(() => now.activeSheet),
    selection: () => answer(() => selection),
    read: (source) =>
      refusable(() => {
        reach();
        return readSource(now, source);
      }),
    watch: (onChange) => {
      watchers.add(onChange);
      return Promise.resolve(() => answer(() => void watchers.delete(onChange)));
    },
    goTo: (place) =>
      refusable(() => {
        reach();
        const sheet = sheetNamed(place.sheet);
        if (sheet === undefined) return err(sheetGone(place.sheet));
        now = { ...now, activeSheet: sheet.name };
        selection = { ...place, sheet: sheet.name, rows: 1, columns: 1 };
        tell({ kind: "selection", selection });
        return ok(null);
      }),
    write,
    readSetting: (key) =>
      answer(() => (Object.hasOwn(now.settings, key) ? (now.settings[key] ?? null) : null)),
    writeSetting: (key, text) =>
      refusable(() => {
        reach();
        now = { ...now, settings: { ...now.settings, [key]: text } };
        return ok(null);
      }),

    type: ({ sheet, row, column }, value, formula) => {
      const cell = value === null && formula === undefined ? null : { value };
      const typed = cell === null || formula === undefined ? cell : { ...cell, formula };
      change(sheet, (each) => ({ ...each, rows: withCell(each.rows, row, column, typed) }));
      tell({ kind: "cells", sheet });
    },
    rename: (sheet, name) => {
      change(sheet, (each) => ({ ...each, name }));
      if (sameSheetName(now.activeSheet, sheet)) now = { ...now, activeSheet: name };
      tell({ kind: "sheets" });
    },
    remove: (sheet) => {
      change(sheet, () => null);
      tell({ kind: "sheets" });
    },
    protect: (sheet) => change(sheet, (each) => ({ ...each, isProtected: true })),
    protectStructure: () => void (structureProtected = true),
    select: (selected) => {
      selection = selected;
      now = { ...now, activeSheet: selected.sheet };
      tell({ kind: "selection", selection });
    },
    snapshot: () => now,
    failAt: (call, onwards = false) => {
      calls = 0;
      failing = call === null ? null : { from: call, to: onwards ? Infinity : call };
    },
    calls: () => calls,
  };
}

class HostRefusal extends Error {}

const answer = <T>(made: () => T): Promise<T> =>
  new Promise((resolve) => {
    resolve(made());
  });

/** A refusal of the host becomes a fault; any other error is a programmer's and goes on. */
const refusable = async <T>(
  act: () => Result<T, WorkbookFault> | Promise<Result<T, WorkbookFault>>,
): Promise<Result<T, WorkbookFault>> => {
  try {
    return await act();
  } catch (error) {
    if (error instanceof HostRefusal) return err({ code: "host-refused", message: error.message });
    throw error;
  }
};

function withCell(
  rows: SheetSnapshot["rows"],
  row: number,
  column: number,
  typed: CellSnapshot | null,
): SheetSnapshot["rows"] {
  if (row < 0 || column < 0) throw new RangeError(`No such cell: ${cellName({ row, column })}`);
  const grid = Array.from({ length: Math.max(rows.length, row + 1) }, (_, at) => rows[at] ?? []);
  const cells = grid[row] ?? [];
  grid[row] = Array.from({ length: Math.max(cells.length, column + 1) }, (_, at) =>
    at === column ? typed : (cells[at] ?? null),
  );
  return grid;
}
