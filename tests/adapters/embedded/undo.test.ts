import { afterAll, describe, expect, test } from "@jest/globals";
import { RedoCommand, UndoCommand } from "@univerjs/core";
import { startEngine } from "../../../src/adapters/embedded/engine";
import type { Drawing } from "../../../src/workbook/drawing";
import type { WorkbookSnapshot } from "../../../src/workbook/snapshot";
import { drawing } from "../../workbook/drawings";
import { gridRig } from "./gridRig";

const engine = startEngine();
afterAll(() => engine.univer.dispose());

const mark = { kind: "hardware", subject: "Job A" };

/** A drawing that uses all there is, with `rows` lines. */
const full = (rows: number): Drawing =>
  drawing(
    "Hardware",
    mark,
    [
      [{ kind: "text", text: "Hardware", look: "title", span: 1, note: "for Job A" }],
      ["Item", "Quantity"],
      ...Array.from({ length: rows }, (_, row) => [`HN ${row}`, row]),
      [null, `=SUM(B3:B${rows + 2})`],
    ],
    {
      columnWidths: [20 + rows, 10],
      frozenRows: rows,
      tables: [{ name: "Lines", headingRow: 1, lastRow: rows + 1, firstColumn: 0, lastColumn: 1 }],
      choices: [{ column: 0, firstRow: 2, lastRow: rows + 1, list: ["a", "b"], othersToo: true }],
    },
  );

/** Results come when they come; everything else must be the same. */
const plain = ({ sheets, styles }: WorkbookSnapshot): object =>
  sheets.map((sheet) => ({
    ...sheet,
    columnWidths: sheet.columnWidths.slice(0, 3),
    rowHeights: null,
    rows: sheet.rows.map((cells) =>
      cells.map((cell) => {
        if (cell === null) return null;
        const style = cell.style === undefined ? null : styles[cell.style];
        return cell.formula === undefined ? { ...cell, style } : { formula: cell.formula, style };
      }),
    ),
  }));

describe("one undo takes back a whole writing, and one redo writes it again", () => {
  test.each([
    ["of a new sheet", []],
    ["that replaces a sheet", [null]],
    ["that keeps what a person typed", ["B3"]],
  ])("%s", async (_, before) => {
    const rig = gridRig(engine, {
      sheets: [{ name: "Schedule", cells: { A1: { formula: "=Hardware!B2", result: 0 } } }],
    });
    for (const typed of before) {
      await rig.workbook.write([full(3)]);
      if (typed !== null) await rig.type("Hardware", typed, 99);
    }
    const first = plain(rig.workbook.snapshot());
    expect(await rig.workbook.write([full(5)])).toMatchObject({ ok: true });
    const second = plain(rig.workbook.snapshot());
    expect(second).not.toEqual(first);
    for (let round = 0; round < 2; round++) {
      await engine.commands.executeCommand(UndoCommand.id);
      expect(plain(rig.workbook.snapshot())).toEqual(first);
      await engine.commands.executeCommand(RedoCommand.id);
      expect(plain(rig.workbook.snapshot())).toEqual(second);
    }
    await rig.close();
  });

  test("a full undo stack loses its oldest step, and the last writing is still one", async () => {
    const rig = gridRig(engine, { sheets: [{ name: "Schedule" }] });
    const most = 30;
    let last = plain(rig.workbook.snapshot());
    for (let rows = 1; rows <= most; rows++) {
      last = plain(rig.workbook.snapshot());
      expect(await rig.workbook.write([full(rows)])).toMatchObject({ ok: true });
    }
    await engine.commands.executeCommand(UndoCommand.id);
    expect(plain(rig.workbook.snapshot())).toEqual(last);
    await rig.close();
  });
});
