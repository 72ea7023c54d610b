/** From drawings and what stands in the workbook to the sheets to prepare: nothing is written yet. */
import { err, ok, type Result } from "../../core/base/result";
import type { Drawing } from "../../workbook/drawing";
import { drawnSheet, styleTable } from "../../workbook/drawnSheet";
import { workbookProtected } from "../../workbook/faults";
import { tablesNamed, withOtherNames } from "../../workbook/formulaNames";
import { planWriting } from "../../workbook/plan";
import type { CellStyle, SheetSnapshot } from "../../workbook/snapshot";
import { freeTableName } from "../../workbook/tableNames";
import type { WorkbookFault } from "../../workbook/workbook";
import { chartPlans } from "./charts";
import { dressOf } from "./dress";
import { asideName, type JournalSheet } from "./journal";
import { freeStampNames, type Overview, type StandingSheet } from "./overview";

/** One sheet to prepare. `drawn` has the names that formulas must use while it is prepared. */
export type SheetPlan = {
  readonly journal: JournalSheet;
  readonly drawn: SheetSnapshot;
  /** The sheet that is replaced. */
  readonly live: StandingSheet | null;
};

export type WritePlan = {
  readonly sheets: readonly SheetPlan[];
  readonly styles: readonly CellStyle[];
  /** Whether a formula has to wait until all tables are made. */
  readonly isLate: (formula: string) => boolean;
};

/**
 * Plans the writing. Excel needs sheets of its own to prepare the new contents, so a workbook whose
 * structure is protected takes no writing at all.
 *
 * @throws RangeError when two drawings have the same mark.
 */
export function planSheets(
  drawings: readonly Drawing[],
  overview: Overview,
  writer: string,
): Result<WritePlan, WorkbookFault> {
  const standing = overview.sheets.map((sheet) => ({ ...sheet, isTouched: false }));
  const planned = planWriting(drawings, standing, overview.structureProtected);
  if (!planned.ok) return planned;
  if (overview.structureProtected) return err(workbookProtected);

  const stampNames = freeStampNames(overview);
  const table = styleTable();
  const taken = [...overview.names];
  const names = planned.value.map(({ drawing, name, was }, index) => {
    const live = was === "new" ? null : (overview.sheets.find((s) => s.name === name) ?? null);
    const own = new Set(live?.tables);
    const others = overview.sheets.flatMap(({ tables }) => tables).filter((t) => !own.has(t));
    const tables = drawing.tables.map((each) => {
      const free = freeTableName(each.name, [...others, ...taken]);
      taken.push(free);
      return { ...each, name: free };
    });
    return { drawing, name, live, tables, aside: asideName(writer, "new", index + 1) };
  });

  // While sheets are prepared, a new one goes by its name aside; Excel renames it in formulas later.
  const sheetNames = new Map(
    names.map(({ drawing, name, live, aside }) => [
      drawing.name.toLowerCase(),
      live === null ? aside : name,
    ]),
  );
  const ownTables = names.map(({ drawing, tables }) =>
    drawing.tables.map((each, index): [string, string] => [
      each.name.toLowerCase(),
      tables[index]?.name ?? each.name,
    ]),
  );
  const sheets = names.map(({ drawing, name, live, tables, aside }, index): SheetPlan => {
    const drawn = drawnSheet(drawing, aside, table);
    // Where two drawings want a table of one name, each means its own.
    const tableNames = new Map([...ownTables.flat().reverse(), ...(ownTables[index] ?? [])]);
    const rows = drawn.rows.map((cells) =>
      cells.map((cell) =>
        cell?.formula === undefined
          ? cell
          : { ...cell, formula: withOtherNames(cell.formula, sheetNames, tableNames) },
      ),
    );
    const stamp = live?.stamp?.name ?? (drawing.mark === null ? null : stampNames.next().value);
    return {
      live,
      drawn: { ...drawn, rows, tables },
      journal: {
        was: live === null ? "new" : "replaced",
        name,
        mark: drawing.mark,
        aside,
        asideId: null,
        old: live === null ? null : asideName(writer, "old", index + 1),
        stamp,
        stampBefore: live?.stamp?.formula ?? null,
        writtenBefore: live?.stamp?.held.written ?? null,
        written: null,
        carried: drawing.carried ?? [],
        tablesBefore: [],
        notes: notesOf(drawing),
        dress: dressOf(drawing),
        pictures: [],
        charts: chartPlans(drawn),
      },
    };
  });
  return ok({ sheets, styles: table.styles, isLate: lateIn(sheets) });
}

const notesOf = ({ rows }: Drawing): readonly string[] => [
  ...new Set(rows.flatMap(({ cells }) => cells.flatMap((cell) => cell?.note ?? []))),
];

/** Late is what names a table of this writing, which may be made anew, or its own (`[@Item]`). */
function lateIn(sheets: readonly SheetPlan[]): WritePlan["isLate"] {
  const made = new Set(
    sheets.flatMap(({ drawn }) => drawn.tables.map(({ name }) => name.toLowerCase())),
  );
  return (formula) => [...tablesNamed(formula)].some((name) => name === "" || made.has(name));
}
