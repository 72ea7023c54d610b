/** The worker that searches cut plans: its own bundle, with the solver. */
import { loadHighsSolver } from "../../adapters/highs/highsSolver";
import {
  searchOrder,
  type OrderNews,
  type OrderWork,
  type WorkedOrder,
} from "../../core/purchasing/orders/orderSearch";
import { answerWork } from "../../pane/workers/answerWork";
import { newsTeller } from "./newsTeller";

answerWork<OrderWork, WorkedOrder, OrderNews>(async (work, onProgress) => {
  const solver =
    work.given === null ? await loadHighsSolver({ wholeSeconds: work.cutSeconds }) : null;
  const now = (): number => performance.now();
  const tell = newsTeller(onProgress, now);
  const steps = searchOrder(work, { solver, now });
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
    tell(step.value);
  }
});
