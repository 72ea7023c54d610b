import { afterAll, beforeEach, expect, test } from "@jest/globals";
import type { Worksheet } from "@univerjs/core";
import { SetFrozenMutation } from "@univerjs/sheets";
import {
  embeddedWorkbook,
  type EmbeddedWorkbook,
} from "../../../src/adapters/embedded/embeddedWorkbook";
import { openGridWorkbook, startEngine } from "../../../src/adapters/embedded/engine";
import { sheetIds } from "../../../src/adapters/embedded/sheetParts";
import { showFreeze } from "../../../src/adapters/embedded/shownFreeze";
import { blankSheet, workbookOf } from "../../../src/workbook/blankSheet";

const engine = startEngine();
afterAll(() => engine.univer.dispose());

/** Two columns and two rows stand still; the columns are 187 and 87 pixels wide, or nearly so. */
const schedule = {
  ...blankSheet("Schedule"),
  rows: [[{ value: "Job" }, { value: "Mark" }, { value: "Width" }]],
  columnWidths: [26, 12, 12],
  frozenRows: 2,
  frozenColumns: 2,
};

let workbook: EmbeddedWorkbook;
beforeEach(() => {
  workbook = embeddedWorkbook(engine, workbookOf("Job", [schedule]));
});

const sheet = (): Worksheet => openGridWorkbook(engine).getActiveSheet();

const shown = (): number => Math.max(0, sheet().getFreeze().xSplit);

const saved = (): { rows: number | undefined; columns: number | undefined } => {
  const [first] = workbook.snapshot().sheets;
  return { rows: first?.frozenRows, columns: first?.frozenColumns };
};

test.each([
  [900, 2],
  [450, 1],
  [320, 0],
])("at %s pixels %s frozen columns stand still, and both are saved", (width, columns) => {
  showFreeze(engine, sheet(), width);
  expect(shown()).toBe(columns);
  expect(sheet().getFreeze().ySplit).toBe(2);
  expect(saved()).toEqual({ rows: 2, columns: 2 });
});

test("with room again all of them stand still", () => {
  showFreeze(engine, sheet(), 320);
  showFreeze(engine, sheet(), 900);
  expect(shown()).toBe(2);
  expect(saved()).toEqual({ rows: 2, columns: 2 });
});

test("what a person freezes in the meantime is what is saved", () => {
  showFreeze(engine, sheet(), 320);
  const freeze = { xSplit: 1, ySplit: 1, startRow: 1, startColumn: 1 };
  engine.commands.syncExecuteCommand(SetFrozenMutation.id, { ...sheetIds(sheet()), ...freeze });
  expect(saved()).toEqual({ rows: 1, columns: 1 });
  showFreeze(engine, sheet(), 900);
  expect(shown()).toBe(1);
});
