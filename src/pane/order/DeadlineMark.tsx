/** When something must be ordered; a late one has a sign and says by how much. */
import type { Deadline } from "../../core/purchasing/orders/dates";
import { LevelIcon } from "../parts/LevelIcon";
import { useSharedStyles } from "../parts/parts.styles";
import { useOrderStyles } from "./order.styles";
import { deadlineWords } from "./orderText";

export function DeadlineMark({ deadline }: { readonly deadline: Deadline | null }) {
  const styles = useOrderStyles();
  const shared = useSharedStyles();
  const words = deadlineWords(deadline);
  if (deadline === null || deadline.lateDays === 0) {
    return <span className={shared.small}>{words}</span>;
  }
  return (
    <span className={styles.late}>
      <LevelIcon level="warn" />
      {words}
    </span>
  );
}
