/** The contract's rig over the grid's engine: what a person does goes past the port. */
import { IPermissionService, type ICommandService, type Worksheet } from "@univerjs/core";
import {
  SetRangeValuesMutation,
  SetWorksheetNameMutation,
  WorkbookCreateSheetPermission,
} from "@univerjs/sheets";
import { gridValue } from "../../../src/adapters/embedded/cells";
import {
  embeddedWorkbook,
  type EmbeddedWorkbook,
} from "../../../src/adapters/embedded/embeddedWorkbook";
import { openGridWorkbook, type Engine } from "../../../src/adapters/embedded/engine";
import { protectSheet } from "../../../src/adapters/embedded/protection";
import { sheetIds } from "../../../src/adapters/embedded/sheetParts";
import { cellName } from "../../../src/core/base/cell";
import {
  cellAt,
  rigSnapshot,
  seen,
  type Rig,
  type RigCell,
  type RigSetup,
} from "../../workbook/rig";

/** Sets a workbook up on `engine`; `close` leaves the engine running. */
export function gridRig(engine: Engine, setup: RigSetup): Rig & { workbook: EmbeddedWorkbook } {
  const workbook = embeddedWorkbook(engine, rigSnapshot(setup));
  const sheetNamed = (name: string): Worksheet => {
    const sheet = openGridWorkbook(engine).getSheetBySheetName(name);
    if (!sheet) throw new RangeError(`No such sheet: ${name}`);
    return sheet;
  };
  const host = failingCalls(engine);
  return {
    workbook,
    type: async (sheet, cell, typed) => {
      const { row, column } = cellAt(cell);
      const cellValue = { [row]: { [column]: typed === null ? null : typedCell(typed) } };
      engine.commands.syncExecuteCommand(SetRangeValuesMutation.id, {
        ...sheetIds(sheetNamed(sheet)),
        cellValue,
      });
      await calculated();
    },
    rename: (sheet, name) => {
      engine.commands.syncExecuteCommand(SetWorksheetNameMutation.id, {
        ...sheetIds(sheetNamed(sheet)),
        name,
      });
      return Promise.resolve();
    },
    protect: (sheet) => {
      protectSheet(engine, sheetIds(sheetNamed(sheet)));
      return Promise.resolve();
    },
    protectStructure: () => {
      const point = new WorkbookCreateSheetPermission(openGridWorkbook(engine).getUnitId());
      const permissions = engine.injector.get(IPermissionService);
      if (!permissions.getPermissionPoint(point.id)) permissions.addPermissionPoint(point);
      permissions.updatePermissionPoint(point.id, false);
      return Promise.resolve();
    },
    replacesInProtected: true,
    look: () =>
      Promise.resolve(
        workbook.snapshot().sheets.map(({ name, visible, rows }) => ({
          name,
          visible,
          cells: Object.fromEntries(
            rows.flatMap((cells, row) =>
              cells.flatMap((cell, column) => {
                const shown = cell === null ? null : seen(cell.value, cell.formula);
                return shown === null ? [] : [[cellName({ row, column }), shown] as const];
              }),
            ),
          ),
        })),
      ),
    failAt: host.failAt,
    calls: host.calls,
    close: () => {
      host.restore();
      return Promise.resolve();
    },
    hearsTyping: true,
  };
}

const typedCell = (cell: RigCell): object => {
  if (typeof cell === "object" && "formula" in cell) return { f: cell.formula, v: null };
  return { ...gridValue(cell), f: null };
};

/** The engine calculates behind a timer of its own. */
const calculated = (): Promise<void> => new Promise((done) => setTimeout(done, 0));

/** Counts the changes that are asked of the grid, and makes one of them throw before it is done. */
function failingCalls(engine: Engine): Pick<Rig, "failAt" | "calls"> & { restore: () => void } {
  const { commands } = engine;
  const asked: ICommandService["syncExecuteCommand"] = commands.syncExecuteCommand.bind(commands);
  let calls = 0;
  let refused = { from: Infinity, to: Infinity };
  let depth = 0;
  const failing: ICommandService["syncExecuteCommand"] = (id, params, options) => {
    // Changes that the grid makes by itself inside another are not calls of ours.
    if (depth === 0) {
      calls += 1;
      if (calls >= refused.from && calls <= refused.to) throw new Error(`Refused call ${calls}.`);
    }
    depth += 1;
    try {
      return asked(id, params, options);
    } finally {
      depth -= 1;
    }
  };
  commands.syncExecuteCommand = failing;
  return {
    failAt: (call, onwards = false) => {
      calls = 0;
      refused =
        call === null
          ? { from: Infinity, to: Infinity }
          : { from: call, to: onwards ? Infinity : call };
    },
    calls: () => calls,
    restore: () => {
      commands.syncExecuteCommand = asked;
    },
  };
}
