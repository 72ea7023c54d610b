/** Margins: what each job costs, is sold for and leaves. */
import type { WorkbookTakeOff } from "../../app/takeOffWorkbook";
import { useSharedStyles } from "../parts/parts.styles";

export function MarginsView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const shared = useSharedStyles();
  return (
    <section>
      <h2 className={shared.heading}>Margins</h2>
      <p>{takeOff.estimate.jobs.length} jobs</p>
    </section>
  );
}
