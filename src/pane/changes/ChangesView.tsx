/** Changes: what changed between two counts. */
import type { WorkbookTakeOff } from "../../app/takeOffWorkbook";
import { useSharedStyles } from "../parts/parts.styles";

export function ChangesView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const shared = useSharedStyles();
  return (
    <section>
      <h2 className={shared.heading}>Changes</h2>
      <p>{takeOff.estimate.jobs.length} jobs</p>
    </section>
  );
}
