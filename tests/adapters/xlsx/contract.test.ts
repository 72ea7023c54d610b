import { readXlsx } from "hucre/xlsx";
import { fileWorkbook, type FileWorkbook } from "../../../src/adapters/xlsx/fileWorkbook";
import { readParts } from "../../../src/adapters/xlsx/parts";
import { snapshotBytes } from "../../../src/adapters/xlsx/snapshotBytes";
import { cellName } from "../../../src/core/base/cell";
import { describeWorkbook } from "../../workbook/contract";
import { rigSnapshot, type Rig, type SeenCell, type SeenSheet } from "../../workbook/rig";
import { protect, protectStructure, rename, typeInto } from "./personTypes";

describeWorkbook("file", (setup) => {
  let calls = 0;
  let failing = { from: Infinity, to: Infinity };
  const beforeChange = (): void => {
    calls += 1;
    if (calls >= failing.from && calls <= failing.to) throw new Error(`Refused call ${calls}.`);
  };
  const opened = (bytes: Uint8Array): FileWorkbook => {
    const parts = readParts(bytes);
    if (!parts.ok) throw new Error(parts.error.message);
    return fileWorkbook(parts.value, "Job.xlsx", { beforeChange });
  };
  let workbook = opened(snapshotBytes(rigSnapshot(setup)));
  const edit = (change: (bytes: Uint8Array) => Uint8Array): Promise<void> => {
    workbook = opened(change(workbook.bytes()));
    return Promise.resolve();
  };
  const rig: Rig = {
    get workbook() {
      return workbook;
    },
    type: (sheet, cell, typed) => edit((bytes) => typeInto(bytes, sheet, cell, typed)),
    rename: (sheet, name) => edit((bytes) => rename(bytes, sheet, name)),
    protect: (sheet) => edit((bytes) => protect(bytes, sheet)),
    protectStructure: () => edit(protectStructure),
    replacesInProtected: true,
    look: () => look(workbook.bytes()),
    failAt: (call, onwards = false) => {
      calls = 0;
      failing =
        call === null
          ? { from: Infinity, to: Infinity }
          : { from: call, to: onwards ? Infinity : call };
    },
    calls: () => calls,
    close: () => Promise.resolve(),
    hearsTyping: false,
  };
  return Promise.resolve(rig);
});

/** Looks through another reader of the same format, so that ours is not its own witness. */
async function look(bytes: Uint8Array): Promise<readonly SeenSheet[]> {
  const { sheets } = await readXlsx(bytes);
  return sheets.map((sheet) => ({
    name: sheet.name,
    visible: sheet.hidden !== true && sheet.veryHidden !== true,
    cells: Object.fromEntries(
      sheet.rows.flatMap((cells, row) =>
        cells.flatMap((value, column): [string, SeenCell][] => {
          const formula = sheet.cells?.get(`${row},${column}`)?.formula;
          if (formula !== undefined)
            return [[cellName({ row, column }), { formula: `=${formula}` }]];
          if (value === null || value === "") return [];
          const shown = value instanceof Date ? value.getTime() / 86_400_000 + 25_569 : value;
          return [[cellName({ row, column }), shown]];
        }),
      ),
    ),
  }));
}
