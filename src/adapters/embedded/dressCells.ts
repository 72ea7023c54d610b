/**
 * Gives many blank cells their styles at once. The grid's own change of cells works each cell's style
 * out anew from its parts, which for a large sheet takes longer than all the rest.
 */
import {
  CommandType,
  IUniverInstanceService,
  type ICellData,
  type IMutation,
  type IStyleData,
  type Workbook as GridWorkbook,
} from "@univerjs/core";
import { places } from "./cellRows";

type DressCellsParams = {
  readonly unitId: string;
  readonly subUnitId: string;
  /** Only the style ids in these cells are looked at. */
  readonly cells: Readonly<Record<number, Readonly<Record<number, ICellData>>>>;
  readonly styles: Readonly<Record<string, IStyleData>>;
};

/** Emptying the cells undoes it. The grid draws the cells with the change that fills them. */
export const DressCellsMutation: IMutation<DressCellsParams> = {
  id: "cribsheet.mutation.dress-cells",
  type: CommandType.MUTATION,
  handler: (accessor, { unitId, subUnitId, cells, styles }) => {
    const workbook = accessor.get(IUniverInstanceService).getUnit<GridWorkbook>(unitId);
    const sheet = workbook?.getSheetBySheetId(subUnitId);
    if (!workbook || !sheet) return false;
    workbook.addStyles({ ...styles });
    const matrix = sheet.getCellMatrix();
    for (const [row, column] of places(cells)) {
      const style = cells[row]?.[column]?.s;
      if (style) matrix.setValue(row, column, { ...matrix.getValue(row, column), s: style });
    }
    return true;
  },
};
