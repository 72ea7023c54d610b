/** Simulating a job: how far it is, what came of it, and for which figures. */
import { useEffect, useRef, useState } from "react";
import type { SimulationTask } from "../../app/pricing/simulateJob";
import { runSteps } from "../state/runSteps";
import { useBroken } from "../state/useBroken";
import { runWork } from "../workers/runWork";
import { simulationSteps, type Simulated } from "./simulationSteps";

export type Simulating =
  | { readonly kind: "idle" }
  | { readonly kind: "busy"; readonly progress: number }
  | { readonly kind: "cancelled" }
  | { readonly kind: "done"; readonly task: SimulationTask; readonly simulated: Simulated };

export type SimulationHandle = {
  readonly simulating: Simulating;
  readonly run: (task: SimulationTask) => void;
  readonly cancel: () => void;
};

const places = {
  start: () =>
    new Worker(
      /* webpackChunkName: "simulation" */ new URL("./simulation.worker.ts", import.meta.url),
    ),
  onPage: (task: SimulationTask, options: Parameters<typeof runSteps>[1]) =>
    runSteps(simulationSteps(task), options),
};

/** What is under way ends with the component. */
export function useSimulation(): SimulationHandle {
  const [simulating, setSimulating] = useState<Simulating>({ kind: "idle" });
  const running = useRef(new AbortController());
  const onBroken = useBroken();
  useEffect(() => () => running.current.abort(), []);
  const run = (task: SimulationTask): void => {
    running.current.abort();
    const { signal } = (running.current = new AbortController());
    setSimulating({ kind: "busy", progress: 0 });
    const onProgress = (progress: number): void => {
      if (!signal.aborted) setSimulating({ kind: "busy", progress });
    };
    runWork(places, task, { signal, onProgress }).then((simulated) => {
      if (simulated !== null && !signal.aborted) setSimulating({ kind: "done", task, simulated });
    }, onBroken);
  };
  const cancel = (): void => {
    running.current.abort();
    setSimulating({ kind: "cancelled" });
  };
  return { simulating, run, cancel };
}
