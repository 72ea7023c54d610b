/** Works orders out on the page's own thread in short turns, without a solver: where there is no worker. */
import { searchOrder } from "../../core/purchasing/orders/orderSearch";
import type { PlanOrder } from "../../pane/state/paneDoors";
import { letOthers } from "../../pane/state/runSteps";
import { newsTeller } from "./newsTeller";

export const planHere: PlanOrder = async (work, { signal, onProgress }) => {
  const now = (): number => performance.now();
  const tell = newsTeller((news) => onProgress?.(news), now);
  const steps = searchOrder(work, { solver: null, now });
  while (!signal.aborted) {
    const step = steps.next();
    if (step.done === true) return step.value;
    tell(step.value);
    await letOthers();
  }
  return null;
};
