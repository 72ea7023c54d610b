/** Kit book: the kit book, checked. */
import type { WorkbookTakeOff } from "../../app/takeOffWorkbook";
import { useSharedStyles } from "../parts/parts.styles";

export function BookView({ takeOff }: { readonly takeOff: WorkbookTakeOff }) {
  const shared = useSharedStyles();
  return (
    <section>
      <h2 className={shared.heading}>Kit book</h2>
      <p>{takeOff.estimate.jobs.length} jobs</p>
    </section>
  );
}
