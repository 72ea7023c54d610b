/** A simulation as work that a worker or the page can do. */
import { runSimulation, type SimulationTask } from "../../app/pricing/simulateJob";
import type { Steps } from "../../core/base/steps";
import type { Simulation } from "../../core/pricing/chances/simulation";

/** `simulation` is `null` for a job without a price, which has no margin. */
export type Simulated = { readonly simulation: Simulation | null };

export function* simulationSteps(task: SimulationTask): Steps<Simulated> {
  return { simulation: yield* runSimulation(task) };
}
