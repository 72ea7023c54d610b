/** What was typed into the cells of a sheet, for telling whether a person changed it. */
import type { CellValue } from "../../core/base/cell";
import {
  fingerprint,
  isAsWritten,
  writtenFingerprint,
  type TypedCell,
} from "../../workbook/fingerprint";
import type { CarriedCell } from "../../workbook/drawing";
import type { SheetSnapshot } from "../../workbook/snapshot";
import type { LateFormula } from "./drawSheet";

/** Loads what `fingerprintOf` needs. */
export const loadTyped = (band: Excel.Range): void => {
  band.load("values,formulas,rowIndex,columnIndex");
};

/** The fingerprint of a sheet read with `loadTyped`. */
export const fingerprintOf = (bands: readonly Excel.Range[]): string =>
  fingerprint(typedCells(bands));

/**
 * The fingerprint to keep of a sheet that was drawn and read with `loadTyped`. `late` are formulas
 * that its cells are still to get, so that it can be known before it is quite finished.
 */
export function writtenFingerprintOf(
  bands: readonly Excel.Range[],
  late: readonly LateFormula[],
  { rows }: Pick<SheetSnapshot, "rows">,
): string {
  const waiting = new Map(late.map((each) => [`${each.row},${each.column}`, each]));
  const cells = Array.from(typedCells(bands, waiting), (cell) => ({
    ...cell,
    input: rows[cell.row]?.[cell.column]?.input === true,
  }));
  return writtenFingerprint(cells);
}

/** Whether a sheet read with `loadTyped` is as it was written, but for what is carried on. */
export const isSheetAsWritten = (
  bands: readonly Excel.Range[],
  written: string | null,
  carried: readonly CarriedCell[],
): boolean => written !== null && isAsWritten(written, typedCells(bands), carried);

function* typedCells(
  bands: readonly Excel.Range[],
  waiting: ReadonlyMap<string, LateFormula> = new Map(),
): Generator<TypedCell> {
  for (const { values, formulas, rowIndex, columnIndex } of bands) {
    for (const [down, line] of (values as unknown[][]).entries()) {
      for (const [right, value] of line.entries()) {
        const [row, column] = [rowIndex + down, columnIndex + right];
        const late = waiting.get(`${row},${column}`);
        if (late !== undefined) {
          yield { row, column, value: null, formula: late.formula };
          continue;
        }
        const formula = formulaIn(
          (formulas[down] as readonly unknown[] | undefined)?.[right],
          value,
        );
        const typed = value as CellValue;
        yield formula === null
          ? { row, column, value: typed }
          : { row, column, value: typed, formula };
      }
    }
  }
}

/** A text that starts with `=` reads alike as formula and as value; a formula does not. */
export const formulaIn = (formula: unknown, value: unknown): string | null =>
  typeof formula === "string" && formula.startsWith("=") && formula !== value ? formula : null;
