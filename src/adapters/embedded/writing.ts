/**
 * Writes drawings into the grid as one act. What is to be written is made first; then all changes
 * are carried out in one go, without a pause in which a person could type.
 *
 * A sheet of ours is filled anew where it stands, so the view of it does not jump. Where a person
 * typed into it, the old sheet moves aside whole under another name and a new one takes its place.
 */
import { generateRandomId, type Workbook as GridWorkbook, type Worksheet } from "@univerjs/core";
import { ok, type Result } from "../../core/base/result";
import type { Drawing } from "../../workbook/drawing";
import { drawnSheet, styleTable } from "../../workbook/drawnSheet";
import { carriedFrom, isAsWritten, writtenFingerprint } from "../../workbook/fingerprint";
import { withOtherNames, type OtherNames } from "../../workbook/formulaNames";
import { planWriting, type PlannedSheet, type StandingSheet } from "../../workbook/plan";
import type { SheetSnapshot } from "../../workbook/snapshot";
import { freeTableName } from "../../workbook/tableNames";
import type { WorkbookFault, WrittenSheet } from "../../workbook/workbook";
import type { Engine } from "./engine";
import { gridSheet, type GridSheet } from "./gridSheet";
import { isSheetProtected, isStructureProtected } from "./protection";
import { sheetRecord } from "./records";
import { sheetIds, tablesOf } from "./sheetParts";
import { readSheet } from "./sheetReading";
import { fillAnew, insertSheet, setAside } from "./sheetSteps";
import type { Step } from "./steps";
import { gridStyles, type GridStyles } from "./styles";

/** A drawing made ready: the sheet it asks for, in our words and in the grid's. */
export type ReadySheet = {
  readonly drawing: Drawing;
  readonly sheet: SheetSnapshot;
  readonly made: GridSheet;
  readonly styles: GridStyles;
};

/** Makes a drawing ready, with no look at the workbook. */
export function makeReady(drawing: Drawing): ReadySheet {
  const table = styleTable();
  const sheet = drawnSheet(drawing, drawing.name, table);
  const styles = gridStyles(table.styles);
  return { drawing, sheet, styles, made: gridSheet(sheet, generateRandomId(8), styles) };
}

/** What is to be done to the workbook, and what will be there then. */
export type WriteSteps = {
  readonly steps: readonly Step[];
  readonly written: readonly WrittenSheet[];
};

/** What has to be done to the workbook as it is now, to have `ready` in it. */
export function writeSteps(
  engine: Engine,
  book: GridWorkbook,
  ready: readonly ReadySheet[],
): Result<WriteSteps, WorkbookFault> {
  const sheets = book.getSheets();
  const plan = planWriting(
    ready.map(({ drawing }) => drawing),
    sheets.map((sheet) => standingSheet(engine, book, sheet, ready)),
    isStructureProtected(engine, book),
  );
  if (!plan.ok) return plan;
  const replaced = new Set(plan.value.flatMap(({ name, was }) => (was === "replaced" ? name : [])));
  const tableNames = sheets
    .filter((sheet) => !replaced.has(sheet.getName()))
    .flatMap((sheet) => tablesOf(engine, sheetIds(sheet)).map(({ name }) => name));
  const named = withNames(ready, plan.value, tableNames);
  const order = sheets.map((sheet) => sheet.getName());
  const steps = plan.value.flatMap(({ name, was, keptAs }, index): Step[] => {
    const next = named[index];
    if (next === undefined) return [];
    if (was === "new") return insertSheet(book, next, order.push(name) - 1);
    const old = sheetNamed(book, name);
    if (keptAs === null) return fillAnew(engine, old, next);
    const place = order.indexOf(name);
    order.splice(place + 1, 0, keptAs);
    return [...setAside(engine, book, old, keptAs, tableNames), ...insertSheet(book, next, place)];
  });
  const written = plan.value.map(({ drawing, ...rest }): WrittenSheet => ({
    ...rest,
    mark: drawing.mark,
    // The grid has nothing to draw lines and bars with, and keeps them for the file.
    ...((drawing.pictures ?? []).length === 0 ? {} : { pictures: "kept" }),
    ...((drawing.charts ?? []).length === 0 ? {} : { charts: "kept" }),
  }));
  return ok({ steps, written });
}

function standingSheet(
  engine: Engine,
  book: GridWorkbook,
  sheet: Worksheet,
  ready: readonly ReadySheet[],
): StandingSheet {
  const record = sheetRecord(sheet);
  const mark = record?.mark ?? null;
  const cells = mark === null ? [] : readSheet(engine, book, sheet).typedCells();
  const carried = carriedFrom(
    mark,
    ready.map(({ drawing }) => drawing),
  );
  return {
    name: sheet.getName(),
    mark,
    isProtected: isSheetProtected(engine, sheetIds(sheet)),
    isTouched: mark !== null && !isAsWritten(record?.written ?? "", cells, carried),
  };
}

/** @throws RangeError when it is not there; a plan names only sheets that are. */
function sheetNamed(book: GridWorkbook, name: string): Worksheet {
  const sheet = book.getSheetBySheetName(name);
  if (!sheet) throw new RangeError(`No such sheet: ${name}`);
  return sheet;
}

/**
 * The sheets under the names that the plan has for them, with tables under free names, and with
 * formulas that say these names. Each table's name is added to `taken`.
 */
function withNames(
  ready: readonly ReadySheet[],
  plan: readonly PlannedSheet[],
  taken: string[],
): ReadySheet[] {
  const sheetNames = otherNames(plan.map(({ drawing, name }) => [drawing.name, name]));
  const tables = ready.map(({ sheet }) =>
    sheet.tables.map((table) => {
      const name = freeTableName(table.name, taken);
      taken.push(name);
      return { ...table, name };
    }),
  );
  const tableNames = otherNames(
    ready.flatMap(({ sheet }, index) =>
      sheet.tables.map((table, at) => [table.name, tables[index]?.[at]?.name ?? table.name]),
    ),
  );
  const areAsWanted = sheetNames.size + tableNames.size === 0;
  return ready.map((each, index) => {
    const name = plan[index]?.name ?? each.sheet.name;
    if (areAsWanted) return { ...each, made: { ...each.made, name } };
    const sheet = withFormulaNames(
      { ...each.sheet, name, tables: tables[index] ?? [] },
      sheetNames,
      tableNames,
    );
    return { ...each, sheet, made: gridSheet(sheet, each.made.id, each.styles) };
  });
}

/** Those that are not called as wanted, by what was wanted. */
const otherNames = (names: readonly (readonly [wanted: string, name: string])[]): OtherNames =>
  new Map(
    names.flatMap(([wanted, name]) => (wanted === name ? [] : [[wanted.toLowerCase(), name]])),
  );

function withFormulaNames(
  sheet: SheetSnapshot,
  sheetNames: OtherNames,
  tableNames: OtherNames,
): SheetSnapshot {
  const rows = sheet.rows.map((cells) =>
    cells.map((cell) =>
      cell?.formula === undefined
        ? cell
        : { ...cell, formula: withOtherNames(cell.formula, sheetNames, tableNames) },
    ),
  );
  const typed = rows.flatMap((cells, row) =>
    cells.flatMap((cell, column) => (cell === null ? [] : [{ ...cell, row, column }])),
  );
  return { ...sheet, rows, written: sheet.mark === null ? null : writtenFingerprint(typed) };
}
