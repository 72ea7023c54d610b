import { memoryWorkbook, type MemoryWorkbook } from "../../../src/adapters/memory/memoryWorkbook";
import { cellName } from "../../../src/core/base/cell";
import { describeWorkbook } from "../../workbook/contract";
import { cellAt, rigSnapshot, seen, type Rig, type SeenCell } from "../../workbook/rig";

describeWorkbook("memory", (setup) => {
  const workbook = memoryWorkbook(rigSnapshot(setup));
  const rig: Rig = {
    workbook,
    type: (sheet, cell, typed) => {
      const place = { sheet, ...cellAt(cell) };
      if (typed !== null && typeof typed === "object" && "formula" in typed) {
        workbook.type(place, typed.result, typed.formula);
      } else workbook.type(place, typed);
      return Promise.resolve();
    },
    rename: (sheet, name) => {
      workbook.rename(sheet, name);
      return Promise.resolve();
    },
    protect: (sheet) => {
      workbook.protect(sheet);
      return Promise.resolve();
    },
    protectStructure: () => {
      workbook.protectStructure();
      return Promise.resolve();
    },
    replacesInProtected: true,
    look: () => Promise.resolve(look(workbook)),
    failAt: workbook.failAt,
    calls: workbook.calls,
    close: () => Promise.resolve(),
    hearsTyping: true,
  };
  return Promise.resolve(rig);
});

const look = (workbook: MemoryWorkbook): Awaited<ReturnType<Rig["look"]>> =>
  workbook.snapshot().sheets.map(({ name, visible, rows }) => ({
    name,
    visible,
    cells: Object.fromEntries(
      rows.flatMap((cells, row) =>
        cells.flatMap((cell, column): [string, SeenCell][] => {
          const shown = cell === null ? null : seen(cell.value, cell.formula);
          return shown === null ? [] : [[cellName({ row, column }), shown]];
        }),
      ),
    ),
  }));
