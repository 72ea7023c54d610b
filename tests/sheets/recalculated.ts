/** A drawn sheet worked out by another spreadsheet engine, to hold its formulas against ours. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { initSync, Model } from "@ironcalc/wasm";
import { shownValue, type Drawing, type DrawnCell } from "../../src/workbook/drawing";

let isReady = false;

/** What a formula comes to elsewhere, and what the drawing says that it comes to. */
export type Recalculated = {
  readonly row: number;
  readonly column: number;
  readonly formula: string;
  readonly drawn: number | string | boolean;
  /** As the other engine shows it without any format. */
  readonly found: string;
};

export type RecalculatedSheet = {
  readonly formulas: readonly Recalculated[];
  /** Puts a number or a text in a cell, works the sheet out again and gives what each cell shows. */
  readonly typing: (
    row: number,
    column: number,
    input: number | string,
  ) => (row: number, column: number) => string;
};

/** Writes the drawing on a sheet of the other engine and works it out. */
export function recalculated({ rows }: Drawing): RecalculatedSheet {
  if (!isReady) {
    const file = createRequire(__filename).resolve("@ironcalc/wasm/wasm_bg.wasm");
    initSync({ module: readFileSync(file) });
    isReady = true;
  }
  const model = new Model("sheet", "en", "UTC", "en");
  const cells = rows.flatMap(({ cells: ofRow }, row) =>
    ofRow.flatMap((cell, column) => (cell === null ? [] : [{ cell, row, column }])),
  );
  for (const { cell, row, column } of cells) {
    model.setUserInput(0, row + 1, column + 1, inputOf(cell));
  }
  model.evaluate();
  const shown = (row: number, column: number): string =>
    model.getFormattedCellValue(0, row + 1, column + 1);
  const formulas = cells.flatMap(({ cell, row, column }) =>
    cell.kind !== "formula"
      ? []
      : [
          {
            row,
            column,
            formula: cell.formula,
            drawn: cell.result,
            found: shown(row, column),
          },
        ],
  );
  return {
    formulas,
    typing: (row, column, input) => {
      const typed = typeof input === "string" ? `'${input}` : String(input);
      model.setUserInput(0, row + 1, column + 1, typed);
      model.evaluate();
      return shown;
    },
  };
}

function inputOf(cell: DrawnCell): string {
  if (cell.kind === "formula") return cell.formula;
  if (cell.kind === "number") return String(cell.number);
  const value = shownValue(cell);
  return typeof value === "string" ? `'${value}` : "";
}

/** The formulas whose value elsewhere is not ours, to half a cent or half a millionth of a share. */
export const disagreeing = ({ formulas }: RecalculatedSheet): readonly Recalculated[] =>
  formulas.filter(({ drawn, found }) =>
    typeof drawn === "number"
      ? found === "" || !(Math.abs(Number(found) - drawn) < 5e-7)
      : found !== String(drawn),
  );
