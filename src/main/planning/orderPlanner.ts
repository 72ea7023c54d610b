/** Works orders out in a worker from where the page itself comes from, else on the page. */
import type { PlanOrder } from "../../pane/state/paneDoors";
import { runWork } from "../../pane/workers/runWork";
import { planHere } from "./planHere";

export const planOrder: PlanOrder = (work, options) =>
  runWork(
    {
      start: () => new Worker(new URL("./order.worker.ts", import.meta.url), { name: "cuts" }),
      onPage: planHere,
    },
    work,
    options,
  );
