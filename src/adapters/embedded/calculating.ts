/** Waiting for the grid's formulas: it works them out behind timers of its own, in slices. */
import { GlobalComputingStatusService } from "@univerjs/engine-formula";
import type { Engine } from "./engine";

/** The grid gathers changes for this long before it starts. In milliseconds. */
const gathering = 150;
const betweenLooks = 30;

/** Resolves once every formula shows the result of what stood in the cells at the call. */
export async function calculated({ injector }: Engine): Promise<void> {
  const status = injector.get(GlobalComputingStatusService);
  await wait(gathering);
  while (!status.computingStatus) await wait(betweenLooks);
}

const wait = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => {
    setTimeout(resolve, milliseconds);
  });
