/** What the pane needs besides its workbook: whoever opens the pane knows how it is done. */
import type { Result } from "../../core/base/result";
import type { OrderNews, OrderWork, WorkedOrder } from "../../core/purchasing/orders/orderSearch";
import type { Workbook } from "../../workbook/workbook";
import type { WorkOptions } from "../workers/runWork";

/** `null` when it was aborted. */
export type PlanOrder = (
  work: OrderWork,
  options: WorkOptions<OrderNews>,
) => Promise<WorkedOrder | null>;

export type PaneDoors = {
  /** Opens a file of the person's own beside the workbook. Error: why not, in plain words. */
  readonly openFile: (file: File) => Promise<Result<Workbook, string>>;
  readonly planOrder: PlanOrder;
};
