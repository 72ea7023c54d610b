/** Writing drawings that are made on the spot, as one act. */
import { ok } from "../../core/base/result";
import type { Drawing } from "../../workbook/drawing";
import { useWritingAct, type Writing } from "../sheets/useWritingAct";
import { usePane } from "../state/paneContext";

export type WriteDrawings = {
  readonly writing: Writing;
  readonly write: (drawings: readonly Drawing[]) => void;
};

export function useWriteDrawings(): WriteDrawings {
  const { workbook } = usePane();
  const { writing, begin } = useWritingAct();
  const write = (drawings: readonly Drawing[]): void =>
    begin(async (options) => {
      const written = await workbook.write(drawings, options);
      return written.ok ? ok({ sheets: written.value, changes: "", older: [] }) : written;
    });
  return { writing, write };
}
