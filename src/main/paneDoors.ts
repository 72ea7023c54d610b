/** The pane's doors in a page: each loads what it needs when it is first opened. */
import { err, type Result } from "../core/base/result";
import type { PaneDoors } from "../pane/state/paneDoors";
import type { Workbook } from "../workbook/workbook";

export const paneDoors: PaneDoors = {
  openFile: async (file): Promise<Result<Workbook, string>> => {
    const { openFile } = await import(/* webpackChunkName: "files" */ "../adapters/xlsx/openFile");
    const bytes = await file.arrayBuffer().catch(() => null);
    if (bytes === null) return err("It could not be read. Perhaps it was moved or renamed.");
    const opened = openFile(new Uint8Array(bytes), file.name);
    return opened.ok ? opened : err(opened.error.message);
  },
  planOrder: async (work, options) => {
    const { planOrder } = await import(
      /* webpackChunkName: "planning" */ "./planning/orderPlanner"
    );
    return planOrder(work, options);
  },
};
