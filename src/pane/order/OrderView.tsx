/** Order: what is to be bought for the jobs chosen. */
import type { WorkbookTakeOff } from "../../app/takeOffWorkbook";
import { useSharedStyles } from "../parts/parts.styles";

export function OrderView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const shared = useSharedStyles();
  return (
    <section>
      <h2 className={shared.heading}>Order</h2>
      <p>{takeOff.estimate.jobs.length} jobs</p>
    </section>
  );
}
